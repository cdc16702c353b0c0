using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Randomness;
using AxleRisk.Core.Sampling;

namespace AxleRisk.Core.Analyses.Fits;

/// <summary>
/// The self-consistent estimate of survival from intervals that overlap (Turnbull 1976): mass can lie only where a beginning of
/// one is followed by an end without another between. The step of such a place stands at its end. Its bands are the middle 95 %
/// of the same estimate with exponential weights on the observations (the Bayesian bootstrap, Rubin 1981).
/// </summary>
internal static class Turnbull
{
    private const int MostIterations = 20_000;
    private const int RoughIterations = 500;
    private const double Settled = 1e-10;
    private const double RoughlySettled = 1e-6;
    private const int Draws = 200;

    /// <summary>Mass that the iteration has not yet taken away, and would.</summary>
    private const double Nothing = 1e-6;

    public static ImmutableArray<SurvivalStep> Of(Observation[] all, ulong seed)
    {
        (double Low, double High)[] places = PlacesOf(all);
        (int First, int End)[] reach = [.. all.Select(o => ReachOf(o, places))];
        double[] mass = Masses(reach, [.. all.Select(o => o.Count)], places.Length, null, Settled, MostIterations);
        double[][] drawn = [.. Enumerable.Range(0, Draws).Select(d =>
            Masses(reach, Weights(all, seed, d), places.Length, mass, RoughlySettled, RoughIterations))];
        var steps = ImmutableArray.CreateBuilder<SurvivalStep>();
        double left = 1;
        double[] leftOfDrawn = [.. drawn.Select(_ => 1.0)];
        for (int k = 0; k < places.Length; k++)
        {
            left -= mass[k];
            for (int d = 0; d < Draws; d++)
            {
                leftOfDrawn[d] -= drawn[d][k];
            }

            // What lies above the last is survival, and no step.
            if (!double.IsInfinity(places[k].High) && mass[k] > Nothing)
            {
                double[] sorted = [.. leftOfDrawn.Order()];
                int tail = Draws / 40;
                steps.Add(new SurvivalStep(
                    places[k].High,
                    new Interval(Math.Max(0, left), Math.Max(0, Math.Min(left, sorted[tail])),
                        Math.Min(1, Math.Max(left, sorted[^(tail + 1)])))));
            }
        }

        return steps.ToImmutable();
    }

    /// <summary>Where mass can lie. At one value a known value begins first, then intervals end, then others begin behind it.</summary>
    private static (double Low, double High)[] PlacesOf(Observation[] all)
    {
        var ends = all.Select(o => (At: o.Low, Order: o.IsExact ? 0 : 2))
            .Concat(all.Select(o => (At: o.High, Order: 1))).Distinct().OrderBy(e => e.At).ThenBy(e => e.Order).ToArray();
        return [.. ends.Zip(ends.Skip(1)).Where(p => p.First.Order != 1 && p.Second.Order == 1).Select(p => (p.First.At, p.Second.At))];
    }

    private static (int First, int End) ReachOf(Observation o, (double Low, double High)[] places)
    {
        // Places are ascending in both ends; one belongs to an observation that holds it whole.
        int first = FirstWhere(places.Length, k => o.IsExact ? places[k].High >= o.Low : places[k].Low >= o.Low && places[k].High > o.Low);
        int end = FirstWhere(places.Length, k => places[k].High > o.High);
        return (first, Math.Max(first + 1, end));
    }

    private static int FirstWhere(int count, Func<int, bool> holds)
    {
        (int low, int high) = (0, count);
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = holds(middle) ? (low, middle) : (middle + 1, high);
        }

        return low;
    }

    private static double[] Masses((int First, int End)[] reach, double[] counts, int places, double[]? from, double settled, int most)
    {
        double total = counts.Sum();
        double[] mass = from is null ? [.. Enumerable.Repeat(1.0 / places, places)] : [.. from.Select(m => Math.Max(m, 1e-6))];
        var below = new double[places + 1];
        var change = new double[places + 1];
        for (int i = 0; i < most; i++)
        {
            for (int k = 0; k < places; k++)
            {
                below[k + 1] = below[k] + mass[k];
            }

            Array.Clear(change);
            for (int o = 0; o < reach.Length; o++)
            {
                double share = counts[o] / Math.Max(1e-300, below[reach[o].End] - below[reach[o].First]);
                change[reach[o].First] += share;
                change[reach[o].End] -= share;
            }

            double sum = 0, moved = 0;
            for (int k = 0; k < places; k++)
            {
                sum += change[k];
                double next = mass[k] * sum / total;
                moved = Math.Max(moved, Math.Abs(next - mass[k]));
                mass[k] = next;
            }

            if (moved < settled)
            {
                break;
            }
        }

        return mass;
    }

    // Of a count the sum of so many exponential weights: a gamma variate, by Wilson and Hilferty (1931) above 1.
    private static double[] Weights(Observation[] all, ulong seed, int draw)
    {
        var unit = new double[all.Length];
        SamplingPlan.FromName(SamplingPlan.Names[0], unit.Length).Fill(new StreamKey(seed, $"fit/turnbull/{draw}"), 0, 0, unit);
        return
        [
            .. unit.Select((u, i) => all[i].Count is var c && c <= 1 ? -c * Math.Log(u)
                : c * Math.Pow(Math.Max(0, 1 - (1 / (9 * c)) + (StandardNormal.Quantile(u) / (3 * Math.Sqrt(c)))), 3)),
        ];
    }
}
