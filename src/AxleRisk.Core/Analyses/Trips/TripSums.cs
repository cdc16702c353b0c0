using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Analyses.Trips;

/// <summary>
/// Sums over the sampled vehicles by group of the jackknife: the probability of having reached the trip's start, and of
/// failing on each leg. Every answer is a ratio of such sums; its interval is the jackknife's.
/// </summary>
/// <param name="legs">The number of legs.</param>
/// <param name="groups">The number of groups.</param>
internal sealed class TripSums(int legs, int groups)
{
    /// <summary>Fewer than this part of those that set out is none: what is left is rounding.</summary>
    private const double None = 1e-12;

    // What each vehicle brings to failing on a leg, and to failing by its end; whether anything is driven at all.
    private readonly PowerSums[] onLeg = new PowerSums[legs];
    private readonly PowerSums[] byEnd = new PowerSums[legs];
    private readonly bool[] isDriven = new bool[legs];

    // By group, that each vehicle is one that was seen as the evidence says.
    private readonly double[] known = new double[groups];
    private double knownSquares;

    /// <summary>For each group: reached the start, then failed on each leg.</summary>
    public double[][] OfGroups { get; } = [.. Enumerable.Range(0, groups).Select(_ => new double[1 + legs])];

    /// <summary>Adds one vehicle.</summary>
    /// <param name="group">Its group.</param>
    /// <param name="reached">The probability that it reaches the start.</param>
    /// <param name="start">What each mode has used up before the trip.</param>
    /// <param name="usedByLeg">What each leg uses up, by leg, row and mode.</param>
    /// <param name="row">Its row there.</param>
    /// <param name="limits">What each mode can use up, as drawn.</param>
    /// <param name="survival">How survival follows.</param>
    public void Add(
        int group, double reached, ReadOnlySpan<double> start, double[][] usedByLeg, int row, ReadOnlySpan<double> limits,
        TripSurvival survival)
    {
        int modes = start.Length;
        Span<double> both = stackalloc double[2 * modes];
        Span<double> before = both[..modes];
        Span<double> after = both[modes..];
        start.CopyTo(before);
        double[] sums = OfGroups[group];
        sums[0] += reached;
        double failed = 0;
        for (int leg = 0; leg < legs; leg++)
        {
            bool more = false;
            for (int mode = 0; mode < modes; mode++)
            {
                after[mode] = before[mode] + usedByLeg[leg][row * modes + mode];
                more |= after[mode] > before[mode];
            }

            double fails = survival.Fails(before, after, limits);
            failed += fails;
            sums[1 + leg] += fails;
            onLeg[leg] = onLeg[leg].Plus(fails);
            byEnd[leg] = byEnd[leg].Plus(failed);
            isDriven[leg] |= more;
            after.CopyTo(before);
        }
    }

    /// <summary>Adds how likely a vehicle was seen as the evidence says.</summary>
    public void AddKnown(int group, double probability)
    {
        known[group] += probability;
        knownSquares += probability * probability;
    }

    /// <summary>How many equally weighted vehicles those are worth that were seen as the evidence says.</summary>
    public double Effective => knownSquares > 0 ? known.Sum() * known.Sum() / knownSquares : 0;

    /// <summary>Adds one vehicle of a trip of one leg.</summary>
    /// <param name="group">Its group.</param>
    /// <param name="reached">The probability that it sets out.</param>
    /// <param name="fails">The probability that it sets out and fails.</param>
    public void Add(int group, double reached, double fails)
    {
        OfGroups[group][0] += reached;
        OfGroups[group][1] += fails;
        onLeg[0] = onLeg[0].Plus(fails);
        byEnd[0] = byEnd[0].Plus(fails);
        isDriven[0] = true;
    }

    /// <summary>Adds the sums of other vehicles.</summary>
    public void Add(TripSums other)
    {
        for (int g = 0; g < OfGroups.Length; g++)
        {
            for (int i = 0; i <= legs; i++)
            {
                OfGroups[g][i] += other.OfGroups[g][i];
            }
        }

        for (int leg = 0; leg < legs; leg++)
        {
            onLeg[leg] = onLeg[leg].Plus(other.onLeg[leg]);
            byEnd[leg] = byEnd[leg].Plus(other.byEnd[leg]);
            isDriven[leg] |= other.isDriven[leg];
        }
    }

