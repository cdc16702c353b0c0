using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Trips;

/// <summary>Whether the axle lasts a trip, and at which speed and with what load it would.</summary>
public static class TripAnalysis
{
    /// <summary>The vehicles of a run unless asked otherwise: a power of two for each replicate of Sobol' points.</summary>
    public const long DefaultEvaluations = 32_768;

    /// <summary>The most vehicles, as all are kept in memory.</summary>
    public const long MostRows = 1_000_000;

    /// <summary>The fewest vehicles of a run.</summary>
    public const long LeastRows = 64;

    /// <summary>About how often the legs of a trip are evaluated again to find the limit of one lever; for progress only.</summary>
    private static long TriesOfLever(long vehicles) => vehicles >= LimitSearch.SortedFrom ? 16 : 35;

    /// <summary>Runs the analysis.</summary>
    /// <param name="scenario">The scenario; it has a trip.</param>
    /// <param name="settings">Evaluations (vehicles of the sample, at least 64 are taken), seed, sampling plan.</param>
    /// <param name="question">Method and target.</param>
    /// <param name="options">Threads, progress in evaluations of all questions, cancellation.</param>
    /// <exception cref="StudyException">The method or the sampling plan does not fit the scenario, or there are too many
    /// evaluations to keep.</exception>
    public static TripResult Run(Scenario scenario, StudySettings settings, TripQuestion question, RunOptions options)
    {
        if (settings.Evaluations > MostRows)
        {
            throw new StudyException($"all vehicles of a trip are kept, at most {MostRows:#,0}: choose --evaluations {MostRows} or fewer");
        }

        settings = settings with { Evaluations = Math.Max(LeastRows, settings.Evaluations) };
        var whole = new LifeModel(Trip.Whole(scenario));
        var survival = new TripSurvival(whole, question.IsCounted);
        var ranges = new RangePlan(whole);
        var legs = new TripModel(whole);
        TripSample sample = TripSample.Draw(whole, legs, ranges, settings, options, survival);
        if (sample.Rows < LeastRows || sample.Blocks.SelectMany(b => b.Group).Distinct().Count() < sample.Groups)
        {
            throw new OperationCanceledException();
        }

        (TripResult planned, Interval known) = Summarise(whole, sample, survival);
        bool isResolved = !double.IsNaN(planned.Probability.Estimate);
        if (!sample.IsPartial && !question.IsCounted && (survival.Seen is null || survival.IsConditional))
        {
            planned = RareLegs.Refine(whole, legs, planned, known, survival, settings, options);
        }

        CombineResult? combined = sample.IsPartial || !isResolved || survival.Seen is not null ? null
            : TripCombinations.Search(whole, ranges, sample, options.Threads);
        long spent = sample.Rows + planned.Rare.Sum(r => r.Answer.SearchEvaluations + r.Answer.SamplingEvaluations);
        ImmutableArray<Remedy> remedies = sample.IsPartial ? [] : [.. scenario.Remedies, .. scenario.Trip!.Remedies];
        ImmutableArray<TripRemedy> compared = TripRemedies.Run(whole, remedies, survival, settings, After(options, spent));
        spent += compared.IsEmpty ? 0 : settings.Evaluations * (1 + remedies.Length);
        ImmutableArray<TripLook> looks = sample.IsPartial || !planned.IsReached ? [] : TripLooks.Of(whole, sample, survival, options);
        double? target = question.Target ?? scenario.Trip!.TargetRisk;
        ImmutableArray<TripLimit> limits = [];
        bool isPartial = sample.IsPartial || options.Cancellation.IsCancellationRequested;
        if (target is { } most && !isPartial && planned.IsReached)
        {
            var search = new LimitSearch(whole, sample, survival, most, After(options, spent));
            (limits, isPartial) = Find(search, TripLever.Of(whole.Scenario));
            spent += search.Evaluations;
        }

        CardResult? card = null;
        if (target is { } kept && !isPartial && planned.IsReached && (question.WithCard || scenario.Trip!.Card is not null))
        {
            (card, long ofCard, isPartial) = CardOf(
                () => CardAnalysis.Run(whole, scenario.Trip!.Card ?? new TripCard(), compared, kept, survival, settings, options));
            spent += ofCard;
        }

        return planned with
        {
            Card = card,
            Looks = looks,
            Combinations = combined?.Combinations ?? [],
            Searched = combined?.Searched,
            Remedies = compared,
            Target = target,
            Limits = limits,
            Run = new RunRecord(sample.Rows, settings.Evaluations, settings.Seed, settings.Sampling, LifeModel.Version, isPartial),
            AllEvaluations = spent,
        };
    }

