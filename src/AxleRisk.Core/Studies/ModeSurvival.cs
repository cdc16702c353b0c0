using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Studies;

/// <summary>
/// The survival of each mode to a distance, by row, and how likely two rows that share some chances both survive: with the
/// product over the modes,
/// of one survival each where the chance is not shared, of the lesser where it is; of fatigue, sharing a part of its normal
/// variance, with the
/// bivariate normal probability.
/// </summary>
/// <param name="chances">The chances; null for room of fatigue alone.</param>
/// <param name="capacity">The number of rows.</param>
internal class ModeSurvival(FailureChances? chances, int capacity)
{
    private const int Fatigue = 0;

    /// <summary>The probability that each mode is survived, by row.</summary>
    public double[][] Survival { get; } = Workspace.Columns(chances?.Modes.Length ?? 0, capacity);

    /// <summary>What each mode has used up, in units of its scatter.</summary>
    public double[][] Used { get; } = Workspace.Columns(chances?.Modes.Length ?? 0, capacity);

    /// <summary>The standard normal score of fatigue failure.</summary>
    public double[] Standardised { get; } = new double[capacity];

    /// <summary>The probability that any mode fails.</summary>
    public double[] Fails { get; } = new double[capacity];

    /// <summary>Fills a row of a workspace last evaluated.</summary>
    public void Fill(Workspace of, int row, double km)
    {
        double all = 0;
        for (int mode = 0; mode < Survival.Length; mode++)
        {
            double used = Used[mode][row] = FailureChances.Used(mode, of, row, km);
            double hazard = chances!.Of(mode).Hazard(used);
            Survival[mode][row] = Math.Exp(-hazard);
            all += hazard;
        }

        Standardised[row] = chances!.ScoreOf(Fatigue, Used[Fatigue][row]);
        Fails[row] = -LogExp.ExpM1(-all);
    }

    /// <summary>The probability that a row of this and one of another both survive.</summary>
    /// <param name="other">The other.</param>
    /// <param name="row">The row.</param>
    /// <param name="fatigueShare">The share of the variance of fatigue's chance that the two have in common.</param>
    /// <param name="shared">The further modes, one bit each by their place, whose chance they have in common.</param>
    public double BothSurvive(ModeSurvival other, int row, double fatigueShare, int shared)
    {
        double both = Both(Standardised[row], other.Standardised[row], Survival[Fatigue][row], other.Survival[Fatigue][row], fatigueShare);
        for (int mode = 1; mode < Survival.Length; mode++)
        {
            double a = Survival[mode][row];
            double b = other.Survival[mode][row];
            both *= (shared >> mode & 1) != 0 ? Math.Min(a, b) : a * b;
        }

        return both;
    }

    private static double Both(double g, double h, double a, double b, double share) =>
        share <= 0 ? a * b : share >= 1 - 1e-12 ? Math.Min(a, b) : BivariateNormal.Cumulative(-g, -h, share);
}
