using System.Globalization;

namespace AxleRisk.Core.Analyses.RareEvents;

/// <summary>The sentences of a rare-event result.</summary>
internal sealed class RareEventWords(
    StratifiedImportance sampling, RareEventSettings settings, bool isConditional, int points, RareEventEstimate? check)
{
    /// <summary>Standard errors between the two methods from which they count as contradicting: one time in 400 by chance.</summary>
    private const double Contradiction = 3;

    /// <summary>The method in words.</summary>
    public string Method => !(sampling.Estimate > 0) ? "search for a failure"
        : (points, isConditional) switch
        {
            (0, false) => "importance sampling about failing samples",
            (0, true) => "importance sampling about failing samples, Miner sum and S-N scatter averaged exactly",
            (_, false) => "importance sampling about the design points",
            _ => "importance sampling about the design points, Miner sum and S-N scatter averaged exactly",
        };

    /// <summary>Why the method fits, or what the answer means.</summary>
    public string Reason
    {
        get
        {
            double p = sampling.Estimate;
            if (!(p > 0))
            {
                return "no combination of the factors was found that fails: the probability is not known to be zero, but it was"
                    + $" looked for down to about {Text(sampling.Unresolved)}";
            }

            double cov = Math.Max(sampling.Cov, settings.TargetCov);
            double counting = (1 - p) / (p * cov * cov);
            string where = points switch
            {
                0 => "no design point was found, so the samples are drawn about failing ones",
                1 => "nearly all failures lie about one design point, and the samples are drawn there",
                _ => $"nearly all failures lie about {points} design points, and the samples are drawn there",
            };
            return $"{where}; counting would need about {Text(counting)} evaluations for the same accuracy";
        }
    }

    /// <summary>Why the answer cannot be relied on; null where it can.</summary>
    public string? Doubt
    {
        get
        {
            if (!(sampling.Estimate > 0))
            {
                return null; // the answer says itself what it is
            }

            string[] doubts =
            [
                .. sampling.IsDegenerate
                    ? [$"a few samples carry the estimate: the largest weight brings {Percent(sampling.LargestShare)} of it and the"
                        + $" effective sample size is {sampling.EffectiveSize.ToString("F0", CultureInfo.InvariantCulture)}"]
                    : Array.Empty<string>(),
                .. sampling.Cov > settings.TargetCov
                    ? [$"the coefficient of variation is {Percent(sampling.Cov)}, not the {Percent(settings.TargetCov)} asked for"]
                    : Array.Empty<string>(),
                .. Contradicts() ? ["subset simulation gives another answer"] : Array.Empty<string>(),
            ];
            return doubts.Length == 0 ? null : string.Join("; ", doubts);
        }
    }

    private bool Contradicts()
    {
        if (check is null)
        {
            return false;
        }

        double error = Math.Sqrt((check.Cov * check.Cov) + (sampling.Cov * sampling.Cov));
        return !(Math.Abs(Math.Log(check.Probability.Estimate / sampling.Estimate)) < Contradiction * error);
    }

    private static string Text(double x) => x.ToString("0.#E+0", CultureInfo.InvariantCulture);

    private static string Percent(double x) => (100 * x).ToString("0.#", CultureInfo.InvariantCulture) + " %";
}
