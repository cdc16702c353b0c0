using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Causes;

/// <summary>
/// The same as <see cref="LifeLikelihood"/> where several modes or ageing are averaged exactly: with what each mode has used up
/// by the distances of
/// the evidence, its likelihood is a probability of <see cref="FailureChances"/>, and the scores of the limits given the evidence
/// are drawn mode by
/// mode. A failure at a distance is one within a thousandth of it.
/// </summary>
/// <param name="life">What is known of the life; null for nothing.</param>
/// <param name="chances">What is left to chance.</param>
/// <param name="cracked">The place of the mode that is known to have failed, and alone; null where that is not told.</param>
/// <param name="looked">That of fatigue where the vehicle was looked at, taken over row by row; null where it was not.</param>
internal sealed class ModesLikelihood(LifeEvidence? life, FailureChances chances, int? cracked = null, LookedChance? looked = null)
{
    /// <summary>A stated failure distance is taken to this relative accuracy.</summary>
    public const double Near = 1e-3;

    private readonly (double From, double To) km = life switch
    {
        LifeEvidence.FailedAt(var at) => (at * (1 - Near), at * (1 + Near)),
        LifeEvidence.FailedBetween(var from, var to) => (from, to),
        LifeEvidence.Survived(var at) => (at, double.PositiveInfinity),
        _ => (0, double.PositiveInfinity),
    };

    // Of an axle that is whole there is nothing cracked.
    private readonly int? only = life?.FailedByKm is null ? null : cracked;

    private readonly double[] from = new double[chances.Modes.Length];
    private readonly double[] to = new double[chances.Modes.Length];

    /// <summary>ln likelihood of a row last evaluated, up to a constant.</summary>
    public double Log(Workspace of, int row)
    {
        Fill(of, row);
        if (double.IsInfinity(km.To))
        {
            return -chances.Hazard(from);
        }

        if (only is not { } alone)
        {
            return Math.Log(chances.Fails(from, to));
        }

        // It fails between, and all others outlast the second distance.
        double log = Math.Log(chances.Of(alone).Fails(from[alone], to[alone]));
        for (int mode = 0; mode < to.Length; mode++)
        {
            log -= mode == alone ? 0 : chances.Of(mode).Hazard(to[mode]);
        }

        return log;
    }

    /// <summary>
    /// How likely each mode is to have failed by the last distance, given the row last asked of and the evidence; of a failure alone.
    /// </summary>
    public void FillFailed(double[][] failed, int row)
    {
        double all = 0;
        for (int mode = 0; mode < to.Length; mode++)
        {
            all += Between(mode);
        }

        for (int mode = 0; mode < to.Length; mode++)
        {
            double share = Failed(Between(mode)) / Failed(all);
            failed[mode][row] = only is { } alone ? mode == alone ? 1 : 0 : double.IsNaN(share) ? 0 : Math.Min(1, share);
        }
    }

    /// <summary>
    /// The standard normal scores of the limits of all modes given the evidence: mode by mode, each has failed between the
    /// distances with the
    /// probability that it has, given what is decided of those before it and that one of all must have.
    /// </summary>
    /// <param name="of">The workspace, last evaluated.</param>
    /// <param name="row">The row.</param>
    /// <param name="uniforms">One uniform for each mode.</param>
    /// <param name="scores">Takes the scores.</param>
    public void DrawScores(Workspace of, int row, ReadOnlySpan<double> uniforms, Span<double> scores)
    {
        Fill(of, row);
        bool found = double.IsInfinity(km.To);
        for (int mode = 0; mode < scores.Length; mode++)
        {
            double low = Score(mode, from[mode]);
            double high = found && only is null ? double.PositiveInfinity : Score(mode, to[mode]);
            double u = uniforms[mode];
            double fails = only is { } alone ? mode == alone ? 1 : 0 : found ? 1 : FailsIn(mode);
            scores[mode] = u < fails
                ? Quantile(mode, low, high, u / fails)
                : Quantile(mode, high, double.PositiveInfinity, (u - fails) / (1 - fails));
            found |= u < fails;
        }
    }

    private double Quantile(int mode, double low, double high, double uniform) =>
        mode == 0 && looked is not null ? looked.Draw(low, high, uniform) : LifeLikelihood.QuantileBetween(low, high, uniform);

    private void Fill(Workspace of, int row)
    {
        FailureChances.FillUsed(of, row, km.From, from);
        if (!double.IsInfinity(km.To))
        {
            FailureChances.FillUsed(of, row, km.To, to);
        }
    }

    // P(this mode fails between | all survive the first distance, one of this and the modes behind it does not survive the second).
    private double FailsIn(int mode)
    {
        double hazards = 0;
        for (int behind = mode; behind < from.Length; behind++)
        {
            hazards += Between(behind);
        }

        double fails = Math.Min(1, Failed(Between(mode)) / Failed(hazards));
        return double.IsNaN(fails) ? 1 : fails;
    }

    private double Between(int mode) => chances.Of(mode).Hazard(to[mode]) - chances.Of(mode).Hazard(from[mode]) is var more
        && double.IsNaN(more) ? 0 : more;

    private static double Failed(double hazard) => hazard < 1e-8 ? hazard : 1 - Math.Exp(-hazard);

    private double Score(int mode, double used) => chances.ScoreOf(mode, used);
}