    /// <summary>About how many evaluations a run will spend, for progress.</summary>
    public static long EvaluationsOf(Scenario scenario, long vehicles, bool hasTarget) => vehicles
        * (1 + (scenario.Remedies.Length + scenario.Trip!.Remedies.Length is > 0 and var n ? n + 1 : 0)
            + (hasTarget ? TriesOfLever(vehicles) * (2 + scenario.Trip.Legs.Length) : 0));

    /// <summary>The mean distance of a leg, km.</summary>
    internal static double MeanKmOf(Scenario whole, int leg) => MeanOf(whole.Find(TripQuantities.Distance, whole.Legs.Length + leg));

    private static (CardResult? Card, long Evaluations, bool IsPartial) CardOf(Func<(CardResult Card, long Evaluations)> run)
    {
        try
        {
            (CardResult card, long evaluations) = run();
            return (card, evaluations, false);
        }
        catch (OperationCanceledException)
        {
            return (null, 0, true);
        }
    }

    private static RunOptions After(RunOptions options, long spent) =>
        options with { Progress = options.Progress is { } report ? done => report(spent + done) : null };

    private static (ImmutableArray<TripLimit> Limits, bool IsPartial) Find(LimitSearch search, ImmutableArray<TripLever> levers)
    {
        var found = ImmutableArray.CreateBuilder<TripLimit>();
        try
        {
            foreach (TripLever lever in levers)
            {
                found.Add(search.Find(lever));
            }

            return (found.ToImmutable(), false);
        }
        catch (OperationCanceledException)
        {
            return (found.ToImmutable(), true);
        }
    }

    private static TripSums Sum(TripSample sample, int legs, TripSurvival of)
    {
        var sums = new TripSums(legs, sample.Groups);
        TripSurvival survival = of.OfThread();
        foreach (TripBlock block in sample.Blocks)
        {
            for (int row = 0; row < block.Rows; row++)
            {
                survival.Take(survival.Seen is null ? null : block.Seen, row);
                double reached = survival.Seen is null && block.Seen is not null
                    ? survival.At(block.StartOf(row), block.LimitsOf(row)) : block.Reached[row];
                sums.Add(block.Group[row], reached, block.StartOf(row), block.Legs, row, block.LimitsOf(row), survival);
                if (survival.Seen is { } seen)
                {
                    sums.AddKnown(block.Group[row], survival.At(block.Seen!.UsedOf(row)[seen.Looks.Length..], block.LimitsOf(row)));
                }
            }
        }

        return sums;
    }

    // The trip as planned, with the answers to the other questions left empty, and P(seen so and reaches the start).
    private static (TripResult Planned, Interval Known) Summarise(LifeModel whole, TripSample sample, TripSurvival survival)
    {
        Trip trip = whole.Scenario.Trip!;
        TripSums sums = Sum(sample, trip.Legs.Length, survival);
        bool counted = !survival.IsConditional;
        double[] km = [.. trip.Legs.Select((_, l) => MeanKmOf(whole.Scenario, l))];
        Interval known = sums.Reached(sample.Rows);
        var planned = new TripResult
        {
            Modes = whole.Modes.Modes,
            Km = km.Sum(),
            AlreadyDrivenKm = MeanOf(whole.Scenario.Find(TripQuantities.AlreadyDriven)),
            Reached = survival.Seen is null ? known : sums.ReachedOfKnown(),
            Seen = survival.Seen is null ? null : new TripEvidence(
                whole.Scenario.Evidence, Sum(sample, trip.Legs.Length, survival.Unseen).Trip(counted), sums.Effective),
            Probability = sums.Trip(counted),
            Legs = [.. trip.Legs.Select((leg, l) => new TripLegRisk(
                leg.Name, km[l], km.Take(l + 1).Sum(), sums.Conditional(l, counted), sums.Share(l), sums.Cumulative(l + 1, counted)))],
            Combinations = [],
            Searched = null,
            Remedies = [],
            Target = null,
            Limits = [],
            IsConditional = survival.IsConditional,
            Run = new RunRecord(sample.Rows, sample.Rows, 0, "", LifeModel.Version, sample.IsPartial),
            AllEvaluations = sample.Rows,
        };
        return (planned, known);
    }

    private static double MeanOf(Input? input) => input?.Value is Value.Uncertain u ? u.Distribution.Mean : input?.Value.Nominal ?? 0;
}
