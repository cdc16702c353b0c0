using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Remedies;

public sealed class RemediesAnalysisTests
{
    private static readonly Remedy Wall = new("wall", 10, [new Change.ToValue("axle.wall_mm", new Value.Certain(7))]);

    private static readonly Remedy Slower = new("slower", null, [new Change.Times("use.speed_factor", 0.9)]);

    private static readonly Remedy Nothing = new("nothing", 2, [new Change.Times("axle.wall_mm", 1)]);

    private static readonly RemediesResult Result = RemediesAnalysis.Run(
        new LifeModel(FiveLegs.Scenario with { Remedies = [Nothing, Wall, Slower] }), new StudySettings(2_000, 1, "plain"),
            new RunOptions());

    [Fact]
    public void Every_remedy_and_every_pair_has_its_row_and_the_best_comes_first()
    {
        Assert.Equal(
            ["nothing", "nothing + slower", "nothing + wall", "slower", "wall", "wall + slower"],
            Result.Rows.Select(r => r.Name).Order(StringComparer.Ordinal));
        double[] probabilities = [.. Result.Rows.Select(r => r.Case.Probability.Estimate)];
        Assert.Equal(probabilities.Order(), probabilities);
        Assert.Equal("wall + slower", Result.Rows[0].Name);
        Assert.Equal("wall + slower", Result.Best(2)!.Name);
    }

    [Fact]
    public void A_remedy_that_changes_nothing_changes_nothing_alone_or_beside_another()
    {
        CaseChange nothing = Row("nothing").Case.Change!;
        Assert.Equal((0, 0, 0), (nothing.Difference.Estimate, nothing.Difference.Low, nothing.Difference.High));
        Assert.Equal(Row("wall").Case, Row("nothing + wall").Case);
    }

    [Fact]
    public void Costs_add_up_where_all_are_stated()
    {
        Assert.Equal(12, Row("nothing + wall").Cost);
        Assert.Null(Row("slower").Cost);
        Assert.Null(Row("wall + slower").Cost);
    }

    [Fact]
    public void More_wall_and_less_speed_are_distinguishable_remedies() =>
        Assert.All(new[] { Row("wall"), Row("slower") }, r =>
        {
            Assert.True(r.Case.Change!.Difference.High < 0);
            Assert.True(r.Case.Change.LifeRatio.Low > 1);
        });

    private static RemedyRow Row(string name) => Result.Rows.Single(r => r.Name == name);
}
