using System.Collections.Immutable;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Causes;

/// <summary>
/// Evidence on a scenario's vehicle. Known states are held, so that only what is left is drawn. Where what is left to
/// chance is known exactly, its factors are no coordinates either: given the others and the evidence their distribution is known.
/// </summary>
internal sealed class LifeEvidenceModel : EvidenceModel
{
    // Of the uniforms; before it are that of the scale and of how it is shared.
    private const int FirstFurther = 2;

    // Doubles inside the unit interval; the same ends as the copula's.
    private const double LeastUnit = 1.0 / (1L << 54);
    private const double GreatestUnit = 1 - (1.0 / (1L << 53));

    private readonly LifeModel model;
    private readonly Evidence evidence;
    private readonly ImmutableArray<CauseItem> items;
    private readonly ExplanationEvents events;
    private readonly CauseItem[] states;
    private readonly CauseItem[] scale;
    private readonly CauseItem[] further;
    private readonly CauseItem? firstOfScale;
    private readonly int[] normals;
    private readonly (int Column, double Unit)[] held;
    private readonly (int Column, Measurement Reading)[] measured;
    private readonly ImmutableArray<Twin> twins;
    private readonly int? cracked;

    public LifeEvidenceModel(LifeModel model, Evidence evidence)
    {
        this.model = model;
        this.evidence = evidence;
        cracked = evidence is { CrackedAt: { } section, Life.FailedByKm: not null }
            ? 1 + model.Scenario.Sections.ToList().FindIndex(s => s.Name == section) : null;
        Modes = !model.Scenario.Sections.IsEmpty && evidence.Life?.FailedByKm is not null ? model.Modes.Modes.Length : 0;
        items = CauseItem.Of(model);
        ImmutableArray<string> columns = model.Factors.ColumnNames;
        events = new ExplanationEvents(evidence.Explanations, columns);
        held = [.. evidence.Known.Select(k => (columns.IndexOf(k.Factor), UnitOf(items.Single(i => i.Name == k.Factor), k.Value)))];
        measured = [.. evidence.Measured.Select(m => (columns.IndexOf(m.Factor), m))];
        // What was learned of a choice is in its score, with what was learned of others.
        string[] learned = [.. model.Factors.Learned?.Learned.Choices ?? []];
        if (evidence.Known.FirstOrDefault(k => learned.Contains(k.Factor)) is { } known)
        {
            throw new StudyException(
                $"{known.Factor} is one of the choices that this scenario has learned of, and cannot be held at a state: use the scenario before it learned");
        }

        states = [.. items.Where(i => i.Choice is not null && !learned.Contains(i.Name) && !held.Any(h => h.Column == i.Column))];
        scale = [.. items.Where(i => model.Chances.IsExact && model.Chances.ModeOf(i.Factor) >= 0)];
        firstOfScale = scale.FirstOrDefault(i => model.Chances.ModeOf(i.Factor) == 0);
        further = [.. scale.Where(i => model.Chances.ModeOf(i.Factor) > 0)];
        HashSet<int> drawnOtherwise = [.. held.Select(h => h.Column), .. states.Concat(scale).Select(i => i.Column)];
        normals = [.. Enumerable.Range(0, columns.Length).Where(c => !drawnOtherwise.Contains(c))];
        Normals = [.. normals.Select(c => columns[c])];
        States = [.. states.Select(i => (i.Name, i.Choice!.Weights))];
        Items = [.. items.Select(i => i.Choice?.Values.Length ?? 0)];
        twins = Twin.Of(model, evidence);
        Uniforms = [.. scale.Length > 0 ? ["scale", "scale/shared", .. further.Select(i => i.Name)] : Array.Empty<string>(),
            .. twins.SelectMany(t => t.Drawn)];
    }

    public override ImmutableArray<string> Normals { get; }

    public override ImmutableArray<(string Name, ImmutableArray<double> Probabilities)> States { get; }

    /// <summary>
    /// One for the scale given the evidence, one for how its two factors share it, one for the scatter of each further mode; and one
    /// for each input that a twin draws anew.
    /// </summary>
    public override ImmutableArray<string> Uniforms { get; }

    public override ImmutableArray<int> TwinEvents => [.. twins.Select(t => t.Event)];

    public override ImmutableArray<int> Items { get; }

    public override int Modes { get; }

    public override int Events => events.Count;

    public override EvidenceWorker CreateWorker(int capacity) => new Worker(this, capacity);

    /// <summary>The middle of the unit values that map to a state.</summary>
    private static double UnitOf(CauseItem item, double value) =>
        item.Distribution.Cumulative(value) - (item.Distribution.Density(value) / 2);

