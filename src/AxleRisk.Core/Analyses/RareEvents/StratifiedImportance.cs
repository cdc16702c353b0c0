using AxleRisk.Core.Numerics;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.RareEvents;

/// <summary>
/// Importance sampling over the states of the discrete factors until the coefficient of variation is reached: every state
/// gets a first round, further samples go where they lower the variance most (Neyman 1934).
/// </summary>
internal sealed class StratifiedImportance(IReadOnlyList<Stratum> strata, RareEventSettings settings)
{
    private const long FirstRound = 512;
    private const long LeastRound = StudySettings.BlockSize;

    /// <summary>A first variance from few samples is often too small: no round multiplies the samples by more than this.</summary>
    private const double MostGrowth = 4;

    /// <summary>States whose first-order part is below this share of the whole get the least first round.</summary>
    private const double SmallPart = 1e-3;

    private const double TwoSided95 = 1.959963984540054;
    private const double LeastEffectiveSize = 50;

    /// <summary>However modest the target, sampling goes on to this: below it the error itself is not known.</summary>
    private const double LeastTarget = 0.1;

    private readonly double target = Math.Min(settings.TargetCov, LeastTarget);

    /// <summary>The failure probability.</summary>
    public double Estimate => strata.Sum(s => s.Part);

    /// <summary>The coefficient of variation of the estimate; NaN where nothing failed.</summary>
    public double Cov => Estimate > 0
        ? Math.Sqrt(strata.Where(s => s.Samples > 0).Sum(s => Math.Pow(s.Spread / Estimate, 2) / s.Samples))
        : double.NaN;

    /// <summary>The probability that no sampling stands behind: of states where no failure was found.</summary>
    public double Unresolved => strata.Sum(s => s.Probability * s.Unresolved);

    /// <summary>The share of the estimate that the largest weight alone brings.</summary>
    public double LargestShare => strata.Max(s => s.LargestTerm) / Estimate;

    /// <summary>Kish's effective sample size of the weights.</summary>
    public double EffectiveSize => 1 / strata.Sum(s => Math.Pow(s.RootOfSquares / Estimate, 2));

    /// <summary>Whether a few weights carry the estimate, so that neither it nor its error can be trusted.</summary>
    public bool IsDegenerate => Estimate > 0 && (LargestShare > Stratum.HeavyShare || EffectiveSize < LeastEffectiveSize);

    /// <summary>The estimate with its 95 % interval, normal on the scale of the logarithm.</summary>
    public Interval Probability
    {
        get
        {
            double factor = Estimate > 0 ? Math.Exp(TwoSided95 * Cov) : 1;
            return new Interval(Estimate, Estimate / factor, Math.Min(1, (Estimate * factor) + Unresolved));
        }
    }

    /// <summary>Evaluations spent so far.</summary>
    public long Spent => strata.Sum(s => s.SearchEvaluations + s.SamplingEvaluations);

    /// <summary>Samples until the target or the limit is reached; true unless cancelled.</summary>
    public bool Run(RunOptions options)
    {
        double all = strata.Sum(s => s.FirstOrderPart);
        foreach (Stratum stratum in strata)
        {
            if (!stratum.Sample(stratum.FirstOrderPart < SmallPart * all ? LeastRound : FirstRound, Reporting(options)))
            {
                return false;
            }
        }

        while (!(Cov <= target) && strata.Any(s => s.CanFail))
        {
            long left = settings.MaxEvaluations - Spent;
            foreach ((Stratum stratum, long rows) in NextRound(left))
            {
                if (!stratum.Sample(rows, Reporting(options)))
                {
                    return false;
                }
            }

            if (settings.MaxEvaluations - Spent == left)
            {
                break; // nothing could be added within the limit
            }
        }

        return true;
    }

    private List<(Stratum Stratum, long Rows)> NextRound(long left)
    {
        double spreads = strata.Sum(s => s.Spread);
        double perSpread = spreads / Estimate / (target * target);
        var rounds = new List<(Stratum, long)>();
        foreach (Stratum stratum in strata.Where(s => s.CanFail).OrderByDescending(s => s.Spread))
        {
            // Without any failure yet there is no spread to go by: all states alike.
            double wanted = spreads > 0 ? (1.05 * perSpread * (stratum.Spread / Estimate)) - stratum.Samples : stratum.Samples;
            double rows = Math.Min(wanted, (MostGrowth - 1) * stratum.Samples);
            long blocks = Math.Min((long)Math.Ceiling(Math.Max(0, rows) / LeastRound), left / LeastRound);
            if (blocks > 0)
            {
                rounds.Add((stratum, blocks * LeastRound));
                left -= blocks * LeastRound;
            }
        }

        return rounds;
    }

    private RunOptions Reporting(RunOptions options)
    {
        long before = Spent;
        return options with { Progress = options.Progress is { } report ? done => report(before + done) : null };
    }
}
