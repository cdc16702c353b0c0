using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Damage.Sections;

namespace AxleRisk.Core.Tests.Damage;

/// <summary>A vehicle in the trade's units, and its way into the kernel's columns. The defaults are the benchmark case.</summary>
internal sealed record Vehicle
{
    public double SprungKg { get; init; } = 600;
    public double UnsprungKg { get; init; } = 90;
    public double SpringNPerMm { get; init; } = 45;
    public double DamperNsPerMm { get; init; } = 4;
    public double TyreNPerMm { get; init; } = 300;
    public double TyreDampingNsPerMm { get; init; } = 0.2;
    public double OutboardShare { get; init; } = 0.5;
    public double ContactMm { get; init; } = 200;
    public double ArmMm { get; init; } = 240;
    public double DiameterMm { get; init; } = 95;
    public double WallMm { get; init; } = 6;
    public double StressFactor { get; init; } = 1;
    public double Waviness { get; init; } = 2;
    public int Category { get; init; }
}

/// <summary>One leg in the trade's units.</summary>
internal sealed record RoadLeg(
    double Share, double Gd1E6, double KmPerH, double CorrugatedShare = 0, double WavelengthM = 0.8, double RmsMm = 8);

/// <summary>Fills columns and runs the kernel.</summary>
internal static class Rows
{
    public static SnCurve ClassE { get; } = SnCatalogue.Find("DNV-RP-C203", "E")!.Mean;

    public static DamageColumns Of(IReadOnlyList<Vehicle> vehicles, params RoadLeg[] legs)
    {
        var c = new DamageColumns(vehicles.Count, legs.Length);
        for (int row = 0; row < vehicles.Count; row++)
        {
            Fill(c, row, vehicles[row]);
            for (int leg = 0; leg < legs.Length; leg++)
            {
                Fill(c.Legs[leg], row, legs[leg]);
            }
        }
        return c;
    }

    public static double DamagePerKm(Vehicle vehicle, params RoadLeg[] legs) => DamagePerKm(vehicle, ClassE, legs);

    public static double DamagePerKm(Vehicle vehicle, SnCurve curve, params RoadLeg[] legs) =>
        Evaluate(Of([vehicle], legs), 1, curve).Total[0];

    public static (double[] Total, double[][] ByLeg) Evaluate(
        DamageColumns columns, int count, SnCurve curve, CountingMethod method = CountingMethod.Dirlik)
    {
        var total = new double[columns.Capacity];
        double[][] byLeg = [.. columns.Legs.Select(_ => new double[columns.Capacity])];
        ScalarKernel.Evaluate(columns, count, [curve], method, byLeg, total);
        return (total, byLeg);
    }

    private static void Fill(DamageColumns c, int row, Vehicle v)
    {
        c.SprungMassKg[row] = v.SprungKg;
        c.UnsprungMassKg[row] = v.UnsprungKg;
        c.SpringNPerM[row] = 1000 * v.SpringNPerMm;
        c.DamperNsPerM[row] = 1000 * v.DamperNsPerMm;
        c.TyreNPerM[row] = 1000 * v.TyreNPerMm;
        c.TyreDampingNsPerM[row] = 1000 * v.TyreDampingNsPerMm;
        c.OutboardShare[row] = v.OutboardShare;
        c.ContactLengthM[row] = v.ContactMm / 1000;
        c.StressPerForceMPaPerN[row] = BendingStress.PerForce(v.StressFactor, v.ArmMm, SectionModulus.Tube(v.DiameterMm, v.WallMm));
        c.ThicknessMm[row] = v.WallMm;
        c.Waviness[row] = v.Waviness;
        c.Category[row] = v.Category;
    }

    private static void Fill(LegColumns c, int row, RoadLeg leg)
    {
        c.Share[row] = leg.Share;
        c.SpeedMPerS[row] = leg.KmPerH / 3.6;
        c.RoughnessM3[row] = leg.Gd1E6 * 1e-6;
        c.CorrugatedShare[row] = leg.CorrugatedShare;
        c.CorrugationWavelengthM[row] = leg.WavelengthM;
        c.CorrugationRmsM[row] = leg.RmsMm / 1000;
    }
}
