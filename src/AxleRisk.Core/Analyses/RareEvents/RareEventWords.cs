using System.Globalization;

namespace AxleRisk.Core.Analyses.RareEvents;

/// <summary>The sentences of a rare-event result.</summary>
internal sealed class RareEventWords(
    RareEventChoice choice, StratifiedImportance sampling, RareEventSettings settings, string averaged, int points)
{
    /// <summary>Standard errors between the two methods from which they count as contradicting: one time in 400 by chance.</summary>
    private const double Contradiction = 3;

    private readonly double probability = choice.Answer.Probability.Estimate;
    private readonly double cov = choice.Answer.Cov;

    /// <summary>The method in words.</summary>
    public string Method => !(probability > 0) ? "search for a failure"
        : choice.IsSubset ? SubsetSimulation.Name
        : RareEventChoice.Importance + (points > 0 ? " about the design points" : " about failing samples")
            + averaged;

    /// <summary>Why the method fits, or what the answer means.</summary>
    public string Reason
    {
        get
        {
            if (!(probability > 0))
            {
                return choice.IsPartial
                    ? "the run was ended before it could tell anything"
                    : "no combination of the factors was found that fails: that does not prove the probability zero, but it was looked for"
                        + $" down to about {Number(sampling.Unresolved)}";
            }

            double reached = Math.Max(cov, settings.TargetCov);
            string counting = Number((1 - probability) / (probability * reached * reached));
            return $"{Place}; counting would need about {counting} evaluations for the same accuracy";
        }
    }

    /// <summary>Why the answer cannot be relied on; null where it can, and where it says itself that no failure was found.</summary>
    public string? Doubt => probability > 0 && Doubts().ToArray() is { Length: > 0 } doubts ? string.Join("; ", doubts) : null;

    private string Place => (choice.IsSubset, points) switch
    {
        (true, _) => "no few design points stand for the failures, and subset simulation needs none",
        (_, 0) => "no design point was found, so the samples are drawn about failing ones",
        (_, 1) => "nearly all failures lie about one design point, and the samples are drawn there",
        _ => $"nearly all failures lie about {points} design points, and the samples are drawn there",
    };

    private IEnumerable<string> Doubts()
    {
        if (sampling.IsDegenerate && !choice.IsSubset)
        {
            yield return $"a few samples carry the estimate: the largest weight brings {Percent(sampling.LargestShare)} of it and the"
                + $" effective sample size is {sampling.EffectiveSize.ToString("F0", CultureInfo.InvariantCulture)}";
        }

        if (!(cov <= settings.TargetCov))
        {
            yield return $"the coefficient of variation is {Percent(cov)}, not the {Percent(settings.TargetCov)} asked for";
        }

        if (sampling.Unresolved > probability)
        {
            yield return "in some states of the discrete factors no failure was found; all that is known is that they add less than"
                + $" about {Number(sampling.Unresolved)}";
        }

        if (choice.Check is { } check)
        {
            double error = Math.Sqrt((check.Cov * check.Cov) + (cov * cov));
            if (!(Math.Abs(Math.Log(check.Probability.Estimate / probability)) < Contradiction * error))
            {
                yield return $"{check.Method} gives another answer, {Number(check.Probability.Estimate)}";
            }
        }
    }

    private static string Number(double x) => x.ToString("0.#e0", CultureInfo.InvariantCulture);

    private static string Percent(double x) => (100 * x).ToString("0.#", CultureInfo.InvariantCulture) + " %";
}
