using System.Collections.Immutable;

namespace AxleRisk.Core.Analyses.Causes;

/// <summary>The weighted sums of one group of rows: weights, patterns of events, and a histogram or states of each item.</summary>
internal sealed class PosteriorTally
{
    /// <summary>Bins of a normal score: steps of 0.01 from -9 to 9.</summary>
    public const int Bins = 1800;

    private const double PerUnit = 100;
    private const double Reach = 9;

    public PosteriorTally(EvidenceModel model)
    {
        Patterns = new double[1 << model.Events];
        TwinPasses = Studies.Workspace.Columns(model.TwinEvents.Length, Patterns.Length);
        TwinFails = Studies.Workspace.Columns(model.TwinEvents.Length, Patterns.Length);
        Items = [.. model.Items.Select(states => new double[states > 0 ? states : Bins])];
        Modes = new double[model.Modes];
        IsDiscrete = [.. model.Items.Select(states => states > 0)];
    }

    public long Rows { get; private set; }

    public double Weight { get; private set; }

    public double Squares { get; private set; }

    public double Greatest { get; private set; }

    /// <summary>The weight of each pattern of events.</summary>
    public double[] Patterns { get; }

    /// <summary>By twin: the weight of each pattern in which it passes the distance asked of.</summary>
    public double[][] TwinPasses { get; }

    /// <summary>By twin: the weight of each pattern in which it has failed as the axle had.</summary>
    public double[][] TwinFails { get; }

    /// <summary>The weight with which each mode of failure has failed.</summary>
    public double[] Modes { get; }

    /// <summary>The weight in each bin or state, by item.</summary>
    public double[][] Items { get; }

    private ImmutableArray<bool> IsDiscrete { get; }

    /// <summary>The score at a bin's lower edge.</summary>
    public static double Edge(double bin) => (bin / PerUnit) - Reach;

    /// <summary>Adds a block of rows.</summary>
    public void Add(EvidenceWorker worker, ReadOnlySpan<double> weights)
    {
        Rows += weights.Length;
        for (int row = 0; row < weights.Length; row++)
        {
            double w = weights[row];
            Weight += w;
            Squares += w * w;
            Greatest = Math.Max(Greatest, w);
            Patterns[worker.Pattern[row]] += w;
        }

        for (int twin = 0; twin < TwinPasses.Length; twin++)
        {
            for (int row = 0; row < weights.Length; row++)
            {
                TwinPasses[twin][worker.Pattern[row]] += weights[row] * worker.TwinPasses[twin][row];
                TwinFails[twin][worker.Pattern[row]] += weights[row] * worker.TwinFails[twin][row];
            }
        }

        for (int mode = 0; mode < Modes.Length; mode++)
        {
            for (int row = 0; row < weights.Length; row++)
            {
                Modes[mode] += weights[row] * worker.Modes[mode][row];
            }
        }

        for (int item = 0; item < Items.Length; item++)
        {
            double[] sums = Items[item], values = worker.Items[item];
            for (int row = 0; row < weights.Length; row++)
            {
                int bin = IsDiscrete[item] ? (int)values[row] : (int)Math.Clamp((values[row] + Reach) * PerUnit, 0, Bins - 1);
                sums[bin] += weights[row];
            }
        }
    }
}
