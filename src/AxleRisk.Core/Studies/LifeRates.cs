using AxleRisk.Core.Outcomes;

namespace AxleRisk.Core.Studies;

/// <summary>What each mode of failure uses up per km, by age and row: damage, yields, rating lives. A thread's buffer.</summary>
/// <param name="ages">The number of ages.</param>
/// <param name="capacity">The most rows.</param>
public sealed class LifeRates(int ages, int capacity)
{
    /// <summary>The rates of a mode, by age and row; zeros for a mode that is off.</summary>
    public double[][] Of(FailureMode mode) => mode switch
    {
        FailureMode.Yield => yield,
        FailureMode.Bearing => bearing,
        _ => damage,
    };

    private readonly double[][] damage = Workspace.Columns(ages, capacity);
    private readonly double[][] yield = Workspace.Columns(ages, capacity);
    private readonly double[][] bearing = Workspace.Columns(ages, capacity);
}