    /// <summary>P(reaches the start).</summary>
    /// <param name="rows">The number of vehicles.</param>
    public Interval Reached(long rows)
    {
        double perGroup = (double)rows / OfGroups.Length;
        return Jackknife.Estimate([.. OfGroups.Select(s => new[] { perGroup, s[0] })], s => s[1] / s[0]).Within(0, 1);
    }

    /// <summary>P(reaches the start | seen as the evidence says).</summary>
    public Interval ReachedOfKnown() =>
        Jackknife.Estimate([.. OfGroups.Zip(known, (s, k) => new[] { k, s[0] })], s => s[0] > 0 ? s[1] / s[0] : 0).Within(0, 1);

    /// <summary>P(fails on the trip | reached its start).</summary>
    public Interval Trip(bool counted) => Cumulative(legs, counted);

    /// <summary>P(fails on the trip | reached its start) as the vehicles have it, few or many.</summary>
    public double Drawn => OfGroups.Sum(Failed) / OfGroups.Sum(s => s[0]);

    /// <summary>
    /// P(fails before the end of leg number <paramref name="last"/>, the first being 1 | reached the trip's start); where few
    /// vehicles carry it no estimate but a bound.
    /// </summary>
    public Interval Cumulative(int last, bool counted) => last == 0 ? new Interval(0, 0, 0)
        : Resolved(byEnd[last - 1], isDriven.Take(last).Any(d => d), s => (Failed(s, 0, last), s[0]), counted);

    /// <summary>P(fails on a leg | reached the leg's start); where few vehicles carry it no estimate but a bound.</summary>
    public Interval Conditional(int leg, bool counted) =>
        Resolved(onLeg[leg], isDriven[leg], s => (s[1 + leg], s[0] - Failed(s, 0, leg)), counted);

    private Interval Resolved(PowerSums terms, bool isDriven, Func<double[], (double Failed, double Reached)> ratio, bool counted)
    {
        Interval drawn = Probability(OfGroups, ratio, counted);
        return !counted && isDriven && FewTerms.Carry(terms, drawn.Estimate)
            ? FewTerms.Bound(drawn, OfGroups.Sum(s => ratio(s).Reached)) : drawn;
    }

    /// <summary>The share of the trip's failures that happen on a leg; NaN where nothing fails.</summary>
    public Interval Share(int leg) => Jackknife.Estimate(OfGroups, s => s[1 + leg] / Failed(s, 0, legs)).Within(0, 1);

    /// <summary>The sum of the failures on the legs from <paramref name="first"/> up to but not including <paramref name="end"/>.</summary>
    public static double Failed(double[] sums, int first, int end) => CompensatedSum.Of(sums.AsSpan(1 + first, end - first));

    /// <summary>The sum of the failures on all legs.</summary>
    public static double Failed(double[] sums) => Failed(sums, 0, sums.Length - 1);

    /// <summary>
    /// A ratio of sums as a probability with its interval, normal on the scale of the logarithm, as a small probability's error
    /// leans upward; NaN where none is left that could fail.
    /// </summary>
    /// <param name="groups">The sums of each group.</param>
    /// <param name="ratio">From sums to those that failed and those that could.</param>
    /// <param name="counted">Whether failures were counted.</param>
    public static Interval Probability(double[][] groups, Func<double[], (double Failed, double Reached)> ratio, bool counted)
    {
        if (!(groups.Sum(s => ratio(s).Reached) > None * groups.Sum(s => s[0])))
        {
            return new Interval(double.NaN, double.NaN, double.NaN);
        }

        (double p, double error) = Jackknife.WithStandardError(groups, s => ratio(s) is var (failed, reached)
            && failed > 0 ? failed / reached : 0);
        if (p > 0)
        {
            double spread = Math.Exp(-StudentT.Quantile(0.025, groups.Length - 1) * error / p);
            return new Interval(p, p / spread, Math.Min(1, p * spread));
        }

        // Counted, no failure does not mean none is possible; averaged exactly, it does.
        long survivors = (long)groups.Sum(s => ratio(s).Reached);
        return counted && survivors > 0 ? BinomialInterval.Wilson(0, survivors) : new Interval(0, 0, 0);
    }
}
