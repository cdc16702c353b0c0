using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Text;

/// <summary>The evidence in words, and how surprising the life is under the scenario.</summary>
internal static class SurpriseText
{
    public static IEnumerable<string> Sentences(CausesResult result)
    {
        if (result.FailureBefore is var (from, to))
        {
            yield return result.Evidence.Life switch
            {
                LifeEvidence.FailedAt(var km) => Sentence($"Broken at {Figures.Exact(km)} km: under the scenario {{0}} fails by then", to),
                LifeEvidence.FailedBetween(var a, var b) =>
                    Sentence($"Broken between {Figures.Exact(a)} and {Figures.Exact(b)} km: under the scenario {{0}} fails by {Figures.Exact(b)} km", to)
                        + $" {Figures.Probability(to.Estimate - from.Estimate)} fail between the two.",
                LifeEvidence.Survived(var km) => Sentence(
                    $"Unbroken at {Figures.Exact(km)} km: under the scenario {{0}} gets that far",
                    new(1 - to.Estimate, 1 - to.High, 1 - to.Low)),
                _ => "",
            };
            if (!result.IsConditional && result.Evidence.Life is LifeEvidence.FailedAt)
            {
                yield return "Lives are counted here, for the Miner sum or the S-N scatter is not lognormal: failures within 2.5 % of the distance stand for it.";
            }
        }

        foreach (Measurement m in result.Evidence.Measured)
        {
            Cause cause = result.Causes.First(c => c.Name == m.Factor);
            yield return $"Measured: {cause.Label} {Figures.Number(m.Value)} {cause.Factor.Unit}".TrimEnd()
                + $", standard deviation {Figures.Number(m.StandardDeviation)}.";
        }

        foreach (CrackLook look in result.Evidence.Looks)
        {
            yield return LookWords.Sentence(look);
        }

        foreach (KnownState k in result.Evidence.Known)
        {
            Cause cause = result.Causes.First(c => c.Name == k.Factor);
            yield return $"Known: {cause.Label} {cause.Factor.Show(k.Value)}.";
        }
    }

    private static string Sentence(string form, Interval p) =>
        string.Format(form, OneIn(p.Estimate))
            + $" ({Figures.Probability(p.Estimate)}, {Figures.ProbabilityRange(p)}), {Judgement(p.Estimate)}.";

    private static string OneIn(double p) =>
        !(p > 0) ? "no axle that was drawn" : p > 0.67 ? "nearly every axle" : $"about 1 axle in {Figures.OneIn(p)}";

    private static string Judgement(double p) => p switch
    {
        >= 0.1 => "which is nothing unusual",
        >= 0.01 => "which is unusual",
        >= 1e-4 => "which is rare",
        _ => "which is so rare that the scenario itself is to be doubted first",
    };
}
