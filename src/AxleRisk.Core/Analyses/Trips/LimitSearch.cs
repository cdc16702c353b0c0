using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Trips;

/// <summary>
/// Finds where something that can be set on a trip keeps the target. Every value is tried on the same vehicles, so the risk
/// is a smooth function of it; as it need not rise (corrugations shake most at one speed), the whole range is tried.
/// </summary>
/// <param name="whole">The scenario with its trip's inputs among its own, made ready.</param>
/// <param name="sample">The vehicles.</param>
/// <param name="survival">How survival follows from damage.</param>
/// <param name="target">The failure probability not to be exceeded, above 0.</param>
/// <param name="options">Threads, progress (in evaluations of this search), cancellation.</param>
internal sealed class LimitSearch(LifeModel whole, TripSample sample, TripSurvival survival, double target, RunOptions options)
{
    /// <summary>A crossing is found to this part of its value.</summary>
    private const double Tolerance = 5e-4;

    /// <summary>Vehicles from which few of them sort the values that are tried.</summary>
    public const long SortedFrom = 8192;

    // A value is clear where few of the vehicles put it this many half widths of their interval (2.1 standard errors each) off the target.
    private const double Clear = 3;

    // A block of each group of the jackknife.
    private readonly TripSample few = sample with { Blocks = [.. sample.Blocks.Where(b => b.Rows > 0).DistinctBy(b => b.Group[0])] };

    private long evaluations;

    private bool IsSorted => sample.Rows >= SortedFrom && few.Blocks.Count == sample.Groups;

    /// <summary>Evaluations spent so far.</summary>
    public long Evaluations => evaluations;

    /// <summary>The ranges of a lever that keep the target.</summary>
    /// <exception cref="OperationCanceledException">The search was cancelled.</exception>
    public TripLimit Find(TripLever lever)
    {
        var risks = new Dictionary<double, Tried>();
        ImmutableArray<double> grid = lever.Grid;
        Tried Risk(double x) => risks.TryGetValue(x, out Tried known) ? known : risks[x] = Evaluate(lever, x, sample);
        Tried[] seen = [.. grid.Select(x => IsSorted ? Evaluate(lever, x, few) : Risk(x))];
        Tried[] tried = [.. grid.Select((x, i) => IsSorted && IsClear(seen[i]) ? seen[i] : Risk(x))];
        var windows = ImmutableArray.CreateBuilder<TripWindow>();
        Interval? from = null;
        for (int i = 0; i < grid.Length; i++)
        {
            bool kept = tried[i].Estimate <= target;
            if (kept && i > 0 && tried[i - 1].Estimate > target)
            {
                from = Crossing(Risk, grid, tried, i - 1, i);
            }

            if (kept && i == grid.Length - 1)
            {
                windows.Add(new TripWindow(from, null));
            }
            else if (kept && tried[i + 1].Estimate > target)
            {
                windows.Add(new TripWindow(from, Crossing(Risk, grid, tried, i + 1, i)));
            }
        }

        double best = grid[Array.IndexOf(seen, seen.MinBy(t => t.Estimate))];
        return new TripLimit(lever, windows.ToImmutable(), best, Risk(best).Shown);
    }

    private bool IsClear(Tried of) => of.Estimate > 0 && !double.IsNaN(of.Shown.Estimate)
        && Math.Abs(Math.Log(of.Estimate / target)) > Clear * Math.Log(Math.Max(of.High / of.Estimate, of.Estimate / of.Low));

    /// <summary>
    /// Where the estimate meets the target, and as its interval where the ends of the risk's interval do: the cautious end
    /// inside the window, the other outside; the end of the range where they do not meet it there.
    /// </summary>
    private Interval Crossing(Func<double, Tried> risk, ImmutableArray<double> grid, Tried[] tried, int above, int kept)
    {
        int inward = kept - above;
        double root = Root(x => risk(x).Estimate, grid[kept], grid[above]);
        int inside = kept;
        while (inside >= 0 && inside < grid.Length && tried[inside].High > target)
        {
            inside += inward;
        }

        int outside = above;
        while (outside >= 0 && outside < grid.Length && tried[outside].Low <= target)
        {
            outside -= inward;
        }

        double safe = inside < 0 || inside == grid.Length
            ? grid[Math.Clamp(inside, 0, grid.Length - 1)] : Root(x => risk(x).High, grid[inside], root);
        double far = outside < 0 || outside == grid.Length
            ? grid[Math.Clamp(outside, 0, grid.Length - 1)] : Root(x => risk(x).Low, root, grid[outside]);
        return new Interval(root, Math.Min(safe, far), Math.Max(safe, far));
    }

