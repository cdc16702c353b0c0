using AxleRisk.Core.Analyses.Decisions;
using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Decisions;

/// <summary>
/// One unknown that scales the damage of every vehicle, theta = ln ratio ~ N(0, 0.8), and the scatter of each vehicle: given theta
/// P(life &lt; km) = Phi((ln(km / median) + theta) / S). All figures by quadrature over theta.
/// </summary>
public sealed class DecideAnalysisTests
{
    private const double FailureCost = 1000, Price = 60, Half = 0.5;

    private static readonly double Km = LogLinear.MedianKm * 0.5;

    [Fact]
    public void Costs_differences_break_even_and_the_likely_best_have_their_closed_forms()
    {
        DecideResult result = Run(Scenario(FailureCost), 65_536);
        (DecidedOption asItIs, DecidedOption half) = (result.Options[0], result.Options[1]);
        Assert.Equal((DecideAnalysis.AsItIs, "half"), (asItIs.Name, half.Name));

        // Sixteen replicates: half widths are 2.1 standard errors; two of them are four.
        Within(FailureCost * Mean(t => Failed(t, 1)), asItIs.NetCost, 2);
        Within(Price + (FailureCost * Mean(t => Failed(t, Half))), half.NetCost, 2);
        double saved = FailureCost * Mean(t => Failed(t, 1) - Failed(t, Half));
        Within(Price - saved, half.Difference!.Value, 2);
        Within(saved, half.BreakEvenPrice, 2);
        Within(Price - saved, new(asItIs.BreakEvenPrice.Estimate, asItIs.BreakEvenPrice.Low, asItIs.BreakEvenPrice.High), 2);
        Within(Mean(t => FailureCost * (Failed(t, 1) - Failed(t, Half)) > Price ? 1 : 0), half.ProbabilityBest, 3);
        Assert.Equal(1, asItIs.ProbabilityBest.Estimate + half.ProbabilityBest.Estimate, 1e-12);

        // The lead of the best is its difference from the other, ends and all.
        Interval difference = half.Difference.Value;
        Assert.Equal(
            result.Best == 0 ? difference : new Interval(-difference.Estimate, -difference.High, -difference.Low),
            result.Lead, (a, b) => Math.Abs(a.Estimate - b.Estimate) + Math.Abs(a.Low - b.Low) + Math.Abs(a.High - b.High) < 1e-9);
        Assert.True(difference.High - difference.Low > 0.1);

        // Raiffa and Schlaifer 1961: the least expected cost less the expected least.
        double Least(double t) => Math.Min(FailureCost * Failed(t, 1), Price + (FailureCost * Failed(t, Half)));
        double perfect = Math.Min(FailureCost * Mean(t => Failed(t, 1)), Price + (FailureCost * Mean(t => Failed(t, Half)))) - Mean(Least);
        Within(perfect, result.PerfectInformation, 2);
        Assert.InRange(perfect, 1, 100);
    }

    /// <summary>A cost of failure that is unknown with the same mean gives the same expected costs; for many vehicles as often.</summary>
    [Fact]
    public void An_unknown_cost_of_failure_counts_by_its_mean_and_vehicles_multiply()
    {
        Value unknown = new Value.Uncertain(new Uniform(0, 2 * FailureCost), Knowledge.Unknown);
        Scenario one = Scenario(FailureCost);
        DecideResult result = Run(one with { Decision = one.Decision! with { FailureCost = unknown, Vehicles = 40 } }, 65_536);
        Within(40 * FailureCost * Mean(t => Failed(t, 1)), result.Options[0].NetCost, 2.5);
        Assert.Equal((40 * Price, Price), (result.Options[1].Cost, result.Options[1].Price));
        Within(FailureCost * Mean(t => Failed(t, 1) - Failed(t, Half)), result.Options[1].BreakEvenPrice, 2.5);
    }

    /// <summary>Under a warranty "as it is" is the fleet's own sample, to the last digit.</summary>
    [Fact]
    public void Under_the_warranty_the_scenario_as_it_is_makes_the_claims_of_the_fleet()
    {
        Scenario fleet = Scenario(FailureCost) with
        {
            Fleet = new Fleet
            {
                Vehicles = 500,
                KmPerYear = new Value.Uncertain(new Lognormal(Km, 0.3), Knowledge.Varies),
                WarrantyMonths = 12,
                WarrantyKm = 1.2 * Km,
                SaleShares = [1],
                CostPerClaim = new Value.Certain(300),
            },
            Decision = new Decision { UnderWarranty = true },
        };
        FleetResult claims = FleetAnalysis.Run(new LifeModel(fleet), Settings(16_384), new RunOptions { Threads = 2 });
        DecideResult result = Run(fleet, 16_384);
        Assert.Equal(claims.ClaimRate.Estimate, result.Options[0].Failed.Estimate, 1e-12);
        Assert.Equal(300 * claims.Claims.Expected.Estimate, result.Options[0].NetCost.Estimate, 1e-6);
        Assert.Equal(500, result.Vehicles);
    }

