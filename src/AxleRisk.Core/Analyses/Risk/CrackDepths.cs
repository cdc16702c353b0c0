using System.Collections.Immutable;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Risk;

/// <summary>How deep the crack is at a distance, over the vehicles that have not failed by then.</summary>
/// <param name="Km">The distance, km.</param>
/// <param name="Low">The depth that 5 % do not reach, mm; its interval is 95 % and of sampling alone, as are the others'.</param>
/// <param name="Median">The median depth, mm.</param>
/// <param name="High">The depth that 5 % pass, mm.</param>
public sealed record DepthAtDistance(double Km, Interval Low, Interval Median, Interval High);

/// <summary>The depth of the crack by distance, the scatter of life integrated over exactly where it can be.</summary>
public static class CrackDepths
{
    /// <summary>The vehicles drawn.</summary>
    public const int Vehicles = Groups * OfGroup;

    private const int Groups = 16;
    private const int OfGroup = 128;

    /// <summary>The depths of vehicles drawn; none where the scenario states no crack.</summary>
    internal static ImmutableArray<DepthAtDistance> Of(LifeModel model, StudySettings settings, RunOptions options)
    {
        if (model.Scenario.Crack is null)
        {
            return [];
        }

        BlockRun<Group> run = BlockRunner.Run(
            Groups, 1, options with { Progress = null }, () => 0, (_, group, _) => new Group(model, settings, group));
        return run.IsPartial ? []
            : [.. CrackModel.TellAtKm(model.Scenario).Select(km => At(model, run.Blocks, km))];
    }

    private static DepthAtDistance At(LifeModel model, IReadOnlyList<Group> groups, double km)
    {
        Row[][] rows = [.. groups.Select(g => g.RowsAt(model, km))];
        Row[] all = [.. rows.SelectMany(r => r)];
        Interval Quantile(double share) => GroupInterval.Around(DepthOf(model, all, share), rows.Select(r => DepthOf(model, r, share)));
        return new DepthAtDistance(km, Quantile(0.05), Quantile(0.5), Quantile(0.95));
    }

    // Where the share of whole vehicles whose crack is no deeper comes to a share.
    private static double DepthOf(LifeModel model, Row[] rows, double share)
    {
        const double part = 1e-12; // of the depths there are
        double whole = rows.Sum(r => r.Whole), low = rows.Min(r => r.Depth.InitialMm), high = rows.Max(r => r.Depth.WallMm);
        return !(whole > 0) ? double.NaN : FalsePosition.LastNotAbove(Beyond, low, high, part * (high - low));

        double Beyond(double mm)
        {
            double below = 0;
            foreach (Row row in rows)
            {
                below += row.NotDeeper(model, mm);
            }

            return below - (share * whole);
        }
    }

    /// <summary>A vehicle at a distance: what is left to chance in fatigue, and whether the other modes are survived.</summary>
    private readonly record struct Row(double Used, double Others, double Limit, CrackDepth Depth, double Whole)
    {
        /// <summary>The probability that it is whole with a crack no deeper.</summary>
        public double NotDeeper(LifeModel model, double mm)
        {
            double fraction = Depth.FractionAt(mm), least = Used / fraction; // of what fatigue can use up
            return fraction == 0 && Used > 0 ? 0 : Others * (double.IsNaN(Limit)
                ? StandardNormal.Upper(model.Scale.Standardised(1, least)) : Limit >= least ? 1 : 0);
        }
    }

    private sealed class Group
    {
        private readonly Workspace space;
        private readonly CrackDepth[] depths;
        private readonly double[] limits;

        public Group(LifeModel model, StudySettings settings, long group)
        {
            space = model.CreateWorkspace(OfGroup);
            double[][] values = model.CreateColumns(OfGroup);
            model.Draw(SamplingPlan.FromName(settings.Sampling, OfGroup), settings.Seed, $"crack{group}", 0, OfGroup, space, values);
            model.Evaluate(values, OfGroup, space);
            var crack = new CrackModel(model);
            depths = [.. Enumerable.Range(0, OfGroup).Select(row => crack.Of(values, row))];
            limits = new double[OfGroup * model.Modes.Modes.Length];
            model.FillLimits(values, OfGroup, limits);
        }

        public Row[] RowsAt(LifeModel model, double km)
        {
            int modes = model.Modes.Modes.Length;
            var used = new double[modes];
            return [.. Enumerable.Range(0, OfGroup).Select(row =>
            {
                FailureChances.FillUsed(space, row, km, used);
                double others = 1;
                for (int mode = 1; mode < modes; mode++)
                {
                    others *= model.Chances.IsExact ? model.Chances.Of(mode).Survival(used[mode])
                        : used[mode] > limits[(row * modes) + mode] ? 0 : 1;
                }

                double limit = model.Chances.IsExact ? double.NaN : limits[row * modes];
                double whole = others * (model.Chances.IsExact ? model.Chances.Of(0).Survival(used[0]) : used[0] > limit ? 0 : 1);
                return new Row(used[0], others, limit, depths[row], whole);
            })];
        }
    }
}
