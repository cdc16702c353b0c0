using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Analyses.Decisions;

/// <summary>The expected net cost of each option in each outer draw: its price and what its failures cost.</summary>
/// <param name="prices">What each option costs, all vehicles together.</param>
/// <param name="failed">The failure probabilities of each.</param>
/// <param name="failureCost">By outer draw: what all vehicles' failures would cost.</param>
internal sealed class NetCosts(double[] prices, DrawMeans[] failed, double[] failureCost)
{
    /// <summary>The number of options.</summary>
    public int Options => prices.Length;

    private int Draws => failureCost.Length;

    private int OfReplicate => Draws / NestedPlan.Replicates;

    /// <summary>The net cost of an option in an outer draw.</summary>
    public double Of(int option, int draw) => prices[option] + (failureCost[draw] * failed[option].AsDrawn[draw]);

    /// <summary>The expected net cost of an option.</summary>
    public double Mean(int option) => Means(option).Average();

    /// <summary>The expected net cost with its interval.</summary>
    public Interval Expected(int option) => GroupInterval.Around(Mean(option), Means(option));

    /// <summary>The expected cost of an option's failures.</summary>
    public Interval Failures(int option) =>
        GroupInterval.Around(Mean(option) - prices[option], Means(option).Select(m => m - prices[option]));

    /// <summary>By how much an option's net cost is above another's.</summary>
    public Interval Difference(int option, int from) =>
        GroupInterval.Around(Mean(option) - Mean(from), Means(option).Zip(Means(from), (a, b) => a - b));

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
        double[] values = [.. Enumerable.Range(0, NestedPlan.Replicates).Select(r =>
        {
            int[] draws = [.. Enumerable.Range(r * OfReplicate, OfReplicate)];
            double all = draws.Average(d => Enumerable.Range(0, Options).Min(o => Of(o, d)));
            double halves = Enumerable.Range(0, failed[0].Parts.Length).Average(part =>
                draws.Average(d => Enumerable.Range(0, Options).Min(o => prices[o] + (failureCost[d] * failed[o].Parts[part][d]))));
            return best[r] - ((2 * all) - halves);
        })];
        Interval value = GroupInterval.Around(values.Average(), values);
        return new Interval(Math.Max(0, value.Estimate), Math.Max(0, value.Low), Math.Max(0, value.High));
    }

    private int Least(int draw) => Enumerable.Range(0, Options).MinBy(o => Of(o, draw));

    private double[] Means(int option) =>
        [.. Enumerable.Range(0, Draws).Select(draw => Of(option, draw)).Chunk(OfReplicate).Select(r => r.Average())];
}
