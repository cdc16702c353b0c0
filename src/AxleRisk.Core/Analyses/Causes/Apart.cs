using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.Causes;

/// <summary>
/// What measurements on this vehicle are expected to tell of its two leading explanations, where one holds without the other.
/// </summary>
/// <param name="First">The likelier explanation.</param>
/// <param name="Second">The next.</param>
/// <param name="OneOfThem">The probability, given the evidence, that one of the two holds without the other.</param>
/// <param name="Open">The bits that are open between them: the entropy of which of the two it is.</param>
/// <param name="Measurements">The measurements, the most telling first.</param>
/// <param name="Factors">What the explanations speak of, each known exactly, the most telling first.</param>
public sealed record Apart(
    string First, string Second, double OneOfThem, double Open, ImmutableArray<TellingMeasurement> Measurements,
    ImmutableArray<TellingFactor> Factors)
{
    /// <summary>The share of what is open that some bits tell.</summary>
    public double ShareOf(Interval bits) => bits.Estimate / Open;
}

/// <summary>A measurement that could still be made on this vehicle.</summary>
/// <param name="Measurement">The measurement.</param>
/// <param name="Bits">
/// What it is expected to tell: the mutual information of its reading and which of the two explanations holds (Shannon 1948), in bits.
/// </param>
public sealed record TellingMeasurement(PlannedMeasurement Measurement, Interval Bits);

/// <summary>Something an explanation speaks of.</summary>
/// <param name="Name">Its column.</param>
/// <param name="Factor">Its factor.</param>
/// <param name="Bits">What knowing it exactly is expected to tell, bits.</param>
public sealed record TellingFactor(string Name, Factor Factor, Interval Bits);

/// <summary>Works them out from the posterior's weights by pattern of explanations and value of what is measured.</summary>
internal static class ApartSummary
{
    // Errors of a reading: scores from -4 to 4.
    private const int Errors = 33;
    private const double ErrorStep = 0.25;

    private static readonly double[] ErrorWeights =
        Weights.Normalised([.. Enumerable.Range(0, Errors).Select(e => StandardNormal.Density((e - (Errors / 2)) * ErrorStep))]);

    /// <summary>The places of the items whose weights are needed: those measured, then those the explanations speak of.</summary>
    public static ImmutableArray<int> Measurable(
        Evidence evidence, ImmutableArray<PlannedMeasurement>? planned, ImmutableArray<CauseItem> items) => planned is not { } some ? [] :
        [
            .. some.Select(m => items.IndexOf(items.Single(i => i.Name == m.Factor))),
            .. SpokenOf(evidence, items).Select(i => items.IndexOf(i)),
        ];

    /// <summary>The summary; null where no two explanations are open.</summary>
    /// <param name="evidence">The explanations.</param>
    /// <param name="weighed">The explanations weighed, those that are open alone first, the likeliest first.</param>
    /// <param name="planned">The measurements.</param>
    /// <param name="items">The items of the posterior.</param>
    /// <param name="groups">Its groups; the measurable items in the order of the measurements.</param>
    /// <param name="factors">The factor that the stated priors put on each pattern.</param>
    public static Apart? Of(
        Evidence evidence, ImmutableArray<ExplanationShift> weighed, ImmutableArray<PlannedMeasurement> planned,
        ImmutableArray<CauseItem> items, PosteriorTally[] groups, double[] factors)
    {
        ExplanationShift[] leading = [.. weighed.Where(e => e.Names.Length == 1 && e.Settled is null && e.Posterior.Estimate > 0).Take(2)];
        if (leading.Length < 2)
        {
            return null;
        }

        CauseItem[] spokenOf = SpokenOf(evidence, items);
        (int a, int b) = (PlaceOf(evidence, leading[0]), PlaceOf(evidence, leading[1]));
        double[][] whole = [.. groups.Select(g => g.Patterns.Select((w, s) => w * factors[s]).ToArray())];
        double first = whole.Sum(g => g.Where((_, s) => Holds(s, a) && !Holds(s, b)).Sum());
        double second = whole.Sum(g => g.Where((_, s) => Holds(s, b) && !Holds(s, a)).Sum());
        return new Apart(
            leading[0].Names[0], leading[1].Names[0], (first + second) / whole.Sum(g => g.Sum()), Entropy(first, second),
            [.. planned.Select((m, i) => new TellingMeasurement(m, BitsOf(i, m.MeanDeviation))).OrderByDescending(m => m.Bits.Estimate)],
            [.. spokenOf.Select((item, i) => new TellingFactor(item.Name, item.Factor, BitsOf(planned.Length + i, 0)))
                .OrderByDescending(f => f.Bits.Estimate)]);

        Interval BitsOf(int place, double deviation)
        {
            CauseItem item = place < planned.Length ? items.Single(i => i.Name == planned[place].Factor) : spokenOf[place - planned.Length];
            int bins = groups[0].ByPattern[place][0].Length;
            double[][] sums = [.. groups.Select(g => Sums(g.ByPattern[place], bins))];
            double[]? values = item.Choice is null && deviation > 0
                ? [.. Enumerable.Range(0, bins).Select(i => item.ValueOf(PosteriorTally.Middle(i)))] : null;
            ReadingDensity? density = values is null ? null : new ReadingDensity(values, deviation);
            Interval bits = Jackknife.Estimate(sums, s => Bits(s.AsSpan(0, bins), s.AsSpan(bins), density));
            return new Interval(bits.Estimate, Math.Max(0, bits.Low), Math.Min(Entropy(first, second), bits.High));
        }

        // The weights of the bins where the first holds without the second, then the other way round.
        double[] Sums(double[][] byPattern, int bins)
        {
            var sums = new double[2 * bins];
            for (int s = 0; s < byPattern.Length; s++)
            {
                int at = Holds(s, a) == Holds(s, b) ? -1 : Holds(s, a) ? 0 : bins;
                for (int bin = 0; at >= 0 && bin < bins; bin++)
                {
                    sums[at + bin] += factors[s] * byPattern[s][bin];
                }
            }

            return sums;
        }
    }

