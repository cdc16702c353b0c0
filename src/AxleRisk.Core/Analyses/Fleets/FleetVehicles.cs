using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Fleets;

/// <summary>The vehicles of a two-level sample, each as what is left to chance in it once its sampled factors are known.</summary>
internal abstract class FleetVehicles
{
    /// <summary>The most vehicles asked about at once.</summary>
    public const int MostAtOnce = StudySettings.BlockSize;

    /// <summary>The probabilities that consecutive vehicles of an outer draw have failed by a distance of each.</summary>
    /// <param name="draw">The outer draw.</param>
    /// <param name="first">The first vehicle.</param>
    /// <param name="lnKm">The logarithms of the distances in km; at most <see cref="MostAtOnce"/>.</param>
    /// <param name="failed">Takes the probabilities.</param>
    public delegate void Reader(int draw, int first, ReadOnlySpan<double> lnKm, Span<double> failed);

    /// <summary>Room for a sample of a scenario.</summary>
    public static FleetVehicles Of(LifeModel model, NestedPlan plan) => model.Modes.IsPlain || !model.Chances.IsExact
        ? new LognormalVehicles(model, Workspace.Columns(plan.Draws, plan.Inner))
        : new ModeVehicles(model, plan);

    /// <summary>Keeps rows last evaluated, all of one outer draw.</summary>
    /// <param name="draw">The outer draw.</param>
    /// <param name="first">The first vehicle.</param>
    /// <param name="count">The number of vehicles.</param>
    /// <param name="space">Their workspace.</param>
    /// <param name="values">Their factors.</param>
    public abstract void Keep(int draw, int first, int count, Workspace space, double[][] values);

    /// <summary>A way to the probabilities; each thread needs its own.</summary>
    public abstract Reader CreateReader();

    /// <summary>The numbers of rows kept, for another run of the same study.</summary>
    public abstract double[] NumbersOf(int draw, int first, int count);

    /// <summary>Keeps rows that another run has evaluated.</summary>
    /// <param name="draw">The outer draw.</param>
    /// <param name="first">The first vehicle.</param>
    /// <param name="count">The number of vehicles.</param>
    /// <param name="numbers">What <see cref="NumbersOf"/> gave there.</param>
    public abstract void Put(int draw, int first, int count, ReadOnlySpan<double> numbers);
}
