using System.Collections.Immutable;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using MathNet.Numerics.RootFinding;

namespace AxleRisk.Core.Analyses.Fits;

/// <summary>
/// Weibull or lognormal fitted to lives, with bounds of the failure probability by the ratio of likelihoods: what no member of
/// the family reaches whose likelihood is within 1.92 of the greatest (half the 95 % point of chi-squared with one degree of
/// freedom; Meeker and Escobar, Statistical Methods for Reliability Data, 1998, section 8.3).
/// </summary>
internal sealed class LikelihoodBounds
{
    private const double HalfChiSquared = 1.920729410347062;

    /// <summary>Observations beyond are put into so many classes of equal ratio for the bounds alone.</summary>
    private const int MostClasses = 400;

    private readonly FamilyFit fit;
    private readonly ImmutableArray<Observation> observations;
    private readonly bool isWeibull;
    private readonly double greatest;
    private readonly double place;
    private readonly double spread;

    private LikelihoodBounds(FamilyFit fit, FitData data, bool isWeibull)
    {
        this.fit = fit;
        this.isWeibull = isWeibull;
        observations = Classes(data);
        (place, spread) = fit.Distribution switch
        {
            Weibull w => (Math.Log(w.Scale), 1 / w.Shape),
            Lognormal l => (Math.Log(l.MedianValue), l.StandardDeviationOfLn),
            _ => throw new ArgumentException("Weibull or lognormal", nameof(fit)),
        };
        greatest = LogAt(place, spread);
    }

    /// <summary>The bounds of a fitted family; null where the data determine no parameters.</summary>
    /// <param name="family"><c>weibull</c> or <c>lognormal</c>.</param>
    /// <param name="data">Lives, above 0.</param>
    public static LikelihoodBounds? Of(string family, FitData data) =>
        FitAnalysis.Of(family, data) is { } fit ? new LikelihoodBounds(fit, data, family == "weibull") : null;

    /// <summary>The fit.</summary>
    public FamilyFit Fit => fit;

    /// <summary>The failure probability by a distance.</summary>
    public Interval FailedBy(double distance)
    {
        double ln = Math.Log(distance);
        double score = (ln - place) / spread;
        double Lack(double z) => greatest - HalfChiSquared - Profile(ln, z);
        return new Interval(
            fit.Distribution.Cumulative(distance), Probability(Bound(Lack, score, -1)), Probability(Bound(Lack, score, 1)));
    }

    /// <summary>The greatest ln likelihood of the members with a standard score at a distance.</summary>
    private double Profile(double ln, double score)
    {
        // Of the spread alone; by golden section on its logarithm, for the likelihood has one top.
        double Of(double lnSpread) => Math.Exp(lnSpread) is var s ? LogAt(ln - (score * s), s) : 0;
        const double golden = 0.618033988749895;
        double low = Math.Log(spread) - 3, high = Math.Log(spread) + 3;
        double a = high - (golden * (high - low)), b = low + (golden * (high - low));
        double ofA = Of(a), ofB = Of(b);
        while (high - low > 1e-5)
        {
            if (ofA < ofB)
            {
                (low, a, ofA) = (a, b, ofB);
                ofB = Of(b = low + (golden * (high - low)));
            }
            else
            {
                (high, b, ofB) = (b, a, ofA);
                ofA = Of(a = high - (golden * (high - low)));
            }
        }

        return Math.Max(ofA, ofB);
    }

    private static double Bound(Func<double, double> lack, double from, int direction)
    {
        double step = 0.25, at = from;
        for (int i = 0; i < 60; i++, step *= 1.5)
        {
            double next = at + (direction * step);
            if (lack(next) > 0)
            {
                return Brent.FindRoot(lack, Math.Min(at, next), Math.Max(at, next), 1e-6, 100);
            }

            at = next;
        }

        return direction * double.PositiveInfinity;
    }

    private double Probability(double score) => isWeibull
        ? -LogExp.ExpM1(-Math.Exp(score)) : StandardNormal.Cumulative(score);

    private double LogAt(double at, double scale)
    {
        double sum = 0;
        foreach (Observation o in observations)
        {
            double low = (Math.Log(o.Low) - at) / scale, high = (Math.Log(o.High) - at) / scale;
            sum += o.Count * (o.IsExact ? LogDensity(low) - Math.Log(scale) - Math.Log(o.Low) : LogBetween(low, high));
        }

        return double.IsNaN(sum) ? double.NegativeInfinity : sum;
    }

    private double LogDensity(double z) => isWeibull ? z - Math.Exp(z) : (-0.5 * z * z) - 0.918938533204673;

    private double LogBetween(double low, double high) =>
        isWeibull ? -Math.Exp(low) + (double.IsPositiveInfinity(high) ? 0 : Math.Log(-LogExp.ExpM1(Math.Exp(low) - Math.Exp(high))))
        : Math.Log(low > 0 ? StandardNormal.Upper(low) - StandardNormal.Upper(high)
            : StandardNormal.Cumulative(high) - StandardNormal.Cumulative(low));

    private static ImmutableArray<Observation> Classes(FitData data)
    {
        // Lives have an end above 0; one known to lie below something begins at 0.
        Observation[] all = [.. data.Observations.Select(o => o with { Low = Math.Max(0, o.Low) })];
        if (all.Length <= MostClasses || !(data.Greatest > data.Least))
        {
            return [.. all];
        }

        double perClass = MostClasses / 2 / Math.Log(data.Greatest / Math.Max(data.Least, 1e-9));
        double Middle(double x) => x > 0 && double.IsFinite(x) ? Math.Exp(Math.Round(Math.Log(x) * perClass) / perClass) : x;
        return
        [
            .. all.GroupBy(o => (Middle(o.Low), Middle(o.High), o.IsExact))
                .Where(g => g.Key.IsExact || g.Key.Item2 > g.Key.Item1)
                .Select(g => new Observation(g.Key.Item1, g.Key.Item2, g.Sum(o => o.Count))),
        ];
    }
}
