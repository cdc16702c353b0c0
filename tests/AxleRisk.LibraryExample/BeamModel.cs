using AxleRisk.Core.Scenarios;

namespace AxleRisk.LibraryExample;

/// <summary>A beam under an alternating load at its end: its damage is a formula, and nothing of an axle is in it.</summary>
public sealed class BeamModel : DamageModel
{
    private const double Slope = 4, Constant = 5e14;

    public static Quantity Load { get; } = new("beam", "load_kn", "load", "kN", Domain.Positive, "range of the load at the beam's end");

    public static Quantity Arm { get; } = new("beam", "arm_m", "arm", "m", Domain.Positive, "distance from the load to the section");

    public static Quantity Modulus { get; } = new("beam", "modulus_cm3", "section modulus", "cm3", Domain.Positive, "section modulus");

    public static Quantity Cycles { get; } = new(
        Quantities.LegSection, "cycles_per_km", "cycles", "1/km", Domain.NonNegative, "cycles of the load in a km of the leg");

    public override DamageWorker CreateWorker(int capacity) => new Worker();

    private sealed class Worker : DamageWorker
    {
        // D = n (M / W)^m / C a km, M in kNm, W in cm3: MPa are 1000 M / W.
        public override void Evaluate(InputColumns inputs, double[][] damagePerKm, double[][] ratesPerKm)
        {
            ReadOnlySpan<double> load = inputs.Of(Load), arm = inputs.Of(Arm), modulus = inputs.Of(Modulus);
            for (int leg = 0; leg < damagePerKm.Length; leg++)
            {
                ReadOnlySpan<double> cycles = inputs.Of(Cycles, leg);
                for (int row = 0; row < inputs.Count; row++)
                {
                    double stress = 1000 * load[row] * arm[row] / modulus[row];
                    damagePerKm[leg][row] = cycles[row] * Math.Pow(stress, Slope) / Constant;
                }
            }
        }
    }
}