    /// <summary>
    /// The crossing between a value that keeps the target and one that does not, on the side that keeps it; false position on the
    /// logarithm.
    /// </summary>
    private double Root(Func<double, double> risk, double kept, double above) => FalsePosition.LastNotAbove(
        x => Math.Log(risk(x) / target), kept, above, Tolerance * Math.Abs(kept == 0 ? above : kept));

    /// <summary>P(fails on the trip | reached its start) with the lever at a value.</summary>
    private Tried Evaluate(TripLever lever, double x, TripSample vehicles)
    {
        Scenario changed = lever.Apply(whole.Scenario, x);
        ImmutableArray<int> legs = lever.LegsOf(whole.Scenario);
        var model = new TripModel(changed, whole.Factors, legs);
        int scaled = lever.ScaledInput is { } name ? whole.Factors.ColumnNames.IndexOf(name) : -1;
        BlockRun<TripSums> run = BlockRunner.Run(
            vehicles.Blocks.Count, 1, options with { Progress = null }, () => new Worker(model, survival.OfThread(), scaled, x),
            (worker, block, _) =>
            {
                TripBlock drawn = vehicles.Blocks[(int)block];
                long soFar = Interlocked.Add(ref evaluations, drawn.Rows);
                options.Progress?.Invoke(soFar);
                return worker.Sum(drawn, legs, sample.Groups);
            });
        options.Cancellation.ThrowIfCancellationRequested();
        var sums = new TripSums(1, sample.Groups);
        foreach (TripSums block in run.Blocks)
        {
            sums.Add(block);
        }

        Interval shown = sums.Trip(!survival.IsConditional);
        return new Tried(double.IsNaN(shown.Estimate) ? sums.Drawn : shown.Estimate, shown);
    }

    /// <summary>The risk at one value: as the vehicles have it, which a search can follow, and what can be said of it.</summary>
    private readonly record struct Tried(double Estimate, Interval Shown)
    {
        public double Low => Shown.Low;

        public double High => Shown.High;
    }

    private sealed class Worker(TripModel model, TripSurvival survival, int scaled, double times)
    {
        private readonly TripWorkspace workspace = model.CreateWorkspace(StudySettings.BlockSize);
        private readonly double[][] used = Workspace.Columns(model.Legs, StudySettings.BlockSize * model.Modes);
        private readonly double[] column = new double[StudySettings.BlockSize];
        private readonly double[][] total = Workspace.Columns(1, StudySettings.BlockSize * model.Modes);

        public TripSums Sum(TripBlock drawn, ImmutableArray<int> legs, int groups)
        {
            model.Evaluate(Scaled(drawn.Values, drawn.Rows), drawn.Rows, workspace, used);
            var sums = new TripSums(1, groups);
            for (int leg = 0; leg < model.Legs; leg++)
            {
                double[] ofLeg = legs.Contains(leg) ? used[leg] : drawn.Legs[leg];
                for (int i = 0; i < drawn.Start.Length; i++)
                {
                    total[0][i] = leg == 0 ? ofLeg[i] : total[0][i] + ofLeg[i];
                }
            }

            for (int row = 0; row < drawn.Rows; row++)
            {
                survival.Take(drawn.Seen, row);
                sums.Add(drawn.Group[row], drawn.Reached[row], drawn.StartOf(row), total, row, drawn.LimitsOf(row), survival);
            }

            return sums;
        }

        private double[][] Scaled(double[][] values, int rows)
        {
            if (scaled < 0)
            {
                return values;
            }

            for (int row = 0; row < rows; row++)
            {
                column[row] = times * values[scaled][row];
            }

            return [.. values.Select((v, c) => c == scaled ? column : v)];
        }
    }
}
