using AxleRisk.Core.Analyses.Learning;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Learning;

/// <summary>What was learned as a scenario: every sample keeps it, and it learns again.</summary>
public class LearnedShapeTests
{
    private static readonly Input Choice = new("fatigue.stress_factor", Quantities.StressFactor, null,
        new Value.Uncertain(new NumberChoice([1.0, 1.2], [0.7, 0.3]), Knowledge.Unknown), false);

    private static readonly LearnResult Result = Learn(LearnCase.Model(LearnCase.Field, Choice));

    // Posterior of the choice and of theta hang together: a greater stress goes with a smaller damage ratio.
    [Fact]
    public void Samples_of_the_learned_scenario_have_the_posterior_with_its_dependence()
    {
        LearnedShape shape = Result.Shape!;
        Assert.InRange(shape.Share, 0.95, 1);
        LifeModel learned = Model(shape, LearnCase.Field);
        int stress = learned.Factors.ColumnNames.IndexOf("fatigue.stress_factor"), ratio = learned.Factors.ColumnNames.IndexOf("fatigue.damage_ratio");
        const int rows = 20_000;
        Workspace workspace = learned.CreateWorkspace(rows);
        double[][] values = learned.CreateColumns(rows);
        learned.Draw(SamplingPlan.FromName("sobol", rows), 7, "test", 0, rows, workspace, values);
        double Probability(double state) => values[stress].Count(v => v == state) / (double)rows;
        double Mean(double state) => values[ratio].Zip(values[stress]).Where(x => x.Second == state).Average(x => Math.Log(x.First));

        // 20,000 evenly spread rows, and a shape whose share is above 0.95.
        LearnedFactor choice = Result.Factors.Single(f => f.Name == "fatigue.stress_factor");
        Assert.Equal(choice.States[1].Posterior, Probability(1.2), 2);
        PosteriorSample exact = Result.Posterior!;
        foreach ((double state, int k) in new[] { (1.0, 0), (1.2, 1) })
        {
            double p = exact.Mean(row => exact.Combination[row] == k ? 1 : 0);
            double z = exact.Mean(row => exact.Combination[row] == k ? exact.Z[0][row] : 0) / p;
            Assert.Equal(Math.Log(LearnCase.Ratio) + (LearnCase.ThetaSd * z), Mean(state), 2);
        }

        Assert.True(Mean(1.0) - Mean(1.2) > 0.3);

        // The rows handed over with the shape are of the posterior.
        double[] rowsOfRatio = [.. shape.Sample.Select(s => Math.Log(s[shape.Columns.IndexOf("fatigue.damage_ratio")]))];
        Assert.InRange(rowsOfRatio.Distinct().Count(), 300, 1_000);
        Assert.Equal(exact.Mean(row => Math.Log(LearnCase.Ratio) + (LearnCase.ThetaSd * exact.Z[0][row])), rowsOfRatio.Average(), 0.01);
        Assert.Equal(exact.Mean(row => exact.Combination[row]),
            shape.Sample.Average(s => s[shape.Columns.IndexOf("fatigue.stress_factor")] == 1.2 ? 1.0 : 0), 0.01);

        // By scores the same way is gone.
        double[][] scores = [.. workspace.Unit.Select(_ => new[] { 0.4 })], byScores = learned.CreateColumns(1);
        learned.Factors.MapScores(scores, byScores, 1);
        double[][] units = [.. workspace.Unit.Select(_ => new[] { StandardNormal.Cumulative(0.4) })],
            byUnits = learned.CreateColumns(1);
        learned.Factors.Map(units, byUnits, 1);
        Assert.All(byScores.Zip(byUnits), x => Assert.Equal(x.First[0], x.Second[0], 9));
    }

    [Fact]
    public void The_same_data_in_two_parts_teach_what_they_teach_at_once()
    {
        FieldRecord[] records = [.. LearnCase.Field.Records];
        FieldData first = new("a.csv", [.. records.Take(4)]) { Digest = "a" }, second = new("b.csv", [.. records.Skip(4)]) { Digest = "b" };
        LearnResult one = Learn(LearnCase.Model(first, Choice));
        LearnResult two = Learn(Model(one.Shape!, second));
        Assert.Equal(["a", "b"], two.Shape!.Learned.Data);
        Assert.Equal(2, new Unknowns(Model(one.Shape!, second)).Combinations.Length); // the states that were learned, each once
        for (int i = 0; i < Result.Curve.Length; i++)
        {
            // The first part's posterior is skewed, and its shape normal: the second part moves into its tail.
            Assert.InRange(two.Curve[i].After.Estimate - Result.Curve[i].After.Estimate, -0.02, 0.02);
            Assert.InRange(two.Curve[i].After.High - Result.Curve[i].After.High, -0.02, 0.02);
        }

        // The shape learned second holds what the second posterior does: its sample's mean and spread of ln ratio, in scores of the file.
        double[] theta = [.. two.Shape.Sample.Select(s => (Math.Log(s[two.Shape.Columns.IndexOf("fatigue.damage_ratio")])
            - Math.Log(LearnCase.Ratio)) / LearnCase.ThetaSd)];
        double mean = two.Shape.Learned.States.Sum(s => s.Probability * s.Mean[0]);
        double square = two.Shape.Learned.States.Sum(s => s.Probability * ((s.Factor[0][0] * s.Factor[0][0]) + (s.Mean[0] * s.Mean[0])));
        Assert.Equal(theta.Average(), mean, 0.02); // 1,000 rows spread evenly
        Assert.Equal(theta.Average(x => x * x), square, 0.05);
        Assert.InRange(square - (mean * mean), 0.01, 0.7); // that of the prior is 1

        // From what is learned already nothing is learned twice.
        var again = Assert.Throws<StudyException>(() => Learn(Model(one.Shape!, first)));
        Assert.Contains("a.csv", again.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_changed_input_forgets_what_was_learned_of_it_alone()
    {
        Learned learned = Result.Shape!.Learned;
        Scenario scenario = Model(Result.Shape!, LearnCase.Field).Scenario;
        Scenario changed = Remedy.Apply(scenario,
            new Remedy("x", null, [new Change.ToValue("fatigue.stress_factor", new Value.Certain(1))]));
        Learned left = FactorSet.Of(changed).Learned!.Learned;
        Assert.Empty(left.Choices);
        Assert.Single(left.States);

        // The mixture's mean and variance stay.
        double mean = learned.States.Sum(s => s.Probability * s.Mean[0]);
        double second = learned.States.Sum(s => s.Probability * ((s.Factor[0][0] * s.Factor[0][0]) + (s.Mean[0] * s.Mean[0])));
        Assert.Equal(mean, left.States[0].Mean[0], 10);
        Assert.Equal(second - (mean * mean), left.States[0].Factor[0][0] * left.States[0].Factor[0][0], 10);
        Assert.NotNull(FactorSet.Of(Remedy.Apply(scenario,
            new Remedy("y", null, [new Change.Times("fatigue.damage_ratio", 0.9)]))).Learned);
        Assert.Null(new LifeModel(LogLinear.Scenario).Factors.Learned);
    }

    private static LifeModel Model(LearnedShape shape, FieldData field)
    {
        LifeModel bare = LearnCase.Model(field, Choice);
        return new LifeModel(bare.Scenario with { Learned = shape.Learned });
    }

    private static LearnResult Learn(LifeModel model) => LearnAnalysis.Run(
        model, new LearnQuestion([50_000, 100_000, 200_000]) { Keeps = true },
            new StudySettings(LearnAnalysis.LeastEvaluations, 1, "sobol"), new RunOptions());
}
