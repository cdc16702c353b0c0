using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Damage.Sections;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Randomness;

namespace AxleRisk.Benchmarks;

/// <summary>
/// The benchmark case: a pick-up's rear axle on five legs of use from highway to bush track, eleven of its parameters random.
/// </summary>
internal sealed class FiveLegCase
{
    /// <summary>Rows of a block.</summary>
    public const int Rows = 256;

    /// <summary>Random factors, the two that scale life without touching the damage among them.</summary>
    public const int Factors = 13;

    private const ulong Seed = 20240501;

    // Share, roughness 1e-6 m^3, speed km/h.
    private static readonly (double Share, double Roughness, double Speed)[] Legs =
        [(0.20, 16, 80), (0.30, 64, 60), (0.25, 256, 50), (0.20, 1024, 40), (0.05, 4096, 25)];

    private readonly RandomStream[] streams =
        [.. Enumerable.Range(0, Factors).Select(i => new RandomStream(new StreamKey(Seed, $"factor {i}")))];

    private readonly double[][] normal = [.. Enumerable.Range(0, Factors).Select(_ => new double[Rows])];

    /// <summary>Draws and fills the first block.</summary>
    public FiveLegCase()
    {
        Curves = [SnCatalogue.Find("DNV-RP-C203", "E")!.Mean];
        Columns = new(Rows, Legs.Length);
        DamageByLeg = [.. Legs.Select(_ => new double[Rows])];
        Sample(0);
        Assemble();
    }

    public SnCurve[] Curves { get; }

    public DamageColumns Columns { get; }

    public double[][] DamageByLeg { get; }

    public double[] DamagePerKm { get; } = new double[Rows];

    public static int LegCount => Legs.Length;

    /// <summary>Standard normal values of every factor for a block of samples.</summary>
    public void Sample(long first)
    {
        for (int i = 0; i < Factors; i++)
        {
            streams[i].FillUnit(first, normal[i]);
            StandardNormal.Quantiles(normal[i], normal[i]);
        }
    }

    private void Assemble()
    {
        Array.Fill(Columns.TyreDampingNsPerM, 200);
        Array.Fill(Columns.OutboardShare, 0.5);
        Array.Fill(Columns.Waviness, 2);
        for (int row = 0; row < Rows; row++)
        {
            Columns.SprungMassKg[row] = Lognormal(0, row, 600, 0.10);
            Columns.UnsprungMassKg[row] = Normal(1, row, 90, 4);
            Columns.SpringNPerM[row] = Lognormal(2, row, 45e3, 0.08);
            Columns.DamperNsPerM[row] = Lognormal(3, row, 4000, 0.25);
            Columns.TyreNPerM[row] = Lognormal(4, row, 300e3, 0.10);
            double wall = Normal(6, row, 6.0, 0.25);
            double modulus = SectionModulus.Tube(95, wall);
            Columns.StressPerForceMPaPerN[row] = BendingStress.PerForce(Lognormal(7, row, 1, 0.20), Normal(5, row, 240, 4), modulus);
            Columns.ThicknessMm[row] = wall;
            Columns.ContactLengthM[row] = Normal(8, row, 0.200, 0.010);
            for (int leg = 0; leg < Legs.Length; leg++)
            {
                Columns.Legs[leg].Share[row] = Legs[leg].Share;
                Columns.Legs[leg].SpeedMPerS[row] = Lognormal(9, row, Legs[leg].Speed / 3.6, 0.15);
                Columns.Legs[leg].RoughnessM3[row] = Lognormal(10, row, Legs[leg].Roughness * 1e-6, 0.30);
            }
        }
    }

    private double Normal(int factor, int row, double mean, double sd) => mean + sd * normal[factor][row];

    private double Lognormal(int factor, int row, double median, double sd) => median * Math.Exp(sd * normal[factor][row]);
}
