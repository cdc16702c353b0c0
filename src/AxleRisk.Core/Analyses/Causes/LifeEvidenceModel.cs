using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Causes;

/// <summary>
/// Evidence on a scenario's vehicle. Known states are held, so that only what is left is drawn. Where Miner sum and S-N
/// scatter are lognormal they are no coordinates either: given damage and evidence their distribution is known.
/// </summary>
internal sealed class LifeEvidenceModel : EvidenceModel
{
    // Doubles inside the unit interval; the same ends as the copula's.
    private const double LeastUnit = 1.0 / (1L << 54);
    private const double GreatestUnit = 1 - (1.0 / (1L << 53));

    private readonly LifeModel model;
    private readonly Evidence evidence;
    private readonly ImmutableArray<CauseItem> items;
    private readonly ExplanationEvents events;
    private readonly CauseItem[] states;
    private readonly CauseItem[] scale;
    private readonly int[] normals;
    private readonly (int Column, double Unit)[] held;
    private readonly (int Column, Measurement Reading)[] measured;

    public LifeEvidenceModel(LifeModel model, Evidence evidence)
    {
        this.model = model;
        this.evidence = evidence;
        items = CauseItem.Of(model);
        ImmutableArray<string> columns = model.Factors.ColumnNames;
        events = new ExplanationEvents(evidence.Explanations, columns);
        held = [.. evidence.Known.Select(k => (columns.IndexOf(k.Factor), UnitOf(items.Single(i => i.Name == k.Factor), k.Value)))];
        measured = [.. evidence.Measured.Select(m => (columns.IndexOf(m.Factor), m))];
        states = [.. items.Where(i => i.Choice is not null && !held.Any(h => h.Column == i.Column))];
        scale = [.. items.Where(i => model.Scale.IsLognormal && LifeScale.Contains(i.Factor))];
        HashSet<int> drawnOtherwise = [.. held.Select(h => h.Column), .. states.Concat(scale).Select(i => i.Column)];
        normals = [.. Enumerable.Range(0, columns.Length).Where(c => !drawnOtherwise.Contains(c))];
        Normals = [.. normals.Select(c => columns[c])];
        States = [.. states.Select(i => (i.Name, i.Choice!.Weights))];
        Items = [.. items.Select(i => i.Choice?.Values.Length ?? 0)];
    }

    public override ImmutableArray<string> Normals { get; }

    public override ImmutableArray<(string Name, ImmutableArray<double> Probabilities)> States { get; }

    /// <summary>One for the scale given the evidence, one for how its two factors share it.</summary>
    public override ImmutableArray<string> Uniforms => scale.Length > 0 ? ["scale", "scale/shared"] : [];

    public override ImmutableArray<int> Items { get; }

    public override int Events => events.Count;

    public override EvidenceWorker CreateWorker(int capacity) => new Worker(this, capacity);

    /// <summary>The middle of the unit values that map to a state.</summary>
    private static double UnitOf(CauseItem item, double value) =>
        item.Distribution.Cumulative(value) - (item.Distribution.Density(value) / 2);

    private sealed class Worker(LifeEvidenceModel parent, int capacity) : EvidenceWorker(parent, capacity)
    {
        private readonly Workspace workspace = parent.model.CreateWorkspace(capacity);
        private readonly double[][] values = parent.model.CreateColumns(capacity);

        public override void Evaluate(SamplePoints points, int count, Span<double> logLikelihood)
        {
            FillUnits(points, count);
            parent.model.Factors.Map(workspace.Unit, values, count);
            parent.model.Evaluate(values, count, workspace);
            for (int row = 0; row < count; row++)
            {
                logLikelihood[row] = LogOf(row);
            }

            for (int i = 0; i < parent.items.Length; i++)
            {
                parent.items[i].Fill(workspace.Unit, values, count, Items[i]);
            }

            foreach (CauseItem item in parent.scale)
            {
                FillScale(item, points, count);
            }

            for (int row = 0; row < count; row++)
            {
                Pattern[row] = parent.events.PatternOf(values, row);
            }
        }

        private void FillUnits(SamplePoints points, int count)
        {
            double[][] unit = workspace.Unit;
            foreach (CauseItem item in parent.scale)
            {
                unit[item.Column].AsSpan(0, count).Fill(0.5);
            }

            foreach ((int column, double at) in parent.held)
            {
                unit[column].AsSpan(0, count).Fill(at);
            }

            for (int i = 0; i < parent.states.Length; i++)
            {
                CauseItem item = parent.states[i];
                for (int row = 0; row < count; row++)
                {
                    unit[item.Column][row] = UnitOf(item, item.Choice!.Values[(int)points.States[i][row]]);
                }
            }

            for (int i = 0; i < parent.normals.Length; i++)
            {
                Span<double> column = unit[parent.normals[i]].AsSpan(0, count);
                StandardNormal.Cumulative(points.Normals[i].AsSpan(0, count), column);
                foreach (ref double u in column)
                {
                    u = Math.Clamp(u, LeastUnit, GreatestUnit);
                }
            }
        }

        private double LogOf(int row)
        {
            LifeScale scale = parent.model.Scale;
            double log = scale.IsLognormal
                ? LifeLikelihood.Log(parent.evidence.Life, scale, workspace.DamagePerKm[row])
                : LifeLikelihood.LogCounted(parent.evidence.Life, workspace.LifeKm[row]);
            foreach ((int column, Measurement reading) in parent.measured)
            {
                double error = (reading.Value - values[column][row]) / reading.StandardDeviation;
                log -= 0.5 * error * error;
            }

            return log;
        }

        /// <summary>
        /// One of the two factors of the scale. Of jointly normal parts with a share v and 1 - v of the variance, given the
        /// score z of their sum, the scores are sqrt(v) z + sqrt(1-v) e and sqrt(1-v) z - sqrt(v) e, e standard normal.
        /// </summary>
        private void FillScale(CauseItem item, SamplePoints points, int count)
        {
            double share = parent.model.Scale.VarianceShare(item.Factor);
            double sign = item == parent.scale[0] ? 1 : -1;
            double[] scores = Items[parent.items.IndexOf(item)];
            for (int row = 0; row < count; row++)
            {
                double z = LifeLikelihood.DrawScore(
                    parent.evidence.Life, parent.model.Scale, workspace.DamagePerKm[row], points.Uniforms[0][row]);
                double e = StandardNormal.Quantile(points.Uniforms[1][row]);
                scores[row] = (Math.Sqrt(share) * z) + (sign * Math.Sqrt(Math.Max(0, 1 - share)) * e);
                values[item.Column][row] = item.ValueOf(scores[row]);
            }
        }
    }
}
