using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Trips;

/// <summary>
/// The fastest combination of speeds for each load and set of remedies (a job). All jobs are sorted with few vehicles, the same in all, so
/// that what they are off is nearly alike and is taken out by the plan's own; those that may be the best, or the best under a constraint
/// whose price is told, are searched with more.
/// </summary>
internal sealed class CardSearch
{
    /// <summary>Vehicles of the search.</summary>
    public const int Rows = 2048;

    // Vehicles that sort the jobs, and the jobs that stay for each question.
    private const int SortingRows = 256, Kept = 3;

    private readonly LifeModel whole;
    private readonly CardChoice choice;
    private readonly TripSurvival survival;
    private readonly StudySettings settings;
    private readonly RunOptions options;
    private readonly LifeModel[] models;
    private readonly (int Set, int Load)[] jobs;
    private readonly double[] km;
    private readonly SpeedSearch[] few;
    private readonly SpeedSearch?[] many;

    /// <summary>Sorts the jobs.</summary>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public CardSearch(
        LifeModel whole, CardChoice choice, double[] km, TripSurvival survival, StudySettings settings, RunOptions options)
    {
        (this.whole, this.choice, this.km, this.survival) = (whole, choice, km, survival);
        (this.settings, this.options) = (settings, options with { Progress = null });
        models = [.. choice.Sets.Select(s => s.IsEmpty ? whole : new LifeModel(s.Aggregate(whole.Scenario, Remedy.Apply)))];
        jobs = [.. from s in Enumerable.Range(0, models.Length) from l in Enumerable.Range(0, choice.Loads.Length) select (s, l)];
        many = new SpeedSearch?[jobs.Length];
        int[] all = [.. Enumerable.Range(0, jobs.Length)];
        few = Drawn(all, SortingRows);
        Draw([0]);
    }

    /// <summary>The number of jobs.</summary>
    public int Jobs => jobs.Length;

    /// <summary>Those that were searched with more vehicles.</summary>
    public int Searched => many.Count(m => m is not null);

    /// <summary>Vehicles that sorted the jobs.</summary>
    public long SortedBy => Math.Min(SortingRows, settings.Evaluations);

    /// <summary>Vehicles that searched.</summary>
    public long SearchedBy => Math.Min(Rows, settings.Evaluations);

    /// <summary>Evaluations spent.</summary>
    public long Evaluations => choice.Speeds.Max(s => s.Length) * ((Jobs * SortedBy) + (Searched * SearchedBy));

    /// <summary>The remedies of a job.</summary>
    public ImmutableArray<Remedy> SetOf(int job) => choice.Sets[jobs[job].Set];

    /// <summary>The scenario with the remedies of a job, made ready.</summary>
    public LifeModel ModelOf(int job) => models[jobs[job].Set];

    /// <summary>The place of its load.</summary>
    public int LoadOf(int job) => jobs[job].Load;

    /// <summary>The travel time of a combination of speeds, h.</summary>
    public double Hours(int[] at) => few[0].Hours(at);

    /// <summary>The fastest combination that keeps a target, of every job that was searched and keeps it.</summary>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public ImmutableSortedDictionary<int, int[]> Fastest(double target)
    {
        int[] top = [.. choice.Speeds.Select(s => s.Length - 1)];
        double off = few[0].Risk(top) / many[0]!.Risk(top), ofFew = target * (double.IsFinite(off) && off > 0 ? off : 1);
        int[] all = [.. Enumerable.Range(0, jobs.Length)];
        (int[]? At, double Least)[] sorted = Each(all, j =>
            few[j].Fastest(ofFew) is { } at ? (at, 0) : ((int[]?)null, few[j].Risk(few[j].Least())));
        int[] order =
        [
            .. all.OrderBy(j => sorted[j].At is { } at ? RankOf(j, at) : (double.MaxValue, 0, 0)).ThenBy(j => sorted[j].Least),
        ];
        int[] left = [.. Questions().SelectMany(asked => order.Where(asked).Take(Kept)).Distinct().Order()];
        Draw(left);
        int[]?[] found = Each(left, j => many[j]!.Fastest(target));
        return left.Zip(found).Where(x => x.Second is not null).ToImmutableSortedDictionary(x => x.First, x => x.Second!);
    }

    /// <summary>The job and combination with the least risk found.</summary>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public (int Job, int[] At) Least()
    {
        int[] all = [.. Enumerable.Range(0, jobs.Length)];
        double[] sorted = Each(all, j => few[j].Risk(few[j].Least()));
        int[] left = [.. all.OrderBy(j => sorted[j]).Take(Kept)];
        Draw(left);
        int best = left.MinBy(j => many[j]!.Risk(many[j]!.Least()));
        return (best, many[best]!.Least());
    }

    /// <summary>Of equal hours the fewest remedies, then the cheapest, then the planned load: the jobs stand in that order.</summary>
    public (double Hours, int Remedies, double Cost) RankOf(int job, int[] at) =>
        (Math.Round(Hours(at), 6), SetOf(job).Length, SetOf(job).Sum(r => r.Cost ?? 0));

    // Which is the best, which without each remedy, which with each load.
    private IEnumerable<Func<int, bool>> Questions() =>
    [
        _ => true,
        .. choice.Sets.SelectMany(s => s).Distinct().Select(r => (Func<int, bool>)(j => !SetOf(j).Contains(r))),
        .. Enumerable.Range(0, choice.Loads.Length).Select(l => (Func<int, bool>)(j => LoadOf(j) == l)),
    ];

    private void Draw(int[] some)
    {
        int[] missing = [.. some.Where(j => many[j] is null)];
        foreach ((int job, SpeedSearch search) in missing.Zip(Drawn(missing, Rows)))
        {
            many[job] = search;
        }
    }

    private SpeedSearch[] Drawn(int[] some, int rows) => Each(some, j => new SpeedSearch(
        CardVehicles.Draw(
            whole, ModelOf(j), choice.Loads[LoadOf(j)], choice, survival,
            settings with { Evaluations = Math.Min(rows, settings.Evaluations) }, options.Cancellation),
        choice.Speeds, km));

    private T[] Each<T>(int[] some, Func<int, T> of)
    {
        BlockRun<T> run = BlockRunner.Run(some.Length, 1, options, () => 0, (_, at, _) => of(some[at]));
        options.Cancellation.ThrowIfCancellationRequested();
        return [.. run.Blocks];
    }
}
