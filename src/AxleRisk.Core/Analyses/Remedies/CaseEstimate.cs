using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Analyses.Remedies;

/// <summary>
/// The failure probability by a distance and the B10 life of one scenario, with what each group of samples has them deviate by:
/// the deviations of two scenarios, taken group by group, give the interval of their change.
/// </summary>
internal sealed class CaseEstimate
{
    private const double Tenth = 0.1;

    /// <summary>Half the range of shares about a tenth over which the slope of the curve is taken.</summary>
    private const double SlopeReach = 0.02;

    private readonly GroupCurve all;
    private readonly double[] failed;
    private readonly double[] lnLifeOff;
    private readonly bool counted;

    /// <summary>Works out a scenario's estimates.</summary>
    public CaseEstimate(CaseLives lives, double distanceKm, bool counted)
    {
        (all, GroupCurve[] groups) = lives.Curves();
        this.counted = counted;
        double lnKm = Math.Log(distanceKm);
        Probability = all.FailedBy(lnKm);
        failed = [.. groups.Select(g => g.FailedBy(lnKm))];
        LnB10 = all.LnKmAt(Tenth);

        // A group's B10 life is off by what its share failed is off there, over the slope (Bahadur's representation of a quantile).
        double slope = 2 * SlopeReach / (all.LnKmAt(Tenth + SlopeReach) - all.LnKmAt(Tenth - SlopeReach));
        lnLifeOff = [.. groups.Select(g => (Tenth - g.FailedBy(LnB10)) / slope)];
    }

    public double Probability { get; }

    public double LnB10 { get; }

    /// <summary>The failure probability with its interval, normal on the scale of the logarithm.</summary>
    public Interval ProbabilityInterval() => Probability > 0
        ? GroupInterval.AroundExp(Probability, failed.Select(f => f / Probability)).Within(0, 1)
        : NoneFailed();

    /// <summary>The B10 life in km with its interval.</summary>
    public Interval B10Interval() => GroupInterval.AroundExp(Math.Exp(LnB10), lnLifeOff);

    /// <summary>The change from another scenario, evaluated with the same samples, to this.</summary>
    public CaseChange From(CaseEstimate first)
    {
        Interval difference = GroupInterval.Around(Probability - first.Probability, failed.Zip(first.failed, (a, b) => a - b));
        if (counted && difference.High == difference.Low && !all.SameAs(first.all))
        {
            // Lives differ, but no sample that failed in one survives in the other: the groups show no spread to go by.
            double most = NoneFailed().High;
            difference = new Interval(difference.Estimate, difference.Low - most, difference.High + most);
        }

        return new CaseChange(
            difference, Ratio(first, difference),
            GroupInterval.AroundExp(Math.Exp(LnB10 - first.LnB10), lnLifeOff.Zip(first.lnLifeOff, (a, b) => a - b)));
    }

    /// <summary>
    /// What two changes do together over what they would do if their ratios multiplied: the failure probability of this, with both,
    /// times that of the first over those with each alone; NaN where nothing fails in one of them.
    /// </summary>
    public Interval OverProduct(CaseEstimate first, CaseEstimate a, CaseEstimate b)
    {
        CaseEstimate[] all = [this, first, a, b];
        return all.Any(e => !(e.Probability > 0))
            ? new Interval(double.NaN, double.NaN, double.NaN)
            : GroupInterval.AroundExp(
                Probability * first.Probability / (a.Probability * b.Probability),
                failed.Select((_, g) => all.Select((e, i) => (i < 2 ? 1 : -1) * e.failed[g] / e.Probability).Sum()));
    }

    private Interval Ratio(CaseEstimate first, Interval difference)
    {
        double p = first.Probability;
        return !(p > 0) ? new Interval(double.NaN, double.NaN, double.NaN)
            : !(Probability > 0) ? new Interval(0, 0, NoneFailed().High / p)
            : difference.Estimate == 0 ? new Interval(1, 1 + (difference.Low / p), 1 + (difference.High / p))
            : GroupInterval.AroundExp(Probability / p, failed.Zip(first.failed, (a, b) => (a / Probability) - (b / p)));
    }

    private Interval NoneFailed() => all.Evaluations > 0
        ? BinomialInterval.Wilson(0, all.Evaluations)
        : new Interval(double.NaN, double.NaN, double.NaN);
}
