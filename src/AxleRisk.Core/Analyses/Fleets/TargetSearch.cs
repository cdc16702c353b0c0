using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Analyses.Fleets;

/// <summary>
/// Finds the value of one quantity at which a failure probability is just what it may be. All values are judged by the same
/// random numbers. The search runs on the scale of the normal quantile, where probabilities are nearly straight.
/// </summary>
/// <param name="byDraw">The probabilities of all outer draws at a value of the quantity.</param>
/// <param name="target">What the probability may be.</param>
/// <param name="basis">Which probability is meant.</param>
internal sealed class TargetSearch(Func<double, DrawMeans> byDraw, double target, TargetBasis basis)
{
    private const double Tolerance = 1e-4;
    private const int MostEvaluations = 60;

    // What is 0 or 1 in the sample lies beyond all that it can tell.
    private const double Least = 1e-12;

    private readonly double zTarget = StandardNormal.Quantile(target);

    /// <summary>The limiting value in a range above 0 where a larger value fails more; searched by its logarithm.</summary>
    public SearchAnswer LongestIn(double low, double high) => Find(Math.Log(low), Math.Log(high), isLog: true);

    /// <summary>The limiting value in a range above 0 where a larger value fails less; searched by its logarithm.</summary>
    public SearchAnswer LeastIn(double low, double high) => Find(Math.Log(high), Math.Log(low), isLog: true);

    /// <summary>The limiting value in a range where a larger value fails more, searched as it is.</summary>
    public SearchAnswer GreatestIn(double low, double high) => Find(low, high, isLog: false);

    private SearchAnswer Find(double good, double bad, bool isLog)
    {
        double low = Shown(Math.Min(good, bad));
        double high = Shown(Math.Max(good, bad));
        SearchAnswer Ended(SearchOutcome outcome) => new(outcome, new Interval(double.NaN, double.NaN, double.NaN), low, high);
        double atGood = Off(good);
        if (atGood > 0)
        {
            return Ended(SearchOutcome.NoneMeets);
        }

        double atBad = Off(bad);
        if (atBad <= 0)
        {
            return Ended(SearchOutcome.EveryMeets);
        }

        double x = FalsePosition.Zero(Off, new(good, atGood), new(bad, atBad), Tolerance, MostEvaluations);
        return new SearchAnswer(SearchOutcome.Found, Around(x, good, bad, Shown, isLog), low, high);

        double Shown(double at) => isLog ? Math.Exp(at) : at;
        double Off(double at) => Z(DrawStatistic.Of(byDraw(Shown(at)), basis)) - zTarget;
    }

    /// <summary>
    /// What a replicate's probability is off at the limiting value, over the slope there, is what its own limiting value is off.
    /// </summary>
    private Interval Around(double x, double good, double bad, Func<double, double> shown, bool isLog)
    {
        double step = Math.CopySign(Math.Min(0.02, Math.Abs(bad - good) / 10), bad - good);
        double from = Math.Abs(bad - x) > Math.Abs(step) ? x : x - step;
        DrawMeans here = byDraw(shown(x));
        double slope = (Z(DrawStatistic.Of(byDraw(shown(from + step)), basis)) - Z(DrawStatistic.Of(byDraw(shown(from)), basis))) / step;
        IEnumerable<double> off = DrawStatistic.OfReplicates(here, basis).Select(p => -Z(p) / slope);
        return isLog ? GroupInterval.AroundExp(shown(x), off) : GroupInterval.Around(x, off)
            .Within(Math.Min(good, bad), Math.Max(good, bad));
    }

    private static double Z(double p) => StandardNormal.Quantile(Math.Clamp(p, Least, 1 - Least));
}
