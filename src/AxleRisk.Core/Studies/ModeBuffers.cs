using AxleRisk.Core.Damage;
using AxleRisk.Core.Outcomes;

namespace AxleRisk.Core.Studies;

/// <summary>One thread's buffers for what is more than plain fatigue of a vehicle that stays as it is.</summary>
internal sealed class ModeBuffers
{
    /// <summary>Makes the buffers.</summary>
    /// <param name="kernel">The rates of the modes.</param>
    /// <param name="aged">The columns of each age after the first, with their assembly's inputs.</param>
    /// <param name="legs">The number of legs.</param>
    /// <param name="capacity">The most rows.</param>
    public ModeBuffers(ModeKernel kernel, (DamageColumns Columns, double[][][] Inputs)[] aged, int legs, int capacity)
    {
        Kernel = kernel;
        Aged = aged;
        Rates = new LifeRates(aged.Length + 1, capacity);
        DamageByLeg = Workspace.Columns(legs, capacity);
        First = new FailureMode[capacity];
    }

    public ModeKernel Kernel { get; }

    public (DamageColumns Columns, double[][][] Inputs)[] Aged { get; }

    /// <summary>What each mode uses up per km, by age.</summary>
    public LifeRates Rates { get; }

    /// <summary>Damage by leg at one age.</summary>
    public double[][] DamageByLeg { get; }

    /// <summary>The mode that fails first, by row.</summary>
    public FailureMode[] First { get; }
}
