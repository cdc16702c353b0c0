using System.Collections.Immutable;
using AxleRisk.Core.Damage.Kernel;

namespace AxleRisk.Core.Studies;

/// <summary>The buffers of one thread: everything a block of evaluations needs, allocated once.</summary>
public sealed class Workspace
{
    internal Workspace(int capacity, int factorColumns, int legs, DamageState state, LifeRates? rates)
    {
        Capacity = capacity;
        Unit = Columns(factorColumns, capacity);
        State = state;
        Rates = rates;
        FirstMode = new int[rates is null ? 0 : capacity];
        AgeKm = new double[rates is null ? 0 : capacity];
        AgedByLeg = Columns(legs, rates is null ? 0 : capacity);
        Hazards = new double[capacity];
        DamageByLeg = Columns(legs, capacity);
        DamagePerKm = new double[capacity];
        Scale = new double[capacity];
        LifeKm = new double[capacity];
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
    internal LifeRates? Rates { get; }

    /// <summary>The workspaces of the stretches of a history; empty without one.</summary>
    internal ImmutableArray<Workspace> Stretches { get; init; } = [];

    /// <summary>The place of the mode that fails first, by row; empty where there is but one and nothing ages.</summary>
    internal int[] FirstMode { get; }

    /// <summary>The age at which rates are evaluated, km, by row.</summary>
    internal double[] AgeKm { get; }

    /// <summary>Damage by leg at one age.</summary>
    internal double[][] AgedByLeg { get; }

    /// <summary>Room for one mode's hazards.</summary>
    internal double[] Hazards { get; }

    /// <summary>What the damage model keeps for the thread.</summary>
    internal DamageState State { get; }

    /// <summary>The columns of the axle's model.</summary>
    /// <exception cref="StudyException">The scenario brings a damage model of its own.</exception>
    internal DamageColumns Damage => State.Columns;

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
