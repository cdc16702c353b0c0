using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Analyses.Decisions;
using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Measurements;

/// <summary>What to measure next: the worth of knowing each unknown factor, and of each stated measurement.</summary>
public static class MeasureAnalysis
{
    /// <summary>Rows drawn at each value of a factor unless asked otherwise.</summary>
    public const long DefaultEvaluations = 4096;

    /// <summary>The values at which a continuous factor is held.</summary>
    public static int Values => InformationValue.Nodes;

    // The band without anything known more, where there is no decision.
    private const long BandEvaluations = 65_536;

    /// <summary>The sampling plan unless asked otherwise.</summary>
    public static string DefaultSampling(LifeModel model) =>
        RiskAnalysis.DefaultSampling(new CommonDraw(ModelsOf(model)).Columns + 2);

    /// <summary>The factors that are unknown.</summary>
    public static ImmutableArray<Factor> UnknownOf(LifeModel model) => [.. model.Factors.Factors.Where(NestedPlan.IsShared)];

    /// <summary>Whether any input of a scenario is one unknown value for all vehicles: told without making the factors.</summary>
    public static bool HasUnknown(Scenario scenario) =>
        scenario.Inputs.Any(i => i.Value is Value.Uncertain { Knowledge: Knowledge.Unknown })
        || scenario.WordNames.Any(name => scenario.FindWords(name) is { Only: null, Knowledge: Knowledge.Unknown })
        || (scenario.MixConcentration is not null && scenario.Legs.Length > 1 && scenario.MixKnowledge == Knowledge.Unknown);

    /// <summary>About how many evaluations a run takes.</summary>
    public static long EvaluationsOf(Scenario scenario, long rows)
    {
        var model = new LifeModel(scenario);
        return UnknownOf(model).Count(model.Factors.CanBeGiven) * InformationValue.Nodes * rows * ModelsOf(model).Length;
    }

    /// <summary>Runs the analysis.</summary>
    /// <param name="model">The scenario made ready; at least one factor is unknown.</param>
    /// <param name="settings">Rows at each value of a factor, seed, plan.</param>
    /// <param name="options">Threads, progress, cancellation.</param>
    /// <exception cref="StudyException">The plan has too few dimensions.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static MeasureResult Run(LifeModel model, StudySettings settings, RunOptions options)
    {
        Scenario scenario = model.Scenario;
        Decision? decision = DecisionOf(scenario);
        LifeModel[] models = ModelsOf(model);
        var given = new GivenCosts(models, settings);
        int dimensions = SamplingPlan.FromName(settings.Sampling, 1).Dimensions;
        if (given.Dimensions > dimensions)
        {
            throw new StudyException(
                $"{settings.Sampling} sampling has {dimensions} dimensions and {given.Dimensions} are needed: choose --sampling {SamplingPlan.Names[0]}");
        }

        long vehicles = decision?.VehiclesIn(scenario) ?? 1, spent = 0;
        double[] prices = [0, .. decision?.OptionsIn(scenario).Select(o => vehicles * o.Cost!.Value) ?? []];
        double failureCost = decision is null ? 1 : vehicles * DecideAnalysis.MeanOf(decision.CostOfFailure(scenario)!);
        DrawMeans? band = decision is null ? BandOf(model, settings, options) : null;
        double variance = band is null ? 0 : Math.Pow(DeviationOf(band), 2);
        HeldFactor[] told = ToldOf(model, given);
        ImmutableArray<Factor> leftOut = [.. UnknownOf(model).Except(told.Select(h => h.Factor))];
        var sums = new Dictionary<HeldFactor, double[][]>();
        foreach (HeldFactor held in told)
        {
            long before = spent;
            sums[held] = given.Sums(
                held, decision, options with { Progress = done => options.Progress?.Invoke(before + done) });
            spent += (long)held.Units.Length * GivenCosts.Groups * given.RowsOfGroup * models.Length;
        }

        CausesResult? causes = Investigates(scenario) ? CausesOf(model, settings, options with { Progress = null }) : null;
        spent += causes?.Run.Evaluations ?? 0;
        Interval Worth(HeldFactor held, InformationValue? information) => Jackknife.Estimate(
            sums[held],
            s => WorthOf(s, held, information, prices, failureCost, variance)) is var i
                ? new Interval(i.Estimate, Math.Max(0, i.Low), i.High) : default;
        return new MeasureResult
        {
            OfDecision = decision is not null,
            Currency = scenario.Currency,
            Vehicles = vehicles,
            Factors = [.. told.Select(h => new KnownFactor(h.Factor, Worth(h, null))).OrderByDescending(f => f.Perfect.Estimate)],
            Measurements = [.. scenario.Measurements.Where(m => leftOut.All(f => f.Name != m.Factor))
                .Select(m => Of(m, model, told, Worth, decision is not null))
                .OrderByDescending(m => m.Net?.Estimate ?? m.Value.Estimate)],
            LeftOut = leftOut,
            Band = band is null ? null : BandOf(band),
            Apart = causes?.Apart,
            Rows = (long)GivenCosts.Groups * given.RowsOfGroup,
            Run = new RunRecord(spent, spent, settings.Seed, settings.Sampling, LifeModel.Version, false),
        };
    }

