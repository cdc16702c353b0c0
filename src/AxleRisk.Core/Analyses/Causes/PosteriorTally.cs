using System.Collections.Immutable;

namespace AxleRisk.Core.Analyses.Causes;

/// <summary>The weighted sums of one group of rows: weights, patterns of events, and a histogram or states of each item.</summary>
internal sealed class PosteriorTally
{
    /// <summary>Bins of a normal score: steps of 0.01 from -9 to 9.</summary>
    public const int Bins = 1800;

    private const double PerUnit = 100;
    private const double Reach = 9;

    /// <summary>Coarser bins, of the items that could be measured: steps of 0.05.</summary>
    public const int CoarseBins = Bins / CoarsePart;

    private const int CoarsePart = 5;

    private readonly ImmutableArray<int> measurable;

    /// <summary>Nothing added yet.</summary>
    /// <param name="model">What is weighed.</param>
    /// <param name="measurable">The items that are told of by pattern of events, too.</param>
    public PosteriorTally(EvidenceModel model, params ImmutableArray<int> measurable)
    {
        this.measurable = measurable;
        Patterns = new double[1 << model.Events];
        TwinPasses = Studies.Workspace.Columns(model.TwinEvents.Length, Patterns.Length);
        TwinFails = Studies.Workspace.Columns(model.TwinEvents.Length, Patterns.Length);
        Items = [.. model.Items.Select(states => new double[states > 0 ? states : Bins])];
        Modes = new double[model.Modes];
        IsDiscrete = [.. model.Items.Select(states => states > 0)];
        ByPattern = [.. measurable.Select(i => Studies.Workspace.Columns(Patterns.Length, IsDiscrete[i] ? Items[i].Length : CoarseBins))];
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

    /// <summary>By measurable item and pattern of events: the weight in each coarse bin or state.</summary>
    public ImmutableArray<double[][]> ByPattern { get; }

    private ImmutableArray<bool> IsDiscrete { get; }

    /// <summary>The score in the middle of a coarse bin.</summary>
    public static double Middle(int coarseBin) => Edge((coarseBin + 0.5) * CoarsePart);

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
                sums[BinOf(item, values[row])] += weights[row];
            }
        }

        for (int m = 0; m < measurable.Length; m++)
        {
            int item = measurable[m];
            int part = IsDiscrete[item] ? 1 : CoarsePart;
            for (int row = 0; row < weights.Length; row++)
            {
                ByPattern[m][worker.Pattern[row]][BinOf(item, worker.Items[item][row]) / part] += weights[row];
            }
        }
    }

    private int BinOf(int item, double value) =>
        IsDiscrete[item] ? (int)value : (int)Math.Clamp((value + Reach) * PerUnit, 0, Bins - 1);
}