    /// <summary>The mutual information of a reading and of which of two it is, bits.</summary>
    /// <param name="first">The weight of each value in the first.</param>
    /// <param name="second">The weight of each value in the second.</param>
    /// <param name="values">The values, rising; null where the reading is one of the states itself.</param>
    /// <param name="deviation">The standard deviation of the reading's error.</param>
    internal static double Bits(ReadOnlySpan<double> first, ReadOnlySpan<double> second, double[]? values, double deviation) =>
        Bits(first, second, values is null ? null : new ReadingDensity(values, deviation));

    private static double Bits(ReadOnlySpan<double> first, ReadOnlySpan<double> second, ReadingDensity? density)
    {
        double all = Weights.Sum(first) + Weights.Sum(second);
        double open = Entropy(Weights.Sum(first), Weights.Sum(second)), left = 0;
        for (int i = 0; i < first.Length; i++)
        {
            double here = first[i] + second[i];
            for (int e = 0; here > 0 && e < (density is null ? 1 : Errors); e++)
            {
                (double a, double b) = density?.Of(first, second, i, e) ?? (first[i], second[i]);
                left += here * (density is null ? 1 : ErrorWeights[e]) * Entropy(a, b) / all;
            }
        }

        return Math.Max(0, open - left);
    }

    /// <summary>
    /// The density of a reading about one of the values, up to a factor; a value outside six deviations brings nothing. Every statistic
    /// left out of the jackknife asks for the same, so they are kept.
    /// </summary>
    private sealed class ReadingDensity(double[] values, double deviation)
    {
        private readonly (int From, double[] Densities)?[] known = new (int, double[])?[values.Length * Errors];

        /// <summary>That of the mixtures of two lists of weights, at the value and the error of a reading.</summary>
        public (double First, double Second) Of(ReadOnlySpan<double> first, ReadOnlySpan<double> second, int value, int error)
        {
            (int from, double[] densities) = known[(value * Errors) + error] ??= About(
                values[value] + (deviation * (error - (Errors / 2)) * ErrorStep));
            double a = 0, b = 0;
            for (int i = 0; i < densities.Length; i++)
            {
                a += first[from + i] > 0 ? first[from + i] * densities[i] : 0;
                b += second[from + i] > 0 ? second[from + i] * densities[i] : 0;
            }

            return (a, b);
        }

        private (int From, double[] Densities) About(double reading)
        {
            bool IsNear(double value) => Math.Abs((reading - value) / deviation) < 6;
            int from = Math.Max(0, Array.FindIndex(values, IsNear));
            return (from, [.. values.Skip(from).TakeWhile(IsNear).Select(v =>
            {
                double z = (reading - v) / deviation;
                return Math.Exp(-0.5 * z * z);
            })]);
        }
    }

    private static double Entropy(double a, double b)
    {
        double p = a / (a + b);
        return p is > 0 and < 1 ? -((p * Math.Log2(p)) + ((1 - p) * Math.Log2(1 - p))) : 0;
    }

    private static CauseItem[] SpokenOf(Evidence evidence, ImmutableArray<CauseItem> items) =>
        [.. items.Where(i => evidence.Explanations.Any(e => e.When.Any(c => c.Column == i.Name)))];

    private static bool Holds(int pattern, int explanation) => (pattern >> explanation & 1) == 1;

    private static int PlaceOf(Evidence evidence, ExplanationShift shift) =>
        evidence.Explanations.Select(e => e.Name).ToList().IndexOf(shift.Names[0]);
}
