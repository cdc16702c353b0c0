using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Causes;

/// <summary>How surprising a life is by the risk study's figures.</summary>
public sealed class CausesResultTests
{
    private static readonly RunRecord Run = new(1_000, 1_000, 1, "plain", 1, false);

    private static readonly Interval Early = new(0.1, 0.09, 0.11), Late = new(0.3, 0.28, 0.32);

    // What failed between two distances lies between both figures; what failed before one, between nothing and that figure.
    [Fact]
    public void A_life_lies_between_the_figures_of_its_distances()
    {
        CausesResult between = Of(new LifeEvidence.FailedBetween(10_000, 20_000));
        Assert.Equal((Early, Late), between.With([At(10_000, Early), At(20_000, Late)]).FailureBefore);
        Assert.Equal((new Interval(0, 0, 0), Late), Of(new LifeEvidence.FailedBetween(0, 20_000)).With([At(20_000, Late)]).FailureBefore);
        Assert.Equal((Late, Late), Of(new LifeEvidence.FailedAt(20_000)).With([At(20_000, Late)]).FailureBefore);
        Assert.Null(Of(null).With([]).FailureBefore);
    }

    private static RiskHeadline At(double km, Interval p) => new(km, p, RiskMethod.Conditional, Run);

    private static CausesResult Of(LifeEvidence? life) => new()
    {
        Evidence = new Evidence { Life = life },
        Causes = [],
        Explanations = [],
        IsConditional = true,
        EffectiveSampleSize = 1_000,
        GreatestShare = 0.001,
        Rows = 1_000,
        TwinEvaluations = 0,
        Pilots = 1,
        IsMoved = false,
        Run = Run,
    };
}
