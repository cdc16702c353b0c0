using System.Collections.Concurrent;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.RareEvents;

/// <summary>
/// A limit state of a scenario's factors: u are their standard normals, those of the discrete state held. Where what is left to
/// chance given the others is known exactly (see <see cref="FailureChances"/>), it is the normal part and its factors are not in u.
/// </summary>
internal abstract class FactorLimitState : LimitState
{
    private const int Rows = StudySettings.BlockSize;

    /// <summary>Stands for an infinite or a missing life, so that differences stay numbers.</summary>
    private const double GreatestLog = 1000;

    private readonly DiscreteState state;
    private readonly int[] columns;
    private readonly ConcurrentBag<Buffers> pool = [];

    protected FactorLimitState(LifeModel model, DiscreteState state)
    {
        Model = model;
        this.state = state;
        HashSet<int> left = [.. state.Units.Select(x => x.Column)];
        if (HasNormalPart)
        {
            left.UnionWith(model.Factors.Factors.Where(f => model.Chances.ModeOf(f) >= 0).Select(f => f.FirstColumn));
        }

        columns = [.. Enumerable.Range(0, model.Factors.ColumnNames.Length).Where(c => !left.Contains(c))];
    }

    /// <summary>Computes c(u) from the factors' values; each has buffers of its own and serves one thread at a time.</summary>
    protected delegate void Margins(double[][] values, int count, Span<double> g);

    public override int Dimension => columns.Length;

    /// <summary>The scenario whose factors these are.</summary>
    protected LifeModel Model { get; }

    /// <summary>Whether what is left to chance is the normal part.</summary>
    protected bool HasNormalPart => Model.Chances.IsExact;

    public override void Evaluate(double[][] u, int count, Span<double> g)
    {
        if (!pool.TryTake(out Buffers? buffers))
        {
            buffers = new Buffers(Model.CreateColumns(Rows), Model.CreateColumns(Rows), CreateMargins(Rows));
        }

        for (int first = 0; first < count; first += Rows)
        {
            int rows = Math.Min(Rows, count - first);
            Map(u, first, rows, buffers.Scores, buffers.Values);
            Span<double> margins = g.Slice(first, rows);
            buffers.Margins(buffers.Values, rows, margins);
            foreach (ref double margin in margins)
            {
                margin = double.IsNaN(margin) ? GreatestLog : Math.Clamp(margin, -GreatestLog, GreatestLog);
            }
        }

        pool.Add(buffers);
    }

    /// <summary>A design point in joint form, in the factors' own units.</summary>
    public DesignPointReport Report(DesignPoint point)
    {
        double[][] values = Model.CreateColumns(1);
        Map(PointVectors.Columns([point.U], point.U.Length), 0, 1, Model.CreateColumns(1), values);
        var coordinates = new List<DesignCoordinate>();
        double[] used = HasNormalPart ? UsedAtFailure(values) : [];
        int first = Leading(used);
        foreach (Factor factor in Model.Factors.Factors)
        {
            for (int i = 0; i < factor.ColumnNames.Length; i++)
            {
                int column = factor.FirstColumn + i;
                int index = Array.IndexOf(columns, column);
                if (index >= 0)
                {
                    coordinates.Add(new DesignCoordinate(
                        factor.ColumnNames[i], factor.ColumnLabels[i], factor.Unit, values[column][0], point.Alpha[index]));
                }
                else if (first >= 0 && Model.Chances.ModeOf(factor) == first)
                {
                    // Of fatigue the normal part is the sum of two: its value is shared in proportion to their spreads.
                    double share = first == 0 ? Math.Sqrt(Model.Scale.VarianceShare(factor)) : 1;
                    double[] value = [share * Model.Chances.ScoreOf(first, used[first])];
                    factor.Distribution!.OfScores(value, value);
                    coordinates.Add(new DesignCoordinate(factor.Name, factor.Label, factor.Unit, value[0], point.Alpha[^1] * share));
                }
            }
        }

        return new DesignPointReport(point.Beta, [.. coordinates.OrderByDescending(c => Math.Abs(c.Cosine))], point.IsApproximate);
    }

    /// <summary>A new function from the factors' values to c(u), for up to <paramref name="capacity"/> rows.</summary>
    protected abstract Margins CreateMargins(int capacity);

    /// <summary>What each mode has used up where a vehicle fails whose factor values are one row.</summary>
    protected abstract double[] UsedAtFailure(double[][] values);

    /// <summary>The mode that most such vehicles fail in.</summary>
    private int Leading(double[] used) => used.Length == 0 ? -1
        : used.Length == 1 ? 0 : Enumerable.Range(0, used.Length).MaxBy(mode => Model.Chances.Of(mode).Hazard(used[mode]));

    private void Map(double[][] u, int first, int rows, double[][] scores, double[][] values)
    {
        foreach (double[] column in scores)
        {
            column.AsSpan(0, rows).Clear();
        }

        foreach ((int column, double unit) in state.Units)
        {
            scores[column].AsSpan(0, rows).Fill(StandardNormal.Quantile(unit));
        }

        for (int i = 0; i < columns.Length; i++)
        {
            u[i].AsSpan(first, rows).CopyTo(scores[columns[i]]);
        }

        Model.Factors.MapScores(scores, values, rows);
    }

    private sealed record Buffers(double[][] Scores, double[][] Values, Margins Margins);
}