    private sealed class Worker(LifeEvidenceModel parent, int capacity) : EvidenceWorker(parent, capacity)
    {
        private readonly Workspace workspace = parent.model.CreateWorkspace(capacity);
        private readonly double[][] values = parent.model.CreateColumns(capacity);
        private readonly LooksLikelihood? looks = parent.evidence.Looks.IsEmpty ? null : new(parent.model, parent.evidence.Looks);
        private ModesLikelihood? modes;
        private readonly TwinWorker? twins = parent.twins.IsEmpty ? null : new(parent.model, parent.twins, capacity);
        private readonly double[][] scores = Workspace.Columns(parent.model.Modes.Modes.Length, capacity);

        public override void Evaluate(SamplePoints points, int count, Span<double> logLikelihood)
        {
            if (modes is null && parent.model.Chances.IsExact && (looks is not null || !parent.model.Modes.IsPlain))
            {
                modes = new(parent.evidence.LifeWithLooks, looks?.Chances ?? parent.model.Chances, parent.cracked, looks?.Chance);
            }

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

            if (parent.scale.Length > 0)
            {
                DrawScores(points, count);
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

        public override void EvaluateTwins(SamplePoints points, int count)
        {
            int drawn = points.Uniforms.Length - parent.twins.Sum(t => t.Drawn.Length);
            for (int twin = 0; twin < parent.twins.Length; twin++)
            {
                int uniforms = parent.twins[twin].Drawn.Length;
                twins!.Evaluate(twin, values, points.Uniforms.AsSpan(drawn, uniforms), count, TwinPasses[twin], TwinFails[twin]);
                drawn += uniforms;
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
            looks?.Take(workspace, values, row);
            double log = modes is not null ? modes.Log(workspace, row)
                : scale.IsLognormal ? LifeLikelihood.Log(parent.evidence.Life, scale, workspace.DamagePerKm[row])
                : parent.cracked is { } alone && !parent.model.Modes.IsPlain && workspace.FirstMode[row] != alone ? double.NegativeInfinity
                : LifeLikelihood.LogCounted(parent.evidence.LifeWithLooks, workspace.LifeKm[row])
                    + (looks is null ? 0 : Math.Log(looks.Of(workspace.Scale[row])));
            if (Modes.Length > 0)
            {
                FillModes(row);
            }

            foreach ((int column, Measurement reading) in parent.measured)
            {
                log += reading.LogLikelihood(values[column][row]);
            }

            return log;
        }

        private void FillModes(int row)
        {
            if (modes is not null)
            {
                modes.FillFailed(Modes, row);
                return;
            }

            for (int mode = 0; mode < Modes.Length; mode++)
            {
                Modes[mode][row] = workspace.FirstMode[row] == mode ? 1 : 0;
            }
        }

        // The standard normal score of every mode's limit given the evidence.
        private void DrawScores(SamplePoints points, int count)
        {
            Span<double> uniforms = stackalloc double[scores.Length];
            Span<double> drawn = stackalloc double[scores.Length];
            for (int row = 0; row < count; row++)
            {
                if (modes is null)
                {
                    scores[0][row] = LifeLikelihood.DrawScore(
                        parent.evidence.Life, parent.model.Scale, workspace.DamagePerKm[row], points.Uniforms[0][row]);
                    continue;
                }

                uniforms.Fill(0.5); // a scatter that is certain needs none
                uniforms[0] = points.Uniforms[0][row];
                for (int i = 0; i < parent.further.Length; i++)
                {
                    uniforms[parent.model.Chances.ModeOf(parent.further[i].Factor)] = points.Uniforms[FirstFurther + i][row];
                }

                looks?.Take(workspace, values, row);
                modes.DrawScores(workspace, row, uniforms, drawn);
                for (int mode = 0; mode < drawn.Length; mode++)
                {
                    scores[mode][row] = Math.Clamp(drawn[mode], -Distribution.GreatestScore, Distribution.GreatestScore);
                }
            }
        }

        /// <summary>
        /// One factor of a chance. That of a further mode is its limit. Of fatigue's jointly normal parts with a share v and 1 - v of the
        /// variance, given the score z of their sum, the scores are sqrt(v) z + sqrt(1-v) e and sqrt(1-v) z - sqrt(v) e, e standard normal.
        /// </summary>
        private void FillScale(CauseItem item, SamplePoints points, int count)
        {
            int mode = parent.model.Chances.ModeOf(item.Factor);
            double share = mode == 0 ? parent.model.Scale.VarianceShare(item.Factor) : 1;
            double sign = item == parent.firstOfScale ? 1 : -1;
            double[] of = Items[parent.items.IndexOf(item)];
            for (int row = 0; row < count; row++)
            {
                double e = mode > 0 ? 0 : StandardNormal.Quantile(points.Uniforms[1][row]);
                of[row] = (Math.Sqrt(share) * scores[mode][row]) + (sign * Math.Sqrt(Math.Max(0, 1 - share)) * e);
                values[item.Column][row] = item.ValueOf(of[row]);
            }
        }
    }
}