    /// <summary>Whether a scenario has a failed or surviving vehicle to explain, and explanations to be told apart.</summary>
    public static bool Investigates(Scenario scenario) => !scenario.Evidence.IsEmpty && scenario.Evidence.Explanations.Length > 1;

    // Without what would have become of the axle otherwise: nothing is told of it here.
    private static CausesResult CausesOf(LifeModel model, StudySettings settings, RunOptions options)
    {
        Evidence evidence = model.Scenario.Evidence with
        {
            Explanations = [.. model.Scenario.Evidence.Explanations.Select(e => e with { Instead = [] })],
        };
        var own = new StudySettings(CausesAnalysis.DefaultEvaluations, settings.Seed, SamplingPlan.Names[0]);
        return CausesAnalysis.Run(model, evidence, own, options, model.Scenario.Measurements);
    }

    private static WorthOfMeasurement Of(
        PlannedMeasurement m, LifeModel model, HeldFactor[] told, Func<HeldFactor, InformationValue?, Interval> worth, bool isCost)
    {
        Interval value = told.FirstOrDefault(h => h.Factor.Name == m.Factor) is { } held
            ? worth(held, InformationValue.Measured(held.ValueOf, m.MeanDeviation)) : new Interval(0, 0, 0);
        return new WorthOfMeasurement(
            m, model.Factors.Find(m.Factor)!, value,
            isCost ? new Interval(value.Estimate - m.Cost, value.Low - m.Cost, value.High - m.Cost) : null);
    }

    // Of total sums by option and node: saved cost, or the share by which the band narrows.
    private static double WorthOf(
        double[] sums, HeldFactor held, InformationValue? information, double[] prices, double failureCost, double variance)
    {
        int nodes = (sums.Length - 1) / prices.Length;
        double scale = failureCost / sums[^1];
        double[][] costs =
            [.. prices.Select((price, o) => sums.AsSpan(o * nodes, nodes).ToArray().Select(s => price + (scale * s)).ToArray())];
        if (!held.Weights.IsEmpty)
        {
            double[] means = [.. costs.Select(c => c.Zip(held.Weights, (x, w) => x * w).Sum())];
            double least = held.Weights.Select((w, s) => w * costs.Min(c => c[s])).Sum();
            double between = held.Weights.Select((w, s) => w * Math.Pow(costs[0][s] - means[0], 2)).Sum();
            return variance > 0 ? Narrowing(between, variance) : Math.Max(0, means.Min() - least);
        }

        InformationValue of = information ?? InformationValue.Perfect;
        return variance > 0 ? Narrowing(of.Variance(costs[0]), variance) : of.Of(costs);
    }

    // The variance that is left on average is what there is less that of the expectation given what will be known.
    private static double Narrowing(double between, double variance) => 1 - Math.Sqrt(Math.Max(0, 1 - (between / variance)));

    private static Decision? DecisionOf(Scenario scenario) => Decision.MissingIn(scenario) is null ? scenario.Decision : null;

    private static LifeModel[] ModelsOf(LifeModel model) => DecisionOf(model.Scenario) is null ? [model] : DecideAnalysis.ModelsOf(model);

    // Held at a value, a factor says something of those that depend on it: they must be drawn so, the same in every option.
    private static HeldFactor[] ToldOf(LifeModel model, GivenCosts given) =>
        [.. UnknownOf(model).Where(f => model.Factors.CanBeGiven(f) && (model.Factors.IsAlone(f) || given.AllFollowFirst))
            .Select(f => new HeldFactor(f, model.Factors))];

    private static DrawMeans BandOf(LifeModel model, StudySettings settings, RunOptions options)
    {
        NestedPlan plan = NestedPlan.Of(settings with { Evaluations = BandEvaluations }, hasShared: true);
        return new FleetDraw(plan, options with { Progress = null }).Draw(model).FailedBy(model.Scenario.RequiredKm);
    }

    private static double DeviationOf(DrawMeans band)
    {
        RunningMoments moments = default;
        foreach (double p in band.Corrected)
        {
            moments.Add(p);
        }

        return Math.Sqrt(moments.Variance);
    }

    private static (double Low, double High) BandOf(DrawMeans band)
    {
        double[] sorted = [.. band.Corrected];
        Array.Sort(sorted);
        return (OrderStatistics.Quantile(sorted, 0.05), OrderStatistics.Quantile(sorted, 0.95));
    }
}