    /// <summary>As it is the vehicles fail as often as the risk study says, to the last digit, and all costs go by that.</summary>
    [Fact]
    public void As_it_is_the_figure_is_that_of_the_risk()
    {
        var model = new LifeModel(Scenario(FailureCost));
        RiskHeadline risk = RiskHeadline.Of(model, [Km], new StudySettings(32_768, 7, "sobol"), new RunOptions { Threads = 2 })[0];
        DecideResult own = Run(model.Scenario, 8192), result =
            DecideAnalysis.Run(model, Settings(8192), new RunOptions { Threads = 2 }, risk);
        Assert.Equal(risk.Probability, result.Options[0].Failed);
        Assert.Equal(own.Options[0].Failed, result.Own);
        Assert.Equal(FailureCost * risk.Probability.Estimate, result.Options[0].NetCost.Estimate, 1e-9);
        Assert.Equal(FailureCost * risk.Probability.High, result.Options[0].NetCost.High, 0.05 * FailureCost * risk.Probability.High);
        Within(Mean(t => Failed(t, Half)), result.Options[1].Failed, 2);
        Within(Price - (FailureCost * Mean(t => Failed(t, 1) - Failed(t, Half))), result.Options[1].Difference!.Value, 2);
        double ratio = own.Options[1].Failed.Estimate / own.Options[0].Failed.Estimate;
        Assert.Equal(ratio, result.Options[1].Failed.Estimate / risk.Probability.Estimate, 1e-9);
        Assert.True(Width(result.Options[1].NetCost) < Width(own.Options[1].NetCost));

        // What the own sample has not seen it does not go by.
        DecideResult apart = DecideAnalysis.Run(
            model, Settings(8192), new RunOptions(), risk with { Probability = new Interval(1e-6, 5e-7, 2e-6) });
        Assert.Equal(own.Options.Select(o => o.NetCost), apart.Options.Select(o => o.NetCost));
    }

    /// <summary>
    /// A second section like the first, with a scatter of its own and no other: given theta the axle survives with the square of the
    /// probability.
    /// </summary>
    [Fact]
    public void Of_two_sections_alike_the_axle_survives_with_the_square()
    {
        DecideResult result = Run(TwoSections.With(Scenario(FailureCost)), 65_536);
        static double Both(double t, double times) => 1 - Math.Pow(1 - Failed(t, times), 2);
        Within(Mean(t => Both(t, 1)), result.Options[0].Failed, 2);
        Within(Price - (FailureCost * Mean(t => Both(t, 1) - Both(t, Half))), result.Options[1].Difference!.Value, 2);
        Assert.True(result.Options[0].Failed.Low > 1.2 * Mean(t => Failed(t, 1)));
    }

    [Fact]
    public void The_digits_depend_on_no_thread_and_nothing_unknown_leaves_no_doubt()
    {
        Scenario scenario = Scenario(FailureCost);
        DecideResult one = DecideAnalysis.Run(new LifeModel(scenario), Settings(4096), new RunOptions { Threads = 1 });
        Assert.Equal(one.Options.Select(o => o.NetCost), Run(scenario, 4096).Options.Select(o => o.NetCost));
        Scenario certain = scenario with
        {
            Inputs = [.. scenario.Inputs.Select(i => i.Value is Value.Uncertain u
                ? i with { Value = new Value.Uncertain(u.Distribution, Knowledge.Varies) } : i)],
        };
        DecideResult sure = Run(certain, 16_384);
        Assert.Equal(new Interval(1, 1, 1), sure.Options[sure.Best].ProbabilityBest);
        Assert.Equal(new Interval(0, 0, 0), sure.Options[1 - sure.Best].ProbabilityBest);
        Assert.Equal(0, sure.PerfectInformation.Estimate);
        Within(FailureCost * Mean(t => Failed(t, 1)), sure.Options[0].NetCost, 2.5);
    }

    internal static Scenario Scenario(double failureCost)
    {
        Scenario scenario = LogLinear.Scenario;
        return scenario with
        {
            RequiredKm = Km,
            Inputs = [.. scenario.Inputs.Select(i => i.Value is Value.Uncertain u && i.Name == "fatigue.damage_ratio"
                ? i with { Value = new Value.Uncertain(u.Distribution, Knowledge.Unknown) } : i)],
            Remedies = [new Remedy("half", Price, [new Change.Times("fatigue.damage_ratio", Half)])],
            Decision = new Decision { FailureCost = new Value.Certain(failureCost) },
        };
    }

    /// <summary>The failure probability given theta, its damage times a factor.</summary>
    internal static double Failed(double theta, double times) =>
        StandardNormal.Cumulative((Math.Log(Km * times / LogLinear.MedianKm) + theta) / LogLinear.ScaleSigma);

    /// <summary>The mean over theta by the midpoint rule.</summary>
    internal static double Mean(Func<double, double> of)
    {
        double sum = 0;
        const double Step = 0.002;
        for (double z = -8 + (Step / 2); z < 8; z += Step)
        {
            sum += Step * StandardNormal.Density(z) * of(LogLinear.RatioSigma * z);
        }

        return sum;
    }

    internal static StudySettings Settings(long evaluations) => new(evaluations, 7, "sobol");

    private static DecideResult Run(Scenario scenario, long evaluations) =>
        DecideAnalysis.Run(new LifeModel(scenario), Settings(evaluations), new RunOptions { Threads = 2 });

    private static double Width(Interval of) => of.High - of.Low;

    private static void Within(double expected, Interval told, double halfWidths) =>
        Assert.Equal(expected, told.Estimate, (halfWidths * Width(told) / 2) + 1e-9);
}
