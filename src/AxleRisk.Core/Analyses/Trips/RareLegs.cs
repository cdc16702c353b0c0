using System.Collections.Immutable;
using AxleRisk.Core.Analyses.RareEvents;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Trips;

/// <summary>
/// Replaces what the sampled vehicles cannot tell of a trip by rare-event answers, leg by leg: of a rare trip all legs, of another
/// those that few vehicles carry. The trip, and what has failed by the end of a leg, are sums over legs.
/// </summary>
internal static class RareLegs
{
    /// <summary>The trip with rare-event answers where they are needed.</summary>
    /// <param name="whole">The scenario with its trip's inputs among its own, made ready.</param>
    /// <param name="trip">The legs of its trip, made ready.</param>
    /// <param name="sampled">The trip by the sampled vehicles.</param>
    /// <param name="known">P(seen as the evidence says and reaches the start).</param>
    /// <param name="survival">How survival follows.</param>
    /// <param name="settings">Seed.</param>
    /// <param name="options">Threads, cancellation.</param>
    public static TripResult Refine(
        LifeModel whole, TripModel trip, TripResult sampled, Interval known, TripSurvival survival, StudySettings settings,
        RunOptions options)
    {
        ImmutableArray<TripLegRisk> legs = sampled.Legs;
        bool isRare = IsPoor(sampled.Probability);
        bool Wanted(Interval p) => isRare || double.IsNaN(p.Estimate);
        int poorTo = legs.Length - 1;
        while (poorTo >= 0 && !Wanted(legs[poorTo].Cumulative))
        {
            poorTo--;
        }

        var rare = ImmutableArray.CreateBuilder<RareLeg>();
        var parts = new RarePart?[legs.Length];
        for (int l = 0; l < legs.Length && !whole.Factors.Factors.IsEmpty && known.Estimate > 0; l++)
        {
            if ((l <= poorTo || Wanted(legs[l].Conditional)) && !IsImpossible(legs[l].Conditional))
            {
                int leg = l;
                RareEventResult answer = RareEventAnalysis.Run(
                    whole, state => new TripLimitState(whole, trip, leg, state, survival), $"trip/{legs[l].Name}/rare", legs[l].EndKm,
                    new RareEventSettings(settings.Seed),
                    options with { Progress = null });
                if (answer.Run.IsPartial)
                {
                    return sampled;
                }

                if (answer.FailureFound || double.IsNaN(legs[l].Conditional.Estimate))
                {
                    rare.Add(new RareLeg(legs[l].Name, answer));
                    parts[l] = RarePart.Of(answer);
                }
            }
        }

        return rare.Count == 0 ? sampled : Replace(sampled, known, parts, poorTo) with { Rare = rare.ToImmutable() };
    }

    private static TripResult Replace(TripResult sampled, Interval known, RarePart?[] parts, int poorTo)
    {
        var reached = RarePart.Of(known);
        RarePart all = RarePart.Sum(parts);
        bool isRareTrip = poorTo == parts.Length - 1;
        double survived = 1;
        var legs = ImmutableArray.CreateBuilder<TripLegRisk>();
        for (int l = 0; l < parts.Length; l++)
        {
            TripLegRisk leg = sampled.Legs[l];
            Interval own = parts[l] is { } part ? part.Over(reached with { P = reached.P * survived }) : leg.Conditional;
            Interval cumulative = l <= poorTo ? RarePart.Sum(parts[..(l + 1)]).Over(reached) : leg.Cumulative;
            Interval share = isRareTrip ? (parts[l] ?? default).ShareOf(all)
                : parts[l] is { } small
                    ? small.Over(RarePart.Of(sampled.Probability) with { P = sampled.Probability.Estimate * reached.P }).Within(0, 1)
                : leg.Share;
            legs.Add(leg with { Conditional = own, Cumulative = cumulative, Share = share });
            survived = 1 - (double.IsNaN(cumulative.Estimate) ? 0 : cumulative.Estimate);
        }

        return sampled with { Legs = legs.ToImmutable(), Probability = legs[^1].Cumulative };
    }

    private static bool IsPoor(Interval p) => !IsImpossible(p) && RareDistances.IsPoor(p);

    private static bool IsImpossible(Interval p) => p is { Estimate: 0, High: 0 };
}
