using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.Trips;

/// <summary>What a card may choose from.</summary>
/// <param name="Speeds">The speeds of each leg, rising, km/h.</param>
/// <param name="Loads">The loads, kg; null for the planned one.</param>
/// <param name="Sets">Sets of remedies, that of none first.</param>
internal sealed record CardChoice(
    ImmutableArray<ImmutableArray<double>> Speeds, ImmutableArray<double?> Loads, ImmutableArray<ImmutableArray<Remedy>> Sets)
{
    /// <summary>Remedies that are combined: each subset of them is searched.</summary>
    private const int MostRemedies = 5;

    /// <summary>Speeds of a leg at most: of a finer step every second or third is tried.</summary>
    private const int MostSpeeds = 24;

    // The slowest speed tried, as a part of the planned one. Faster than planned is tried only where the file says how fast.
    private const double Slowest = 0.3;

    /// <summary>The choice of a trip.</summary>
    /// <param name="whole">The scenario with its trip's inputs among its own.</param>
    /// <param name="card">What the file says of it.</param>
    /// <param name="compared">The remedies as they do alone, the best first: those that lessen the risk are combined.</param>
    public static CardChoice Of(Scenario whole, TripCard card, ImmutableArray<TripRemedy> compared)
    {
        Remedy[] helpful = [.. compared.Where(r => r.Ratio.Estimate < 1 && !r.Remedy.Changes.Any(SetsWhatTheCardSets))
            .Take(MostRemedies).Select(r => r.Remedy)];
        Remedy[] inOrder = [.. whole.Remedies.Concat(whole.Trip!.Remedies).Where(helpful.Contains)];
        return new CardChoice(
            [.. Enumerable.Range(0, whole.Trip.Legs.Length).Select(l => SpeedsOf(PlannedSpeed(whole, l), card))],
            [null, .. card.PayloadsKg.Distinct().Order().Select(kg => (double?)kg)],
            [.. Enumerable.Range(0, 1 << inOrder.Length)
                .Select(mask => inOrder.Where((_, i) => (mask >> i & 1) == 1).ToImmutableArray()).OrderBy(s => s.Length)]);
    }

    /// <summary>The planned speed of a leg, km/h.</summary>
    public static double PlannedSpeed(Scenario whole, int leg) => TripLegScenario.InputOf(whole, Quantities.Speed, leg)!.Value.Nominal;

    // Multiples of the step: what stands on the card is what was computed.
    private static ImmutableArray<double> SpeedsOf(double planned, TripCard card)
    {
        double step = card.StepKmPerHour;
        double most = card.FastestKmPerHour ?? planned;
        if (most < step)
        {
            return [most]; // rounded down it would not move, rounded up it would be too fast
        }

        int last = (int)Math.Floor(most / step);
        int first = Math.Clamp((int)Math.Ceiling(Slowest * planned / step), 1, last);
        int every = (last - first + MostSpeeds) / MostSpeeds;
        return [.. Enumerable.Range(0, 1 + ((last - first) / every)).Select(i => (last - (i * every)) * step).Reverse()];
    }

    // A remedy that sets a speed or the load is what the card decides itself.
    private static bool SetsWhatTheCardSets(Change change) =>
        change.Input.EndsWith("." + Quantities.Speed.Key, StringComparison.Ordinal)
            || change.Input.EndsWith("." + Quantities.Payload.Key, StringComparison.Ordinal);
}
