using System.Collections.Immutable;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Outcomes;

namespace AxleRisk.Core.Studies;

/// <summary>What each mode of failure uses up per km, by age and row: damage, yields, rating lives. A thread's buffer.</summary>
public sealed class LifeRates
{
    private readonly ImmutableArray<FailureMode> modes;

    internal LifeRates(ImmutableArray<FailureMode> modes, AgeGrid ages, int capacity)
    {
        Limits = new double[PaddedTail.Padded(capacity)];
        Lives = new double[PaddedTail.Padded(capacity)];
        this.modes = modes;
        Curves = [.. modes.Select(_ => new AgeCurve(ages, capacity))];
        FurtherAtAge = [.. Enumerable.Range(0, ages.Km.Length).Select(age => Curves.Skip(1).Select(c => c.Rates[age]).ToArray())];
    }

    /// <summary>The rates of a mode that is on, by age and row.</summary>
    public double[][] Of(FailureMode mode) => Curves[modes.IndexOf(mode)].Rates;

    /// <summary>Room for one mode's limits, padded to whole registers.</summary>
    internal double[] Limits { get; }

    /// <summary>Room for the lives in one mode.</summary>
    internal double[] Lives { get; }

    /// <summary>The rates over distance, by mode.</summary>
    internal ImmutableArray<AgeCurve> Curves { get; }

    /// <summary>The rates of the modes beside fatigue, by age, mode and row.</summary>
    internal ImmutableArray<double[][]> FurtherAtAge { get; }
}
