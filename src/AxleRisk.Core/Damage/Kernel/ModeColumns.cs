using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>
/// A mode of failure beside fatigue, as the damage model knows it: its input, one column a parameter and one row an evaluation,
/// and the rate
/// at which it uses up what it has, in vector code and, as its twin, in scalar code.
/// </summary>
/// <param name="capacity">The number of rows.</param>
/// <param name="columns">The number of columns.</param>
internal abstract class ModeColumns(int capacity, int columns)
{
    /// <summary>All columns, in a fixed order.</summary>
    public double[][] All { get; } = [.. Enumerable.Range(0, columns).Select(_ => new double[capacity])];

    /// <summary>What is used up per km driven on a surface, of one row.</summary>
    /// <param name="load">The loads there.</param>
    /// <param name="row">The row.</param>
    public abstract double PerKm(in LegLoad load, int row);

    /// <summary>What one event uses up, of one row.</summary>
    /// <param name="peakN">The greatest force through the section, N; of a moment the force that would make it.</param>
    /// <param name="isMoment">Whether the event is a moment in the section, not a load of the wheel.</param>
    /// <param name="row">The row.</param>
    public abstract double OfEvent(double peakN, bool isMoment, int row);

    /// <summary>The same of several rows; NaN where only the scalar code serves.</summary>
    /// <param name="loads">The loads, from its first row on.</param>
    /// <param name="first">The row of these columns that the loads begin with.</param>
    /// <param name="rows">Rows.</param>
    /// <param name="perKm">Takes the rates.</param>
    public abstract void FillPerKm<T>(LegForces loads, int first, int rows, AlignedBuffer<float> perKm)
        where T : struct, IFloatLanes<T>;
}
