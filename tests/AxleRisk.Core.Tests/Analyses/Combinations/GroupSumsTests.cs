using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Combinations;

/// <summary>Sums by group counted by hand, and where a pair's departure counts as sure.</summary>
public sealed class GroupSumsTests
{
    private static readonly double[][] Units = Synthetic.Units(3, 1000, 7); // 1000 is no multiple of 64
    private static readonly EventRows Rows = Synthetic.Rows(Units, u => 0.1 + (0.5 * u[0] * u[1]));
    private static readonly GroupSums Sums = new(Rows, Synthetic.UpperFifths(Units));

    [Fact]
    public void Rows_and_failures_are_those_of_the_rows_inside()
    {
        foreach (int[] combination in (int[][])[[], [0], [1], [0, 1], [0, 1, 2]])
        {
            int[] inside = [.. Enumerable.Range(0, 1000).Where(row => combination.All(f => Units[f][row] > 0.8))];
            Assert.Equal(inside.Length, Sums.Estimate((n, _) => n[0], combination).Estimate);
            Assert.Equal(inside.Sum(row => Rows.Weights[0][row]), Sums.Estimate((_, f) => f[0], combination).Estimate, 1e-10);
            Assert.Equal(1000, Sums.Estimate((n, _) => n[1], combination).Estimate);
            Assert.Equal(Rows.Failures, Sums.Estimate((_, f) => f[1], combination).Estimate, 1e-10);
        }

        // Again, from what is kept: the order of the members is another combination of the same rows.
        Assert.Equal(Sums.Probability([0, 1]), Sums.Probability([1, 0]));
        Assert.Equal(63, Sums.DegreesOfFreedom);
    }

    [Fact]
    public void Intervals_are_those_of_the_jackknife()
    {
        double[][] groups = [.. Enumerable.Range(0, 64).Select(g =>
        {
            int[] inside = [.. Enumerable.Range(0, 1000).Where(row => (long)row * 64 / 1000 == g && Units[1][row] > 0.8)];
            int[] all = [.. Enumerable.Range(0, 1000).Where(row => (long)row * 64 / 1000 == g)];
            return new double[] { inside.Length, inside.Sum(r => Rows.Weights[0][r]), all.Length, all.Sum(r => Rows.Weights[0][r]) };
        })];
        Interval expected = Jackknife.Estimate(groups, s => s[1] / s[0]), own = Sums.Probability([1]);
        Assert.Equal(expected.Estimate, own.Estimate, 1e-13);
        Assert.Equal(expected.Low, own.Low, 1e-12);
        Assert.Equal(expected.High, own.High, 1e-12);
        (double excess, double error) = Jackknife.WithStandardError(groups, s => (s[1] / s[0]) - (s[3] / s[2]));
        Assert.Equal(excess / error, Sums.Excess([1], []), 1e-9);
        Assert.Equal(double.NaN, Sums.Excess([1], [1]));
        Assert.Equal(double.NaN, Sums.Standardised((_, _) => 2, [0])); // no error, no number of errors
    }

    // The chance of a false claim is shared among the pairs and both sides: of one pair the departure counts as sure where it is beyond
    // Student's quantile of the rate / 2.
    [Theory]
    [InlineData(1.02, true)]
    [InlineData(0.98, false)]
    public void A_pair_is_notable_where_its_departure_is_surer_than_the_rate(double times, bool notable)
    {
        double[][] units = Synthetic.Units(2, 20_000, 3);
        EventRows rows = Synthetic.Rows(units, u => u[0] > 0.8
            && u[1] > 0.8 ? 0.15 + (0.2 * u[1]) : 0.05 + (0.3 * (u[0] > 0.8 ? u[0] : 0.2)));
        var ranges = Synthetic.UpperFifths(units);
        var sums = new GroupSums(rows, ranges);
        static double Product(double[] n, double[] f) => f[1] / n[1] * (f[2] / n[2]) / (f[3] / n[3]);
        double difference = sums.Standardised((n, f) => (f[0] / n[0]) - Product(n, f), [0, 1], [0], [1]);
        double ratio = sums.Standardised((n, f) => Math.Log(f[0] / n[0] / Product(n, f)), [0, 1], [0], [1]);
        double surety = Math.Min(Math.Abs(difference), Math.Abs(ratio));
        double rate = 2 * StudentT.Upper(surety, 63);
        Assert.InRange(rate, 1e-60, 0.5);
        PairEffect pair = Assert.Single(PairEffects.Of(rows, Synthetic.Told(2), ranges, [0, 1], new CombineLimits
        { ErrorRate = rate * times }));
        Assert.Equal(notable, pair.IsNotable);
        Assert.Equal(sums.Probability([0, 1]), pair.Together);
        Assert.Equal(pair.Together.Estimate / pair.Multiplied.Estimate, pair.Ratio.Estimate, 1e-12);
        Assert.Equal(pair.Rows / 20_000.0, pair.Likelihood);
    }

