using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Answers;

/// <summary>The failure probability as the risk study gives it, above an analysis that has a sample of its own.</summary>
internal static class HeadlineBlocks
{
    public static Headline Of(double km, RiskHeadline? headline, Interval own)
    {
        Interval p = headline?.Probability ?? own;
        return new Headline(
            RiskText.Question(km), RiskText.Answer(p),
            [$"95 % interval {Figures.ProbabilityRange(p)}", .. headline is null ? [] : new[] { HeadlineText.Own(headline, own) }]);
    }
}
