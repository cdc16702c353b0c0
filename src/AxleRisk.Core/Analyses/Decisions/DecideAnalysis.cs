using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Decisions;

/// <summary>What each option is expected to cost, its failures included, and how likely it is the best given what is unknown.</summary>
public static class DecideAnalysis
{
    /// <summary>The evaluations of each option unless asked otherwise.</summary>
    public const long DefaultEvaluations = 131_072;

    /// <summary>The name of the scenario as it is among the options.</summary>
    public const string AsItIs = "as it is";

    /// <summary>The fewest evaluations.</summary>
    public const long LeastEvaluations = NestedPlan.LeastEvaluations;

    /// <summary>The most, as all are kept in memory.</summary>
    public const long MostEvaluations = NestedPlan.MostEvaluations / 4;

    /// <summary>The sampling plan unless asked otherwise.</summary>
    public static string DefaultSampling(LifeModel model) =>
        RiskAnalysis.DefaultSampling(new DecisionDraw(ModelsOf(model), new NestedPlan(1, 1, new(1, 1, "plain")), 1).Dimensions);

    /// <summary>The number of options, the scenario as it is included.</summary>
    public static int OptionsOf(Scenario scenario) => 1 + scenario.Decision!.OptionsIn(scenario).Length;

    /// <summary>Runs the analysis.</summary>
    /// <param name="model">The scenario made ready; it states a decision, what a failure costs and each option's cost.</param>
    /// <param name="settings">Evaluations of each option, seed, sampling plan.</param>
    /// <param name="options">Threads, progress (in evaluations of all options), cancellation.</param>
    /// <param name="headline">
    /// The risk study's figure of the scenario as it is, by the distance that counts: the failures of all options go by it, unless the own
    /// sample saw something else (<see cref="RiskHeadline.Agrees"/>); null for the own sample's.
    /// </param>
    /// <exception cref="StudyException">The scenario or the settings do not allow it; the message says what would.</exception>
    /// <exception cref="OperationCanceledException">The run was cancelled before there was an answer.</exception>
    public static DecideResult Run(LifeModel model, StudySettings settings, RunOptions options, RiskHeadline? headline = null)
    {
        Scenario scenario = model.Scenario;
        Decision decision = scenario.Decision!;
        LifeModel[] models = ModelsOf(model);
        bool hasUnknown = models.Any(m => m.Factors.Factors.Any(NestedPlan.IsShared))
            || decision.CostOfFailure(scenario) is Value.Uncertain { Knowledge: Knowledge.Unknown };
        NestedPlan plan = NestedPlan.Of(settings, hasUnknown);
        var draw = new DecisionDraw(models, plan, settings.Seed);
        Require(models, draw, settings);
        FleetSample[] samples = draw.Draw(decision.UnderWarranty ? scenario.Fleet!.KmPerYear : null, options);
        DrawMeans[] failed = [.. samples.Select(s => FailedIn(s, scenario))];
        long vehicles = decision.VehiclesIn(scenario);
        double[] prices = [0, .. decision.OptionsIn(scenario).Select(o => vehicles * o.Cost!.Value)];
        double[] failureCost = decision.CostOfFailure(scenario) is Value.Uncertain { Knowledge: Knowledge.Unknown } unknown
            ? draw.OfDraws(unknown.Distribution, "decision.failure_cost")
            : [.. Enumerable.Repeat(MeanOf(decision.CostOfFailure(scenario)!), plan.Draws)];
        Interval own = DrawStatistic.WithInterval(failed[0], TargetBasis.Average);
        var costs = new NetCosts(
            prices, failed, [.. failureCost.Select(c => vehicles * c)], headline?.Agrees(own) == true ? headline.Probability : null);
        return new DecideResult
        {
            Decision = decision,
            Currency = scenario.Currency,
            Vehicles = vehicles,
            Km = KmOf(scenario),
            Fleet = decision.UnderWarranty ? scenario.Fleet : null,
            Headline = headline,
            Own = own,
            MeanFailureCost = failureCost.Average(),
            Options =
            [
                .. Enumerable.Range(0, models.Length)
                    .Select(o => OptionOf(o, decision.OptionsIn(scenario), costs, vehicles, hasUnknown)),
            ],
            Best = costs.Best,
            PerfectInformation = hasUnknown ? costs.PerfectInformation() : new Interval(0, 0, 0),
            Unknown = [.. models.SelectMany(m => m.Factors.Factors.Where(NestedPlan.IsShared)).DistinctBy(f => f.Name)],
            Draws = plan.Draws,
            VehiclesOfDraw = plan.Inner,
            Run = new RunRecord(plan.Rows, settings.Evaluations, settings.Seed, settings.Sampling, LifeModel.Version, false),
        };
    }

    /// <summary>The distance to which failures count, km; null where the warranty decides.</summary>
    public static double? KmOf(Scenario scenario) =>
        scenario.Decision is { UnderWarranty: true } ? null : scenario.Decision?.Km ?? scenario.RequiredKm;

    /// <summary>The failure probabilities that a decision counts, by outer draw.</summary>
    internal static DrawMeans FailedIn(FleetSample sample, Scenario scenario) => scenario.Decision switch
    {
        { UnderWarranty: true } => sample.FailedWithin(scenario.Fleet!.WarrantyMonths, scenario.Fleet.WarrantyKm),
        { Km: { } km } => sample.FailedBy(km),
        _ => sample.FailedBy(scenario.RequiredKm),
    };

    internal static LifeModel[] ModelsOf(LifeModel model) =>
        [model, .. model.Scenario.Decision!.OptionsIn(model.Scenario).Select(o => new LifeModel(o.ApplyTo(model.Scenario)))];

    internal static double MeanOf(Value value) => value is Value.Uncertain uncertain ? uncertain.Distribution.Mean : value.Nominal;

    internal static void Require(LifeModel[] models, DecisionDraw draw, StudySettings settings)
    {
        foreach (LifeModel model in models)
        {
            FleetAnalysis.RequireOneKind(model);
        }

        int dimensions = SamplingPlan.FromName(settings.Sampling, 1).Dimensions;
        if (draw.Dimensions > dimensions)
        {
            throw new StudyException(
                $"{settings.Sampling} sampling has {dimensions} dimensions and this decision needs {draw.Dimensions}: choose --sampling {SamplingPlan.Names[0]}");
        }
    }

    private static DecidedOption OptionOf(
        int option, ImmutableArray<Package> packages, NetCosts costs, long vehicles, bool hasUnknown)
    {
        int other = costs.BestBeside(option);
        string NameOf(int o) => o == 0 ? AsItIs : packages[o - 1].Name;
        double price = option == 0 ? 0 : packages[option - 1].Cost!.Value;
        Interval saved = costs.Difference(other, option);
        Interval PerVehicle(Interval of) =>
            new(price + (of.Estimate / vehicles), price + (of.Low / vehicles), price + (of.High / vehicles));
        double certain = costs.Best == option ? 1 : 0;
        return new DecidedOption(
            NameOf(option), price, vehicles * price, costs.Failed(option),
            costs.Failures(option), costs.Expected(option))
        {
            Difference = option == 0 ? null : costs.Difference(option, 0),
            ProbabilityBest = hasUnknown ? costs.ProbabilityBest(option) : new Interval(certain, certain, certain),
            Against = NameOf(other),
            BreakEvenPrice = PerVehicle(saved),
        };
    }
}
