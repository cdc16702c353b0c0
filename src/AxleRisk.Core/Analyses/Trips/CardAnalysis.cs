using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Trips;

/// <summary>Finds the crew's card, and tells its risk by vehicles that had no part in choosing it.</summary>
internal static class CardAnalysis
{
    // A card whose fresh interval reaches beyond the target is sought again under a lower one, by as much as it was beyond.
    private const int MostTries = 6;

    // What the search looks for at first: its vehicles are few, and it picks what looks well among them.
    private const double FirstMargin = 0.95;

    /// <summary>Runs it.</summary>
    /// <param name="whole">The scenario with its trip's inputs among its own, made ready.</param>
    /// <param name="card">What it may choose from.</param>
    /// <param name="compared">The remedies as they do alone.</param>
    /// <param name="target">The target.</param>
    /// <param name="survival">How survival follows.</param>
    /// <param name="settings">Vehicles of the fresh sample, seed, plan.</param>
    /// <param name="options">Threads, cancellation.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static (CardResult Card, long Evaluations) Run(
        LifeModel whole, TripCard card, ImmutableArray<TripRemedy> compared, double target, TripSurvival survival,
        StudySettings settings, RunOptions options)
    {
        var choice = CardChoice.Of(whole.Scenario, card, compared);
        int legs = choice.Speeds.Length;
        double[] km = [.. Enumerable.Range(0, legs).Select(l => TripAnalysis.MeanKmOf(whole.Scenario, l))];
        var search = new CardSearch(whole, choice, km, survival, settings, options);
        long told = 0;
        double sought = FirstMargin * target;
        CardResult? last = null;
        for (int attempt = 0; attempt < MostTries; attempt++)
        {
            ImmutableSortedDictionary<int, int[]> found = search.Fastest(sought);
            if (found.IsEmpty)
            {
                break;
            }

            int best = found.Keys.MinBy(j => search.RankOf(j, found[j]));
            last = Told(best, found[best], attempt);
            told += last.Rows;
            if (last.KeepsTarget)
            {
                return (last with { Prices = Prices(found, best) }, search.Evaluations + told);
            }

            sought *= Math.Min(0.97, target / last.Risk.High);
        }

        // No combination keeps it: the least risk there is.
        (int least, int[] slowest) = search.Least();
        last = Told(least, slowest, MostTries);
        return (last, search.Evaluations + told + last.Rows);

        CardResult Told(int job, int[] at, int attempt)
        {
            double[] chosen = [.. at.Select((i, leg) => choice.Speeds[leg][i])];
            (TripSums sums, TripSample? vehicles, long rows) = CardCheck.Run(
                whole, search.ModelOf(job),
                CardVehicles.Set(search.ModelOf(job).Scenario, choice.Loads[search.LoadOf(job)], l => chosen[l]), survival,
                settings, $"card{attempt}", options);
            Interval risk = sums.Trip(!survival.IsConditional);
            bool isDropped = !(risk.High <= target) && attempt < MostTries; // another follows, and nobody sees this one
            return new CardResult
            {
                Hours = search.Hours(at),
                HoursAsPlanned = km.Select((x, l) => x / CardChoice.PlannedSpeed(whole.Scenario, l)).Sum(),
                Target = target,
                Risk = risk,
                KeepsTarget = risk.High <= target,
                Legs = [.. chosen.Select((v, l) => new CardLeg(
                    whole.Scenario.Trip!.Legs[l].Name, km[l], CardChoice.PlannedSpeed(whole.Scenario, l), v,
                    vehicles is null ? double.NaN : sums.Share(l).Estimate))],
                PayloadKg = choice.Loads[search.LoadOf(job)],
                Remedies = search.SetOf(job),
                Prices = [],
                Look = vehicles is null || isDropped ? null : TripLook.Best(TripLooks.Of(whole, vehicles, survival, options), true),
                Notes = card.Notes,
                Searched = search.Jobs,
                SortingRows = search.SortedBy,
                SearchedWithMore = search.Searched,
                SearchRows = search.SearchedBy,
                Rows = rows,
            };
        }

        ImmutableArray<CardPrice> Prices(ImmutableSortedDictionary<int, int[]> found, int best)
        {
            CardPrice Price(CardConstraint kind, Remedy? remedy, double? load, Func<int, bool> which) =>
                found.Keys.Where(which).ToArray() is { Length: > 0 } left && left.MinBy(j => search.RankOf(j, found[j])) is var job
                    ? new CardPrice(kind, remedy, load, search.Hours(found[job]), search.SetOf(job))
                    : new CardPrice(kind, remedy, load, null, []);
            return
            [
                .. search.SetOf(best).Select(r => Price(CardConstraint.WithoutRemedy, r, null, j => !search.SetOf(j).Contains(r))),
                .. Enumerable.Range(0, choice.Loads.Length).Where(l => l != search.LoadOf(best)).Select(l =>
                    Price(CardConstraint.OtherLoad, null, choice.Loads[l], j => search.LoadOf(j) == l)),
                new CardPrice(CardConstraint.NoTarget, null, null, km.Select((x, l) => x / choice.Speeds[l][^1]).Sum(), []),
            ];
        }
    }
}
