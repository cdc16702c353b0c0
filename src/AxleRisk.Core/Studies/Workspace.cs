using AxleRisk.Core.Damage;

namespace AxleRisk.Core.Studies;

/// <summary>The buffers of one thread: everything a block of evaluations needs, allocated once.</summary>
public sealed class Workspace
{
    internal Workspace(int capacity, int factorColumns, int legs, BatchKernel kernel, ModeBuffers? modes = null)
    {
        Capacity = capacity;
        Unit = Columns(factorColumns, capacity);
        Damage = new DamageColumns(capacity, legs, modes is not null);
        Modes = modes;
        DamageByLeg = Columns(legs, capacity);
        DamagePerKm = new double[capacity];
        Scale = new double[capacity];
        LifeKm = new double[capacity];
        Kernel = kernel;
    }

    /// <summary>The greatest number of rows of a block.</summary>
    public int Capacity { get; }

    /// <summary>The unit columns last drawn.</summary>
    public double[][] Unit { get; }

    /// <summary>Damage per km of use that each leg brings, by leg and row.</summary>
    public double[][] DamageByLeg { get; }

    /// <summary>Damage per km of use, by row.</summary>
    public double[] DamagePerKm { get; }

    /// <summary>Miner sum times 10^scatter, by row.</summary>
    public double[] Scale { get; }

    /// <summary>Life in km, by row.</summary>
    public double[] LifeKm { get; }

    /// <summary>What each mode of failure uses up per km; null where fatigue is all there is and nothing ages.</summary>
    public LifeRates? Rates => Modes?.Rates;

    /// <summary>The buffers of further modes and ageing; null where there is neither, nor a bump stop.</summary>
    internal ModeBuffers? Modes { get; }

    internal DamageColumns Damage { get; }

    internal BatchKernel Kernel { get; }

    /// <summary>The input columns of the assembly's steps, from <see cref="ColumnAssembly.Prepare"/>.</summary>
    internal double[][][] AssemblyInputs { get; set; } = [];

    internal static double[][] Columns(int columns, int rows)
    {
        var result = new double[columns][];
        for (int i = 0; i < columns; i++)
        {
            result[i] = new double[rows];
        }

        return result;
    }
}
