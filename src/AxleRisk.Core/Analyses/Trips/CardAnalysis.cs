using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Trips;

/// <summary>Finds the crew's card, and tells its risk by vehicles that had no part in choosing it.</summary>
internal static class CardAnalysis
{
    /// <summary>Vehicles of the search.</summary>
    public const int SearchRows = 2048;

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
        LifeModel[] models = [.. choice.Sets.Select(s => s.IsEmpty ? whole : new LifeModel(s.Aggregate(whole.Scenario, Remedy.Apply)))];
        (int Set, int Load)[] jobs =
            [.. from s in Enumerable.Range(0, models.Length) from l in Enumerable.Range(0, choice.Loads.Length) select (s, l)];
        StudySettings search = settings with { Evaluations = Math.Min(SearchRows, settings.Evaluations) };
        BlockRun<SpeedSearch> drawn = BlockRunner.Run(
            jobs.Length, 1, options with { Progress = null }, () => 0, (_, job, _) => new SpeedSearch(
                CardVehicles.Draw(
                    whole, models[jobs[job].Set], choice.Loads[jobs[job].Load], choice, survival, search, options.Cancellation),
                choice.Speeds, km));
        options.Cancellation.ThrowIfCancellationRequested();
        long evaluations = (long)jobs.Length * choice.Speeds.Max(s => s.Length) * search.Evaluations;

        double sought = FirstMargin * target;
        CardResult? last = null;
        for (int attempt = 0; attempt < MostTries; attempt++)
        {
            BlockRun<int[]?> found = BlockRunner.Run(
                jobs.Length, 1, options with { Progress = null }, () => 0, (_, job, _) => drawn.Blocks[(int)job].Fastest(sought));
            options.Cancellation.ThrowIfCancellationRequested();
            int[] kept = [.. Enumerable.Range(0, jobs.Length).Where(j => found.Blocks[j] is not null)];
            if (kept.Length == 0)
            {
                break;
            }

            double Hours(int j) => drawn.Blocks[j].Hours(found.Blocks[j]!);
            int best = kept.MinBy(j => RankOf(j, Hours));
            last = Told(best, found.Blocks[best]!, attempt);
            evaluations += last.Rows;
            if (last.KeepsTarget)
            {
                return (last with { Prices = Prices(kept, Hours, best) }, evaluations);
            }

            sought *= Math.Min(0.97, target / last.Risk.High);
        }

        // No combination keeps it: the least risk there is.
        int least = Enumerable.Range(0, jobs.Length).MinBy(j => drawn.Blocks[j].Risk(drawn.Blocks[j].Least()));
        last = Told(least, drawn.Blocks[least].Least(), MostTries);
        return (last, evaluations + last.Rows);

        // Of equal hours the fewest remedies, then the cheapest, then the planned load: the jobs stand in that order.
        (double, int, double) RankOf(int job, Func<int, double> hours)
        {
            ImmutableArray<Remedy> set = choice.Sets[jobs[job].Set];
            return (Math.Round(hours(job), 6), set.Length, set.Sum(r => r.Cost ?? 0));
        }

        CardResult Told(int job, int[] at, int attempt)
        {
            (int set, int load) = jobs[job];
            double[] chosen = [.. at.Select((i, leg) => choice.Speeds[leg][i])];
            (TripSums sums, TripSample? vehicles, long rows) = CardCheck.Run(
                whole, models[set], CardVehicles.Set(models[set].Scenario, choice.Loads[load], l => chosen[l]), survival, settings,
                $"card{attempt}", options);
            Interval risk = sums.Trip(!survival.IsConditional);
            return new CardResult
            {
                Hours = drawn.Blocks[job].Hours(at),
                HoursAsPlanned = km.Select((x, l) => x / CardChoice.PlannedSpeed(whole.Scenario, l)).Sum(),
                Target = target,
                Risk = risk,
                KeepsTarget = risk.High <= target,
                Legs = [.. chosen.Select((v, l) => new CardLeg(
                    whole.Scenario.Trip!.Legs[l].Name, km[l], CardChoice.PlannedSpeed(whole.Scenario, l), v,
                    vehicles is null ? double.NaN : sums.Share(l).Estimate))],
                PayloadKg = choice.Loads[load],
                Remedies = choice.Sets[set],
                Prices = [],
                Look = vehicles is null ? null : TripLook.Best(TripLooks.Of(whole, vehicles, survival, options), true),
                Notes = card.Notes,
                Searched = jobs.Length,
                SearchRows = search.Evaluations,
                Rows = rows,
            };
        }

        ImmutableArray<CardPrice> Prices(int[] kept, Func<int, double> hours, int best)
        {
            CardPrice Price(CardConstraint kind, Remedy? remedy, double? load, Func<int, bool> which) =>
                kept.Where(which).ToArray() is { Length: > 0 } left && left.MinBy(j => RankOf(j, hours)) is var job
                    ? new CardPrice(kind, remedy, load, hours(job), choice.Sets[jobs[job].Set])
                    : new CardPrice(kind, remedy, load, null, []);
            return
            [
                .. choice.Sets[jobs[best].Set].Select(r =>
                    Price(CardConstraint.WithoutRemedy, r, null, j => !choice.Sets[jobs[j].Set].Contains(r))),
                .. Enumerable.Range(0, choice.Loads.Length).Where(l => l != jobs[best].Load).Select(l =>
                    Price(CardConstraint.OtherLoad, null, choice.Loads[l], j => jobs[j].Load == l)),
                new CardPrice(CardConstraint.NoTarget, null, null, km.Select((x, l) => x / choice.Speeds[l][^1]).Sum(), []),
            ];
        }
    }
}
