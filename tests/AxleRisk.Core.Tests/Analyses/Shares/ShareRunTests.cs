using AxleRisk.Core.Analyses.Shares;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Studies;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Shares;

/// <summary>Published and closed-form Shapley effects, by all subsets and by random orders.</summary>
public sealed class ShareRunTests
{
    // Student's 97.5 % point with 31 degrees of freedom (32 replicates): from an interval's half width to its standard error.
    private const double Student = 2.0395;

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void The_Ishigami_function(bool allSubsets)
    {
        // Source: closed form with a = 7, b = 0.1, 1e-10; E f = a / 2.
        static double F(ReadOnlySpan<double> z)
        {
            double x1 = Angle(z[0]), x2 = Angle(z[1]), x3 = Angle(z[2]);
            return Math.Sin(x1) + (7 * Math.Pow(Math.Sin(x2), 2)) + (0.1 * Math.Pow(x3, 4) * Math.Sin(x1));
        }

        static double Angle(double z) => Math.PI * ((2 * StandardNormal.Cumulative(z)) - 1);
        AssertShares([.435747023179, .442411144790, .121841832031], new NormalProblem(3, F, new AdditiveMoment(3.5)), 200_000, allSubsets,
            0.01);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void The_g_function(bool allSubsets)
    {
        // Sobol' g, a = (0, 1, 4.5, 9): V_u = prod of the factors' V_i = 1 / (3 (1 + a_i)^2), shared equally among the members of u.
        double[] a = [0, 1, 4.5, 9];
        double[] v = [.. a.Select(x => 1 / (3 * (1 + x) * (1 + x)))];
        double total = v.Aggregate(1.0, (p, x) => p * (1 + x)) - 1;
        double[] expected = new double[4];
        for (int u = 1; u < 16; u++)
        {
            int[] members = [.. Enumerable.Range(0, 4).Where(i => (u >> i & 1) == 1)];
            Array.ForEach(members, i => expected[i] += members.Aggregate(1.0, (p, j) => p * v[j]) / members.Length / total);
        }

        double F(ReadOnlySpan<double> z)
        {
            double product = 1;
            for (int i = 0; i < 4; i++)
            {
                product *= (Math.Abs((4 * StandardNormal.Cumulative(z[i])) - 2) + a[i]) / (1 + a[i]);
            }

            return product;
        }

        AssertShares(expected, new NormalProblem(4, F, new AdditiveMoment(1)), 200_000, allSubsets, 0.01);
    }

    // Source: enumeration of all subsets, 1e-9; models of Song, Nelson and Staum 2016, Owen and Prieur 2017 (from memory).
    public static TheoryData<double[], double[], double[], double[]> Linear => new()
    {
        { [1, 1], [1, 2], [.5], [.3392857143, .6607142857] },
        { [1, 1], [1, 1], [.9], [.5, .5] },
        { [1, 1, 1], [1, 1, 2], [0, 0, .5], [.125, .296875, .578125] },
        { [1, 1, 1], [1, 1, 2], [0, 0, -.5], [.25, .09375, .65625] },
        { [1, -2, .5], [1, 1, 3], [.3, -.2, .6], [.1379083754, .6164556727, .2456359519] },
    };

    [Theory]
    [MemberData(nameof(Linear))]
    public void Linear_models_of_correlated_inputs(double[] b, double[] sd, double[] correlation, double[] expected)
    {
        // Correlations in the order 12, 13, 23.
        int d = b.Length;
        var r = new double[d, d];
        for (int i = 0, next = 0; i < d; i++)
        {
            r[i, i] = 1;
            for (int j = i + 1; j < d; j++)
            {
                r[i, j] = r[j, i] = correlation[next++];
            }
        }

        double F(ReadOnlySpan<double> z)
        {
            double sum = 0;
            for (int i = 0; i < d; i++)
            {
                sum += b[i] * sd[i] * z[i];
            }

            return sum;
        }

        foreach (bool allSubsets in new[] { true, false })
        {
            AssertShares(expected, new NormalProblem(d, F, new AdditiveMoment(0), r), 100_000, allSubsets, 0.015);
        }
    }

    [Theory]
    [InlineData(false, true)]
    [InlineData(true, true)]
    [InlineData(false, false)]
    [InlineData(true, false)]
    public void The_failure_event_of_a_linear_limit_state(bool withScalePlayers, bool allSubsets)
    {
        // Fails where sum alpha_i U_i > beta; closed moments Phi2(-beta, -beta; sum of alpha_i^2 in the subset), shares by enumeration.
        double[] alpha = [.6, .4, .5, Math.Sqrt(.23)];
        const double Beta = 1.5;
        double[] worth = [.. Enumerable.Range(0, 16).Select(s =>
            BivariateNormal.Cumulative(-Beta, -Beta, Math.Min(1, alpha.Where((_, i) => (s >> i & 1) == 1).Sum(x => x * x))))];
        double[] values = SubsetGame.Values(4, worth);
        double[] expected = [.. values.Select(x => x / values.Sum())];
        int evaluated = withScalePlayers ? 2 : 4;
        double F(ReadOnlySpan<double> z)
        {
            double sum = 0;
            for (int i = 0; i < evaluated; i++)
            {
                sum += alpha[i] * z[i];
            }

            return sum;
        }

        JointMoment moment = withScalePlayers ? new ScatterMoment(Beta, .25, .23) : new CountedMoment(Beta);
        AssertShares(
            expected, new NormalProblem(evaluated, F, moment, scalePlayers: 4 - evaluated), withScalePlayers ? 40_000 : 400_000,
                allSubsets, 0.015);
    }

    [Fact]
    public void Shares_sum_to_one_and_the_number_of_threads_changes_no_digit()
    {
        var problem = new NormalProblem(3, z => Math.Exp(z[0]) * z[1] + z[2], new AdditiveMoment(0));
        ShareRun one = ShareRun.Run(problem, 30_000, 1, new RunOptions { Threads = 1 });
        ShareRun three = ShareRun.Run(problem, 30_000, 1, new RunOptions { Threads = 3 });
        Assert.Equal(1, Enumerable.Range(0, 3).Sum(p => one.Share(0, p).Estimate), 1e-14);
        Assert.Equal(Enumerable.Range(0, 3).Select(p => one.Share(0, p)), Enumerable.Range(0, 3).Select(p => three.Share(0, p)));
        Assert.Equal(1, one.Share(0, 0, 1, 2).Low, 1e-14);
    }

    [Fact]
    public void A_run_that_ends_by_width_gives_the_digits_of_one_of_as_many_pairs()
    {
        static double F(ReadOnlySpan<double> z) => z[0] + (0.7 * z[1]) + (0.3 * z[2]);
        var problem = new NormalProblem(3, F, new CountedMoment(2));
        ShareRun byWidth = ShareRun.Run(problem, 10_000_000, 1, new RunOptions { Threads = 2 }, halfWidth: 0.03, pairsOfFirstRound: 64);
        Assert.InRange(byWidth.WidestHalf, 0.02, 0.03);
        Assert.InRange(byWidth.Pairs, 2 * 64 * ShareRun.Replicates, 1_000_000);
        ShareRun stated = ShareRun.Run(problem, byWidth.Evaluations, 1, new RunOptions { Threads = 1 });
        Assert.Equal(byWidth.Pairs, stated.Pairs);
        Assert.Equal(Enumerable.Range(0, 3).Select(p => stated.Share(0, p)), Enumerable.Range(0, 3).Select(p => byWidth.Share(0, p)));
        ShareRun ceiling = ShareRun.Run(problem, 20_000, 1, new RunOptions(), halfWidth: 0.001, pairsOfFirstRound: 64);
        Assert.InRange(ceiling.Evaluations, 19_000, 20_000);
        Assert.False(ceiling.IsPartial);
    }

    [Fact]
    public void Intervals_of_runs_that_end_by_width_contain_the_truth_as_often_as_they_say()
    {
        // Fails where sum alpha_i U_i > beta; shares by enumeration of the closed moments Phi2(-beta, -beta; sum of alpha_i^2).
        double[] alpha = [.8, .5, Math.Sqrt(.11)];
        const double Beta = 1.2;
        const int Seeds = 250;
        double[] worth = [.. Enumerable.Range(0, 8).Select(s =>
            BivariateNormal.Cumulative(-Beta, -Beta, Math.Min(1, alpha.Where((_, i) => (s >> i & 1) == 1).Sum(x => x * x))))];
        double[] values = SubsetGame.Values(3, worth), contained = new double[3];
        double F(ReadOnlySpan<double> z) => (alpha[0] * z[0]) + (alpha[1] * z[1]) + (alpha[2] * z[2]);
        var rounds = new HashSet<long>();
        for (ulong seed = 1; seed <= Seeds; seed++)
        {
            var problem = new NormalProblem(3, F, new CountedMoment(Beta), seed: seed);
            ShareRun run = ShareRun.Run(
                problem, 10_000_000, seed, new RunOptions { Threads = 1 }, halfWidth: WidthOfCoverage, pairsOfFirstRound: 64);
            rounds.Add(run.Pairs);
            for (int p = 0; p < 3; p++)
            {
                Interval share = run.Share(0, p);
                double truth = values[p] / values.Sum();
                contained[p] += share.Low <= truth && truth <= share.High ? 1.0 / Seeds : 0;
            }
        }

        // 95 % of 250 runs, three binomial standard deviations of 1.38 % to either side; and runs of several lengths are among them.
        Assert.True(rounds.Count > 1, string.Join(' ', rounds));
        Assert.All(contained, c => Assert.InRange(c, 0.908, 0.992));
    }

    // Between what a first round of 64 pairs a replicate reaches and what it misses: the look at it decides, which is hardest on
    // the intervals.
    private const double WidthOfCoverage = 0.05;

    private static void AssertShares(double[] expected, ShareProblem problem, long evaluations, bool allSubsets, double widest)
    {
        ShareRun run = ShareRun.Run(problem, evaluations, 1, new RunOptions(), allSubsets);
        Assert.Equal(allSubsets, run.IsAllSubsets);
        for (int p = 0; p < expected.Length; p++)
        {
            // Within four standard errors, and these small enough to tell a wrong share.
            Interval share = run.Share(0, p);
            double standardError = (share.High - share.Low) / 2 / Student;
            Assert.InRange(share.Estimate, expected[p] - (4 * standardError) - 1e-9, expected[p] + (4 * standardError) + 1e-9);
            Assert.InRange(share.High - share.Low, 0, 2 * widest);
        }
    }
}
