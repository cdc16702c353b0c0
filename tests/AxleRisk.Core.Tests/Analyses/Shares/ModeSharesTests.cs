using AxleRisk.Core.Analyses.Shares;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Shares;

/// <summary>The shares where several modes of failure end the life, their chances among the players.</summary>
public sealed class ModeSharesTests
{
    private const double Km = 30_000;

    private static readonly string[] Chances =
        ["fatigue.miner_sum", "fatigue.log10_life_scatter", "axle.largest_load_scatter", "bearing.life_scatter"];

    // A section weak enough to yield now and then.
    private static readonly Scenario Weak = Change(ThreeModes.Scenario, Quantities.YieldStrength, _ => new Value.Certain(190)) with
    {
        RequiredKm = Km,
    };

    // Nothing is left but the chances, so the game is closed: two rows that share some of them both survive with the product over the
    // modes, of S S' = S^2 for a chance of one's own, of S for one they share, and with the bivariate normal probability in fatigue. The
    // table of that is within 1e-6. Counting would leave intervals of some percent.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_chances_alone_share_out_failure_exactly(bool allSubsets)
    {
        Scenario scenario = CertainModes.Of(Weak);
        (double damage, double yields, double lives) = CertainModes.Rates(scenario);
        double miner = 0.29 * 0.29 / (CertainModes.Sigma * CertainModes.Sigma), g = Math.Log(Km * damage) / CertainModes.Sigma;
        (double yield, double bearing) = (Math.Exp(-Km * yields), CertainModes.Bearing(Km * lives));
        Assert.All((double[])[StandardNormal.Upper(g), yield, bearing], s => Assert.InRange(s, 0.2, 0.99)); // each has a part in it
        double[] worth = [.. Enumerable.Range(0, 16).Select(q =>
            FatigueSurvives((q & 1) * miner + ((q >> 1) & 1) * (1 - miner)) * ((q & 4) != 0 ? yield : yield * yield)
            * ((q & 8) != 0 ? bearing : bearing * bearing))];
        double[] exact = SubsetGame.Values(4, worth);
        (ShareRun run, LifeShareProblem problem) = Run(scenario, 4_000, allSubsets);
        for (int player = 0; player < 4; player++)
        {
            Interval share = Share((run, problem), LifeShareProblem.Failure, Chances[player]);
            Assert.Equal(exact[player] / exact.Sum(), share.Estimate, 1e-5);
            Assert.InRange(share.High - share.Low, 0, 1e-9);
        }

        double FatigueSurvives(double shared) => shared == 0 ? StandardNormal.Upper(g) * StandardNormal.Upper(g)
            : shared == 1 ? StandardNormal.Upper(g) : BivariateNormal.Cumulative(-g, -g, shared);
    }

    // Counted is the same distribution by another name: a scatter cut off where nothing is left. The factors that are no chances are
    // dependent, so that complements have rows of their own; the last case ages.
    [Theory]
    [InlineData(false, false)]
    [InlineData(true, false)]
    [InlineData(false, true)]
    public void All_subsets_random_orders_and_counted_failures_agree(bool correlated, bool ages)
    {
        Scenario scenario = Only(Quantities.StressFactor, Quantities.RoughnessFactor) with
        {
            Correlations = correlated ? [new RankCorrelation("use.roughness_factor", "fatigue.stress_factor", 0.6)] : [],
        };
        scenario = ages ? ThreeModes.With(scenario, (Quantities.DamperWear, new Value.Certain(0.3))) : scenario;
        Scenario counted = Change(scenario, Quantities.LifeScatter,
            _ => new Value.Uncertain(new Truncated(new Normal(0, 0.2), -1.8, 1.8), Knowledge.Varies));
        const long rows = 120_000;
        (ShareRun Run, LifeShareProblem Problem) exact = Run(scenario, rows, true), orders = Run(scenario, rows, false),
            crude = Run(counted, rows, false);
        double narrow = 0, wide = 0;
        foreach (Factor factor in exact.Problem.Factors)
        {
            for (int output = 0; output < 2; output++)
            {
                Interval expected = Share(exact, output, factor.Name);
                AssertClose(expected, Share(orders, output, factor.Name));
                AssertClose(expected, Share(crude, output, factor.Name));
            }

            narrow += Width(Share(orders, LifeShareProblem.Failure, factor.Name));
            wide += Width(Share(crude, LifeShareProblem.Failure, factor.Name));
        }

        Assert.InRange(narrow, 0, wide / 1.5);
    }

    [Fact]
    public void The_number_of_threads_changes_no_digit()
    {
        var problem = new LifeShareProblem(new LifeModel(Weak), 1, Math.Log(Km));
        ShareRun[] runs = [.. new[] { 1, 3 }.Select(t => ShareRun.Run(problem, 20_000, 1, new RunOptions { Threads = t }))];
        Assert.All(Enumerable.Range(0, problem.Players), p => Assert.Equal(runs[0].Share(1, p), runs[1].Share(1, p)));
    }

    private static Scenario Only(params Quantity[] uncertain)
    {
        Scenario certain = CertainModes.Of(Weak);
        return certain with
        {
            Inputs = [.. certain.Inputs.Select(i =>
                uncertain.Contains(i.Quantity) ? Weak.Inputs.Single(w => w.Quantity == i.Quantity) : i)],
        };
    }

    private static Scenario Change(Scenario scenario, Quantity quantity, Func<Value, Value> change) =>
        scenario with { Inputs = [.. scenario.Inputs.Select(i => i.Quantity == quantity ? i with { Value = change(i.Value) } : i)] };

    private static (ShareRun Run, LifeShareProblem Problem) Run(Scenario scenario, long evaluations, bool allSubsets)
    {
        var problem = new LifeShareProblem(new LifeModel(scenario), 1, Math.Log(Km));
        return (ShareRun.Run(problem, evaluations, 1, new RunOptions(), allSubsets), problem);
    }

    private static Interval Share((ShareRun Run, LifeShareProblem Problem) of, int output, string factor) =>
        of.Run.Share(output, of.Problem.Factors.Select((f, i) => (f.Name, i)).Single(x => x.Name == factor).i);

    private static double Width(Interval interval) => interval.High - interval.Low;

    // Two 95 % intervals (Student, 31 degrees of freedom: 2.04): the difference within four standard errors, and these small.
    private static void AssertClose(Interval a, Interval b)
    {
        double se = Math.Sqrt(Math.Pow(Width(a), 2) + Math.Pow(Width(b), 2)) / (2 * 2.04);
        Assert.InRange(se, 0, 0.02);
        Assert.Equal(a.Estimate, b.Estimate, (4 * se) + 1e-9);
    }
}