    [Fact]
    public void A_pair_needs_its_rows_and_enough_failures_of_its_own_and_by_multiplication()
    {
        double[][] units = Synthetic.Units(2, 20_000, 3);
        EventRows rows = Synthetic.Rows(units, u => u[0] > 0.8 && u[1] > 0.8 ? 0.5 : 0.05);
        var ranges = Synthetic.UpperFifths(units);
        PairEffect[] Of(CombineLimits limits) => [.. PairEffects.Of(rows, Synthetic.Told(2), ranges, [0, 1], limits)];
        PairEffect pair = Assert.Single(Of(new()));
        Assert.True(pair.IsNotable);
        Assert.Single(Of(new() { LeastRows = pair.Rows }));
        Assert.Empty(Of(new() { LeastRows = pair.Rows + 1 }));
        double byMultiplication = pair.Rows * pair.Multiplied.Estimate; // the lesser of the two
        Assert.True(byMultiplication < pair.Rows * pair.Together.Estimate);
        Assert.True(Of(new() { LeastEffectiveFailures = byMultiplication * 0.999 })[0].IsNotable);
        Assert.False(Of(new() { LeastEffectiveFailures = byMultiplication * 1.001 })[0].IsNotable);
        // One factor's two ranges.
        Assert.Empty(PairEffects.Of(rows, Synthetic.Told(2), [ranges[0], ranges[1] with { Owner = 0 }], [0, 1], new()));
    }

    [Fact]
    public void A_search_that_is_ended_keeps_the_rows_of_whole_blocks()
    {
        var model = new LifeModel(FiveLegs.Scenario with { RequiredKm = 200_000 });
        var settings = new StudySettings(4096, 3, PlainMonteCarlo.PlanName);
        DrawnRows whole = new RowDraw(model, settings, new RangePlan(model)).Run(new RunOptions { Threads = 1 });
        Assert.Equal((4096, false), (whole.Rows.Count, whole.IsPartial));
        using var source = new CancellationTokenSource();
        DrawnRows part = new RowDraw(model, settings, new RangePlan(model)).Run(
            new RunOptions { Threads = 1, Cancellation = source.Token, Progress = done => { if (done >= 1024) { source.Cancel(); } } });
        Assert.True(part.IsPartial);
        Assert.InRange(part.Rows.Count, 1024, 2048);
        Assert.Equal(whole.Rows.Weights[0].Take(part.Rows.Count), part.Rows.Weights[0]);
        Assert.Equal(part.Rows.Weights[0].Sum(), part.Rows.Failures, 1e-9);
        Assert.Equal(Enumerable.Range(0, part.Rows.Count).Select(i => (byte)((long)i * 64 / part.Rows.Count)), part.Rows.Group);
        Assert.Equal(Enumerable.Range(0, 4096).Select(i => (byte)(i / 64)), whole.Rows.Group);

        // Weights of what is known: the mean over the scatter of exact probabilities is the same whatever is held, to four errors.
        double mean = whole.Rows.Weights[0].Average();
        Assert.All(whole.Rows.Weights, w => Assert.Equal(mean, w.Average(), 4 * Math.Sqrt(mean / 4096)));
        Assert.All(whole.Rows.Weights[3], w => Assert.True(w is 0 or 1));
        Assert.All(whole.Rows.Weights[1], w => Assert.InRange(w, 0, 1));
    }

    [Theory]
    [InlineData(2, 4)]
    [InlineData(3, 8)]
    public void A_row_of_interactions_costs_the_sample_and_every_set(int players, int sets)
    {
        var model = new LifeModel(FiveLegs.Scenario);
        Factor[] damage = [.. model.Factors.Factors.Where(f => !LifeScale.Contains(f)).Take(players)];
        Factor scale = model.Factors.Factors.First(LifeScale.Contains);
        Assert.Equal(1 + sets,
            InteractionTally.EvaluationsPerRow(model, [.. damage.Select(f => System.Collections.Immutable.ImmutableArray.Create(f))]));
        Assert.Equal(1 + sets,
            InteractionTally.EvaluationsPerRow(model,
            [[scale], .. damage.Select(f => System.Collections.Immutable.ImmutableArray.Create(f))]));
    }

    // Two factors of 3 and 4 that multiply, and the same two where they fail together alone.
    [Fact]
    public void More_than_the_product_of_its_members_is_said_of_a_combination_that_is_more_alone()
    {
        double[][] units = Synthetic.Units(2, 40_000, 5);
        CombinationChoice product = Choice(u => 0.01 * (u[0] > 0.8 ? 3 : 1) * (u[1] > 0.8 ? 4 : 1));
        CombinationChoice together = Choice(u => u[0] > 0.8 && u[1] > 0.8 ? 0.5 : 0.01);
        Assert.False(product.ExceedsParts([0, 1]));
        Assert.True(together.ExceedsParts([0, 1]));
        Assert.False(together.ExceedsParts([0]));
        Interval multiplied = product.Multiplied([0, 1]);
        Assert.InRange(0.12, multiplied.Low, multiplied.High);

        CombinationChoice Choice(Func<double[], double> probability) =>
            new(new GroupSums(Synthetic.Rows(units, probability), Synthetic.UpperFifths(units)), new CombineLimits(), 1);
    }
}
