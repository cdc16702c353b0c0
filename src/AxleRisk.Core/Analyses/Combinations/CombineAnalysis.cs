using System.Collections.Immutable;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Combinations;

/// <summary>
/// What factors do together: pairs against multiplication, interaction indices, and the combinations of up to four adverse
/// ranges or states with the highest failure probability.
/// </summary>
public static class CombineAnalysis
{
    /// <summary>The evaluations of a run unless asked otherwise.</summary>
    public const long DefaultEvaluations = 400_000;

    /// <summary>The part of the evaluations that is searched; the rest goes to the interaction indices.</summary>
    private const int SearchedPart = 4;

    /// <summary>The most rows kept in memory at once.</summary>
    private const long MostRows = 10_000_000;

    /// <summary>The weights of a row that this is stated for: Miner sum and S-N scatter known or not.</summary>
    private const long UsualSubsets = 4;

    private const long LeastRows = 64;

    /// <summary>Runs the analysis.</summary>
    /// <param name="model">The scenario made ready; it has at least one factor.</param>
    /// <param name="settings">Evaluations, a quarter of them searched, seed, sampling plan.</param>
    /// <param name="limits">What a combination needs.</param>
    /// <param name="options">Threads, progress, cancellation.</param>
    /// <exception cref="StudyException">The sampling plan does not fit the scenario, or there are too many evaluations to keep.</exception>
    public static CombineResult Run(LifeModel model, StudySettings settings, CombineLimits limits, RunOptions options)
    {
        long rows = Math.Max(LeastRows, settings.Evaluations / SearchedPart);
        var plan = new RangePlan(model);
        long most = MostRows * UsualSubsets / Math.Max(UsualSubsets, plan.Chances.Count);
        if (rows > most)
        {
            throw new StudyException(
                $"a quarter of the evaluations is searched and kept, at most {most:#,0}: choose --evaluations {SearchedPart * most} or fewer");
        }

        DrawnRows drawn = new RowDraw(model, settings with { Evaluations = rows }, plan).Run(options);
        (ImmutableArray<AdverseRange> ranges, ImmutableArray<RangeRows> inside) = RangeChoice.Choose(plan, drawn);
        int drawnRows = drawn.Rows.Count;
        bool IsWorse(AdverseRange range) => range.Probability.Estimate * drawnRows > drawn.Rows.Failures;
        RunOptions further = options with { Progress = options.Progress is { } report ? done => report(drawnRows + done) : null };
        ImmutableArray<ImmutableArray<Factor>> players = Strongest(model, ranges, drawn.Rows, limits.StrongestFactors);
        (ImmutableArray<InteractionPair> interactions, long spent, bool endedEarly) = drawn.IsPartial
            ? ([], 0, true)
            : InteractionAnalysis.Run(model, settings with { Evaluations = settings.Evaluations - rows }, players, further);
        int[] paired = [.. Enumerable.Range(0, ranges.Length)
            .Where(i => IsWorse(ranges[i]) && players.Any(p => p.Contains(ranges[i].Factor)))];
        ImmutableArray<PairEffect> pairs = PairEffects.Of(drawn.Rows, ranges, inside, paired, limits);
        return Search(drawn.Rows, ranges, inside, plan.Possible(limits.MostMembers), limits, options.Threads) with
        {
            RequiredKm = model.Scenario.RequiredKm,
            Pairs = [.. pairs.Select(p => p with
                { AreCorrelated = players.Any(g => g.Contains(p.First.Factor) && g.Contains(p.Second.Factor)) })],
            Interactions = interactions,
            IsConditional = plan.IsConditional,
            Run = new RunRecord(
                drawnRows + spent, settings.Evaluations, settings.Seed, settings.Sampling, LifeModel.Version, drawn.IsPartial
                    || endedEarly),
        };
    }

    /// <summary>
    /// The worst combinations of a sample whose ranges are given; the parts of the result that need a model are left empty.
    /// </summary>
    internal static CombineResult Search(
        EventRows rows, ImmutableArray<AdverseRange> ranges, ImmutableArray<RangeRows> inside, double possible, CombineLimits limits,
            int threads)
    {
        SearchOutcome found = new CombinationSearch(rows, inside, limits).Run(threads);
        var sums = new GroupSums(rows, inside);
        var choice = new CombinationChoice(sums, limits, possible);
        return new CombineResult
        {
            RequiredKm = double.NaN,
            Probability = sums.Probability([]),
            Ranges = ranges,
            Pairs = [],
            Interactions = [],
            Combinations = [.. choice.Choose(found.Eligible).Select(c => Tell(c, rows, ranges, sums, choice))],
            Searched = new SearchRecord(limits, rows.Count, ranges.Length, possible, found.Evaluated, found.Eligible.Count),
            IsConditional = false,
            Run = new RunRecord(rows.Count, rows.Count, 0, "", LifeModel.Version, false),
        };
    }

    private static Combination Tell(
        Candidate found, EventRows rows, ImmutableArray<AdverseRange> ranges, GroupSums sums, CombinationChoice choice) => new()
        {
            Members = [.. found.Items.Select(i => ranges[i])],
            Probability = sums.Probability(found.Items),
            Lift = sums.Estimate((n, f) => f[0] / n[0] / (f[1] / n[1]), found.Items),
            Coverage = sums.Estimate((_, f) => f[0] / f[1], found.Items).Within(0, 1),
            Likelihood = (double)found.Rows / rows.Count,
            Multiplied = choice.Multiplied(found.Items),
            ExceedsParts = choice.ExceedsParts(found.Items),
            Rows = found.Rows,
            EffectiveFailures = found.EffectiveFailures,
        };

    /// <summary>
    /// The groups of factors with the strongest single effect: the largest variance that splitting the vehicles by one of their
    /// ranges explains. A factor that acts only together with others can be missed here; the search does not miss it.
    /// </summary>
    private static ImmutableArray<ImmutableArray<Factor>> Strongest(LifeModel model, ImmutableArray<AdverseRange> ranges, EventRows rows,
        int most)
    {
        double average = rows.Failures / rows.Count;
        double Strength(AdverseRange r) => Math.Pow(r.Probability.Estimate - average, 2) * r.Mass / (1 - r.Mass);
        return [.. model.Factors.Groups
            .OrderByDescending(g => ranges.Where(r => g.Contains(r.Factor)).Select(Strength).DefaultIfEmpty(0).Max())
            .Take(most)];
    }
}
