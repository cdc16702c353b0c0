using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Analyses.Decisions;

/// <summary>The expected net cost of each option in each outer draw: its price and what its failures cost.</summary>
/// <param name="prices">What each option costs, all vehicles together.</param>
/// <param name="failed">The failure probabilities of each.</param>
/// <param name="failureCost">By outer draw: what all vehicles' failures would cost.</param>
/// <param name="asItIs">
/// The failure probability of the first option where another run knows it: all options' failures go with it, so many times as many as the
/// own sample has (a ratio estimate); null for the own sample's.
/// </param>
internal sealed class NetCosts(double[] prices, DrawMeans[] failed, double[] failureCost, Interval? asItIs = null)
{
    private readonly double[] cost = asItIs is { } known
        ? [.. failureCost.Select(c => c * known.Estimate / failed[0].AsDrawn.Average())] : failureCost;

    /// <summary>The number of options.</summary>
    public int Options => prices.Length;

    private int Draws => cost.Length;

    private int OfReplicate => Draws / NestedPlan.Replicates;

    /// <summary>The net cost of an option in an outer draw.</summary>
    public double Of(int option, int draw) => prices[option] + (cost[draw] * failed[option].AsDrawn[draw]);

    /// <summary>The expected net cost of an option.</summary>
    public double Mean(int option) => Means(option).Average();

    /// <summary>The failure probability of an option.</summary>
    public Interval Failed(int option)
    {
        double[] own = ByReplicate(failed[option].AsDrawn);
        return asItIs is not { } known ? DrawStatistic.WithInterval(failed[option], TargetBasis.Average)
            : option == 0 ? known : WithInterval(
                own.Average() * known.Estimate / failed[0].AsDrawn.Average(),
                Anchored(own).Select(m => m * known.Estimate / failed[0].AsDrawn.Average()), 0).Within(0, 1);
    }

    /// <summary>The expected net cost with its interval.</summary>
    public Interval Expected(int option) => WithInterval(
        Mean(option), Anchored(Means(option, 0)).Select(m => m + prices[option]), prices[option]);

    /// <summary>The expected cost of an option's failures.</summary>
    public Interval Failures(int option) => WithInterval(Mean(option) - prices[option], Anchored(Means(option, 0)), 0);

    /// <summary>By how much an option's net cost is above another's.</summary>
    public Interval Difference(int option, int from) => WithInterval(
        Mean(option) - Mean(from),
        Anchored(Means(option, 0)).Zip(Anchored(Means(from, 0)), (a, b) => prices[option] - prices[from] + a - b),
        prices[option] - prices[from]);

    /// <summary>The option with the least expected net cost.</summary>
    public int Best => Enumerable.Range(0, Options).MinBy(Mean);

    /// <summary>The cheapest of the others.</summary>
    public int BestBeside(int option) => Enumerable.Range(0, Options).Where(o => o != option).MinBy(Mean);

    /// <summary>The share of the outer draws in which an option has the least net cost.</summary>
    public Interval ProbabilityBest(int option)
    {
        double[] best = [.. Enumerable.Range(0, Draws).Select(draw => Least(draw) == option ? 1.0 : 0)];
        return GroupInterval.Around(best.Average(), best.Chunk(OfReplicate).Select(r => r.Average())).Within(0, 1);
    }

    /// <summary>
    /// What knowing all that is unknown would save: the least expected cost less the expected least cost (Raiffa and Schlaifer 1961).
    /// The least of costs that are themselves means of few vehicles lies too low by about what halves of them tell (Bujok, Hambly and
    /// Reisinger 2015): twice the value of all less that of the halves.
    /// </summary>
    public Interval PerfectInformation()
    {
        double[] best = Means(Best);
        double[] values = [.. Enumerable.Range(0, NestedPlan.Replicates).Select(r => best[r] - Least(r * OfReplicate, OfReplicate))];
        Interval value = GroupInterval.Around(values.Average(), values);
        return new Interval(Math.Max(0, value.Estimate), Math.Max(0, value.Low), Math.Max(0, value.High));
    }

    // One lambda in another would have the compiler try every number's Average and Min in every other, which takes it seconds.
    private double Least(int first, int count)
    {
        int[] draws = [.. Enumerable.Range(first, count)];
        double Whole(int draw) => LeastCost(o => Of(o, draw));
        double Half(int part)
        {
            double[][] parts = [.. failed.Select(f => f.Parts[part])];
            double OfHalf(int draw) => LeastCost(o => prices[o] + (cost[draw] * parts[o][draw]));
            return draws.Average(OfHalf);
        }

        return (2 * draws.Average(Whole)) - Enumerable.Range(0, failed[0].Parts.Length).Average(Half);
    }

    private double LeastCost(Func<int, double> costOfOption) => Enumerable.Range(0, Options).Min(costOfOption);

    private int Least(int draw) => Enumerable.Range(0, Options).MinBy(o => Of(o, draw));

    // The spread of the replicates, and that of the probability they go by, of which all but a price is a multiple.
    private Interval WithInterval(double estimate, IEnumerable<double> replicates, double price)
    {
        Interval own = GroupInterval.Around(estimate, replicates);
        double known = asItIs is { } p ? (estimate - price) * (p.High - p.Low) / 2 / p.Estimate : 0;
        double half = known == 0 ? own.High - estimate : Math.Sqrt(((own.High - estimate) * (own.High - estimate)) + (known * known));
        return new Interval(estimate, estimate - half, estimate + half);
    }

    // What replicates of an option's failures would be had each the first option's probability.
    private double[] Anchored(double[] ofFailures)
    {
        double[] first = ByReplicate(failed[0].AsDrawn);
        return asItIs is null ? ofFailures
            : [.. ofFailures.Select((m, r) => first[r] > 0 ? m * first.Average() / first[r] : m)];
    }

    private double[] Means(int option) => Means(option, prices[option]);

    private double[] Means(int option, double price) =>
        ByReplicate([.. Enumerable.Range(0, Draws).Select(draw => price + (cost[draw] * failed[option].AsDrawn[draw]))]);

    private double[] ByReplicate(double[] draws) => [.. draws.Chunk(OfReplicate).Select(r => r.Average())];
}
