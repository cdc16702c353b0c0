using System.Collections.Concurrent;
using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.RareEvents;

/// <summary>
/// Failure of a scenario before a distance: g = ln life - ln distance, u the factors' standard normals. Where Miner sum and
/// S-N scatter are lognormal and independent, they are the normal part and not in u.
/// </summary>
/// <remarks>
/// u goes to the unit interval by Phi, whose doubles thin out near 1: at u = 7 a step is 1e-5, at 8 it is 0.1, and beyond
/// 8.2 all is one value. Below beta 7 (P above 1e-12) this does not show.
/// </remarks>
internal sealed class LifeLimitState : LimitState
{
    private const int Rows = StudySettings.BlockSize;

    // Doubles inside the unit interval; the same ends as the copula's.
    private const double LeastUnit = 1.0 / (1L << 54);
    private const double GreatestUnit = 1 - (1.0 / (1L << 53));

    /// <summary>Stands for an infinite or a missing life, so that differences stay numbers.</summary>
    private const double GreatestLog = 1000;

    private readonly LifeModel model;
    private readonly DiscreteState state;
    private readonly int[] columns;
    private readonly double lnDistance;
    private readonly ConcurrentBag<(Workspace Workspace, double[][] Values)> pool = [];

    public LifeLimitState(LifeModel model, double distanceKm, DiscreteState state)
    {
        this.model = model;
        this.state = state;
        lnDistance = Math.Log(distanceKm);
        HashSet<int> left = [.. state.Units.Select(x => x.Column)];
        if (model.Scale.IsLognormal)
        {
            left.UnionWith(model.Factors.Factors.Where(LifeScale.Contains).Select(f => f.FirstColumn));
        }

        columns = [.. Enumerable.Range(0, model.Factors.ColumnNames.Length).Where(c => !left.Contains(c))];
    }

    public override int Dimension => columns.Length;

    public override double Sigma => model.Scale.IsLognormal ? model.Scale.Sigma : 0;

    public override void Evaluate(double[][] u, int count, Span<double> g)
    {
        if (!pool.TryTake(out (Workspace Workspace, double[][] Values) buffers))
        {
            buffers = (model.CreateWorkspace(Rows), model.CreateColumns(Rows));
        }

        for (int first = 0; first < count; first += Rows)
        {
            int rows = Math.Min(Rows, count - first);
            Map(u, first, rows, buffers.Workspace, buffers.Values);
            model.Evaluate(buffers.Values, rows, buffers.Workspace);
            for (int row = 0; row < rows; row++)
            {
                g[first + row] = LogMargin(buffers.Workspace, row);
            }
        }

        pool.Add(buffers);
    }

    /// <summary>A design point in joint form, in the factors' own units.</summary>
    public DesignPointReport Report(DesignPoint point)
    {
        (Workspace workspace, double[][] values) = (model.CreateWorkspace(1), model.CreateColumns(1));
        Map(Vectors.Columns([point.U], point.U.Length), 0, 1, workspace, values);
        var coordinates = new List<DesignCoordinate>();
        foreach (Factor factor in model.Factors.Factors)
        {
            for (int i = 0; i < factor.ColumnNames.Length; i++)
            {
                int column = factor.FirstColumn + i;
                int index = Array.IndexOf(columns, column);
                if (index >= 0)
                {
                    coordinates.Add(new DesignCoordinate(factor.ColumnNames[i], factor.Unit, values[column][0], point.Alpha[index]));
                }
                else if (model.Scale.IsLognormal && LifeScale.Contains(factor))
                {
                    // The normal part is the sum of two: its value is shared in proportion to their spreads.
                    double share = Math.Sqrt(model.Scale.VarianceShare(factor));
                    double value = factor.Distribution!.Quantile(StandardNormal.Cumulative(point.U[^1] * share));
                    coordinates.Add(new DesignCoordinate(factor.Name, factor.Unit, value, point.Alpha[^1] * share));
                }
            }
        }

        return new DesignPointReport(point.Beta, [.. coordinates.OrderByDescending(c => Math.Abs(c.Cosine))], point.IsApproximate);
    }

    private void Map(double[][] u, int first, int rows, Workspace workspace, double[][] values)
    {
        foreach (double[] column in workspace.Unit)
        {
            column.AsSpan(0, rows).Fill(0.5);
        }

        foreach ((int column, double unit) in state.Units)
        {
            workspace.Unit[column].AsSpan(0, rows).Fill(unit);
        }

        for (int i = 0; i < columns.Length; i++)
        {
            Span<double> unit = workspace.Unit[columns[i]].AsSpan(0, rows);
            StandardNormal.Cumulative(u[i].AsSpan(first, rows), unit);
            foreach (ref double value in unit)
            {
                value = Math.Clamp(value, LeastUnit, GreatestUnit);
            }
        }

        model.Factors.Map(workspace.Unit, values, rows);
    }

    private double LogMargin(Workspace workspace, int row)
    {
        double lnLife = model.Scale.IsLognormal ? model.Scale.Mu - Math.Log(workspace.DamagePerKm[row]) : Math.Log(workspace.LifeKm[row]);
        double margin = lnLife - lnDistance;
        return double.IsNaN(margin) ? GreatestLog : Math.Clamp(margin, -GreatestLog, GreatestLog);
    }
}
