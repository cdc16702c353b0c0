using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Learning;

/// <summary>The likelihood of everything that was seen, given what is unknown.</summary>
internal sealed class LearnModel
{
    /// <summary>Nodes at which a curve is computed where records have more distances than that.</summary>
    public const int MostNodes = 64;

    private readonly double[] asked;

    /// <summary>The likelihood of a scenario's data.</summary>
    /// <param name="model">The scenario made ready.</param>
    /// <param name="unknowns">What is unknown.</param>
    /// <param name="rows">Rows of the sample of vehicles, a power of 2.</param>
    /// <param name="seed">The seed.</param>
    /// <param name="asked">Distances at which the failure probability of the usual vehicle is asked for besides, km.</param>
    public LearnModel(LifeModel model, Unknowns unknowns, int rows, ulong seed, IEnumerable<double> asked)
        : this(model, unknowns, VehicleSet.Of(model, unknowns, rows, seed), asked)
    {
    }

    private LearnModel(LifeModel model, Unknowns unknowns, ImmutableArray<VehicleSet> sets, IEnumerable<double> asked)
    {
        Model = model;
        Unknowns = unknowns;
        Sets = sets;
        this.asked = [.. asked.Distinct().Order()];
        Gauges = [.. model.Scenario.Gauges.Runs.Select(r => new GaugeModel(model, r))];
        NodesOfSets = [.. Sets.Select((s, i) => NodesOf(s.Records, i == 0 ? this.asked : [], Stretches.BendsKm(model.Scenario)))];
    }

    /// <summary>The same with another, independent sample of vehicles.</summary>
    /// <param name="seed">The seed.</param>
    /// <param name="replicate">The number of the sample; 0 is this one.</param>
    public LearnModel WithVehicles(ulong seed, int replicate) => replicate == 0 || Sets[0].Rows == 1 ? this
        : new(Model, Unknowns, VehicleSet.Of(Model, Unknowns, Sets[0].Rows, seed, replicate), asked);

    /// <summary>The same data with other distances asked for, of every set.</summary>
    public LearnModel AskedAt(double[] distances) => new(this, distances);

    private LearnModel(LearnModel from, double[] distances)
    {
        (Model, Unknowns, Sets, Gauges) = (from.Model, from.Unknowns, from.Sets, from.Gauges);
        asked = distances;
        NodesOfSets = [.. Sets.Select(s => NodesOf(s.Records, distances, Stretches.BendsKm(Model.Scenario)))];
    }

    /// <summary>The scenario.</summary>
    public LifeModel Model { get; }

    /// <summary>What is unknown of it.</summary>
    public Unknowns Unknowns { get; }

    /// <summary>The sets of vehicles with their records.</summary>
    public ImmutableArray<VehicleSet> Sets { get; }

    /// <summary>The gauge runs.</summary>
    public ImmutableArray<GaugeModel> Gauges { get; }

    /// <summary>The nodes of each set's curve, km.</summary>
    public ImmutableArray<double[]> NodesOfSets { get; }

    /// <summary>The distances asked for.</summary>
    public ReadOnlySpan<double> Asked => asked;

    /// <summary>Evaluations of the damage model for one value of what is unknown.</summary>
    public int EvaluationsEach => Sets.Where((s, i) => i == 0 || !s.Records.IsEmpty).Sum(s => s.Rows) + Gauges.Length;

    /// <summary>One thread's part.</summary>
    public LearnWorker CreateWorker() => new(this);

    /// <summary>The distances of records, those asked for and both sides of each bend; a grid over their range where these are
    /// many.</summary>
    private static double[] NodesOf(ImmutableArray<FieldRecord> records, double[] asked, ImmutableArray<double> bends)
    {
        double[] all = [.. records.SelectMany(r => new[] { r.FromKm, r.ToKm }).Where(km => km > 0
            && double.IsFinite(km)).Distinct().Order()];
        if (all.Length + asked.Length > MostNodes && all.Length > 1)
        {
            double low = all[0], ratio = Math.Pow(all[^1] / low, 1.0 / (MostNodes - 1));
            all = [.. Enumerable.Range(0, MostNodes).Select(i => i == MostNodes - 1 ? all[^1] : low * Math.Pow(ratio, i))];
        }

        // So far from a bend that the difference which gives a density lies on one side of it.
        double aside = Math.Exp(2 * CurveFiller.DifferenceOfLn);
        (double first, double last) = (all.Concat(asked).DefaultIfEmpty(0).Min(), all.Concat(asked).DefaultIfEmpty(0).Max());
        IEnumerable<double> sides = bends.SelectMany(b => new[] { b / aside, b * aside }).Where(km => km > first && km < last);
        return [.. all.Concat(asked).Concat(sides).Distinct().Order()];
    }
}
