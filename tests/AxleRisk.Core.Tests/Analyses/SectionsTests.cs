using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Analyses.RareEvents;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Analyses.Fleets;
using AxleRisk.Core.Tests.Analyses.Trips;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses;

/// <summary>
/// Every analysis of an axle of two sections where all is certain but the chances: survival is the product of two normal probabilities,
/// Upper((ln km + ln damage)/sigma) of each. Damage rates are the model's own, which <c>SectionModeTests</c> checks.
/// </summary>
public sealed class SectionsTests
{
    private const double Km = 60_000;

    private static readonly double Sigma = CertainModes.Sigma;
    private static readonly Scenario Certain = TwoSections.Certain with { RequiredKm = Km };
    private static readonly double[] Rates = RatesOf(Certain);
    private static readonly RunOptions Options = new();

    [Fact]
    public void The_section_of_the_greater_stress_leads()
    {
        RiskResult risk = RiskAnalysis.Run(
            new LifeModel(Certain), new StudySettings(1_024, 1, "sobol"), new RiskQuestion { Method = RiskMethod.Auto }, Options).Result;
        Assert.Equal(Failed(Km), risk.AtRequired.Probability.Estimate, 1e-9);
        Assert.InRange(risk.AtRequired.Probability.Estimate, 0.05, 0.95);
        Assert.Equal(1 - Survival(1, Km), risk.Modes[0].Without, 1e-9);
        Assert.Equal(1 - Survival(0, Km), risk.Modes[1].Without, 1e-9);
        int at = risk.Distances.ToList().FindIndex(d => d.DistanceKm == Km);
        Assert.True(risk.Modes[1].First[at] > risk.Modes[0].First[at]);

        // First by L: the integral of one density times the other's survival, 100,000 steps. Eighths of a factor of e shared out: 0.002.
        const int Steps = 100_000;
        double first = Enumerable.Range(0, Steps).Sum(i =>
            (Survival(1, Km * i / Steps) - Survival(1, Km * (i + 1) / Steps)) * Survival(0, Km * (i + 0.5) / Steps));
        Assert.Equal(first, risk.Modes[1].First[at], 0.002);
    }

    // Each section has used up d1 a km to the bend and d2 from there on, with the rates of two scenarios without a history.
    [Fact]
    public void A_history_is_counted_in_every_section()
    {
        const double bend = 25_000;
        Scenario rougher = Change(Certain, Quantities.RoughnessFactor, v => new Value.Certain(1.4 * v.Nominal));
        double[] later = RatesOf(rougher);
        Assert.All(later.Zip(Rates), d => Assert.True(d.First > 1.5 * d.Second));
        double Whole(int section, double km) => Upper((Math.Min(km, bend) * Rates[section]) + (Math.Max(0, km - bend) * later[section]));
        double Left(double km) => Whole(0, km) * Whole(1, km);
        string roughness = Certain.Find(Quantities.RoughnessFactor)!.Name;
        Scenario past = Histories.From(Certain, bend, new Change.Times(roughness, 1.4));
        var question = new RiskQuestion { Method = RiskMethod.Auto, DistancesKm = [20_000, 30_000, 45_000, Km] };
        RiskResult risk = RiskAnalysis.Run(new LifeModel(past), new StudySettings(1_024, 1, "sobol"), question, Options).Result;
        Assert.Equal(4, risk.Distances.Length);
        // What is used up between distances of a table follows a cubic: 3e-4 of the probability, measured.
        Assert.All(risk.Distances, d => Assert.Equal(1, d.Probability.Estimate / (1 - Left(d.DistanceKm)), 6e-4));

        // First by L: the integral of one density times the other's survival, 100,000 steps.
        const int steps = 100_000;
        double first = Enumerable.Range(0, steps).Sum(i =>
            (Whole(1, Km * i / steps) - Whole(1, Km * (i + 1) / steps)) * Whole(0, Km * (i + 0.5) / steps));
        Assert.Equal(first, risk.Modes[1].First[3], 0.002);

        // Of one that failed between two distances the section is told by what each would have used up.
        CausesResult causes = Causes(past, new Evidence { Life = new LifeEvidence.FailedBetween(30_000, 45_000) });
        double one = 1 - (Whole(1, 45_000) / Whole(1, 30_000)), any = 1 - (Left(45_000) / Left(30_000));
        Assert.Equal(one / any, causes.Modes[1].Posterior.Estimate, 1e-3);
    }

    // With sections alike the two have the same part, and the second's scatter has that of the first's Miner sum and scatter together.
    [Fact]
    public void Sections_alike_share_alike_in_a_ranking()
    {
        Scenario alike = TwoSections.With(TwoSections.Vehicle) with { RequiredKm = Km };
        RankResult rank = RankAnalysis.Run(new LifeModel(alike), new StudySettings(60_000, 1, "sobol"), Options);
        double p = 1 - Survival(0, Km), all = 1 - ((1 - p) * (1 - p));
        Assert.Equal(all, rank.Modes.Sum(m => m.First.Estimate), 1e-3);
        Assert.Equal(rank.Modes[0].First.Estimate, rank.Modes[1].First.Estimate, 1e-6);
        Assert.All(rank.Modes, m => Assert.Equal(p, m.Without.Estimate, 1e-6));
        double Share(params string[] names) => rank.Factors.Where(f => names.Contains(f.Factor.Name)).Sum(f => f.FailureShare.Estimate);
        Assert.Equal(0.5, Share("sections.seat.life_scatter"), 0.01);
        Assert.Equal(0.5, Share("fatigue.miner_sum", "fatigue.log10_life_scatter"), 0.01);
    }

    [Fact]
    public void A_remedy_of_a_section_has_the_closed_form()
    {
        Scenario better = Remedy.Apply(
            Certain, new Remedy("wall", null, [new Change.ToValue("sections.seat.wall_mm", new Value.Certain(8))]));
        double[] rates = RatesOf(better);
        Assert.Equal(Rates[0], rates[0]);
        Assert.True(rates[1] < 0.7 * Rates[1]);
        ComparisonResult result = Comparison.Run(
            [new LifeModel(Certain), new LifeModel(better)], Km, new StudySettings(1_024, 1, "sobol"), Options);
        Assert.Equal(Failed(Km), result.Cases[0].Probability.Estimate, 1e-9);
        Assert.Equal(1 - (Survival(0, Km) * Upper(rates[1] * Km)), result.Cases[1].Probability.Estimate, 1e-9);
    }

    // P(a section has failed by b | both whole at a, not both at b), by definition; every row has the same weight.
    [Theory]
    [InlineData(0, 60_000)]
    [InlineData(40_000, 60_000)]
    [InlineData(50_000, 50_000)] // failed at
    public void Evidence_fits_the_sections_as_conditional_probability_has_it(double from, double to)
    {
        LifeEvidence life = from == to ? new LifeEvidence.FailedAt(from) : new LifeEvidence.FailedBetween(from, to);
        (double a, double b) = from == to ? (from * 0.999, to * 1.001) : (from, to);
        CausesResult result = Causes(Certain, new Evidence { Life = life });
        double whole = 1 - (Survival(0, b) * Survival(1, b) / (Survival(0, a) * Survival(1, a)));
        for (int section = 0; section < 2; section++)
        {
            Assert.Equal((1 - (Survival(section, b) / Survival(section, a))) / whole, result.Modes[section].Posterior.Estimate, 1e-9);
        }

        if (from == to)
        {
            Assert.Equal(1, result.Modes.Sum(m => m.Posterior.Estimate), 1e-3);
        }
    }

    // A section known to be cracked, and alone: its limit L lies between what it had used up by a and by b, that of the other beyond b.
    // P(L in its lower tenth) follows; 20,000 rows of equal weight, four standard errors of 0.5 are 0.0145.
    [Theory]
    [InlineData(CheckedSection.First, 0)]
    [InlineData(TwoSections.Name, 1)]
    public void A_section_found_cracked_bears_the_scatter(string cracked, int place)
    {
        Scenario scenario = Change(Certain, Quantities.MinerSum, _ => new Value.Certain(1));
        double[] sigmas = [0.2 * Math.Log(10), Sigma];
        var evidence = new Evidence { Life = new LifeEvidence.FailedBetween(40_000, Km), CrackedAt = cracked };
        CausesResult result = Causes(scenario, evidence);
        Assert.Equal(place == 0 ? 1 : 0, result.Modes[0].Posterior.Estimate);
        Assert.Equal(place, result.Modes[1].Posterior.Estimate);
        string[] names = ["fatigue.log10_life_scatter", "sections.seat.life_scatter"];
        for (int section = 0; section < 2; section++)
        {
            double S(double km) => StandardNormal.Upper(Math.Log(km * Rates[section]) / sigmas[section]);
            double exact = section == place ? 1 - (InUpper(40_000, Km) / (S(40_000) - S(Km))) : 1 - (Math.Min(S(Km), 0.9) / S(Km));
            Cause cause = result.Causes.Single(c => c.Name == names[section]);
            Assert.Equal(exact, cause.States[0].Posterior.Estimate, 0.0145);

            // P(L between, and not in its lower tenth): its survival is below 0.9 there.
            double InUpper(double low, double high) => Math.Min(0.9, S(low)) - Math.Min(0.9, S(high));
        }
    }

    // The same where chances are counted, as the Miner sum is uniform: rows in which the other section is first have no weight.
    [Theory]
    [InlineData(CheckedSection.First, 0)]
    [InlineData(TwoSections.Name, 1)]
    public void Where_failures_are_counted_the_section_found_cracked_is_the_one(string cracked, int place)
    {
        Scenario counted = Change(Certain, Quantities.MinerSum, _ => new Value.Uncertain(new Uniform(0.5, 1.5), Knowledge.Varies));
        var evidence = new Evidence { Life = new LifeEvidence.FailedBetween(40_000, Km), CrackedAt = cracked };
        CausesResult result = CausesAnalysis.Run(new LifeModel(counted), evidence, new StudySettings(20_000, 1, "plain"), Options);
        Assert.Equal(place == 0 ? 1 : 0, result.Modes[0].Posterior.Estimate, 1e-12);
        Assert.Equal(place, result.Modes[1].Posterior.Estimate, 1e-12);
    }

    // Bayes: the odds of the second section's category are the prior's times the likelihoods of a crack there alone.
    [Theory]
    [InlineData(CheckedSection.First)]
    [InlineData(TwoSections.Name)]
    [InlineData(null)]
    public void An_unknown_detail_of_a_section_is_weighed_by_where_the_crack_is(string? cracked)
    {
        Scenario either = Certain with
        {
            Sections = [Certain.Sections[0] with { Detail = new Detail("DNV-RP-C203", ["E", "F"], [0.7, 0.3], Knowledge.Unknown) }],
        };
        CausesResult result = Causes(either, new Evidence { Life = new LifeEvidence.FailedBetween(40_000, Km), CrackedAt = cracked });
        double[] likelihoods = [.. new[] { "E", "F" }.Select(category =>
        {
            double[] rates = RatesOf(Certain with
            { Sections = [Certain.Sections[0] with { Detail = new Detail("DNV-RP-C203", [category], [1]) }] });
            double[] a = [.. rates.Select(r => Upper(40_000 * r))], b = [.. rates.Select(r => Upper(Km * r))];
            return cracked is null ? (a[0] * a[1]) - (b[0] * b[1])
                : cracked == CheckedSection.First ? (a[0] - b[0]) * b[1] : (a[1] - b[1]) * b[0];
        })];
        double exact = 0.3 * likelihoods[1] / ((0.7 * likelihoods[0]) + (0.3 * likelihoods[1]));
        Cause cause = result.Causes.Single(c => c.Name == "sections.seat.category");
        Assert.Equal(exact, cause.States.Single(s => s.Name == "F").Posterior.Estimate, 0.0145);
    }

    [Fact]
    public void A_rare_failure_is_that_of_both()
    {
        const double Rare = 3_000;
        RareEventResult result = RareEventAnalysis.Run(new LifeModel(Certain), Rare, new RareEventSettings(1), Options);
        double exact = Failed(Rare);
        Assert.InRange(exact, 1e-12, 1e-4);
        Assert.Equal(exact, result.Probability.Estimate, Math.Max(1e-6, 4 * result.Cov) * exact);
    }

    [Fact]
    public void Trips_fleets_and_combinations_have_the_product()
    {
        TripResult trip = TripRiskTests.Run(TripCases.Usual(Certain, 30_000, 20_000), new StudySettings(256, 1, "sobol"));
        double expected = 1 - ((1 - Failed(50_000)) / (1 - Failed(30_000)));
        Assert.Equal(expected, trip.Probability.Estimate, 1e-4 * expected);
        FleetResult fleet = FleetCases.Run(Certain, FleetCases.Fleet(2_000, FleetCases.Sure(30_000), 12, 150_000), 1_024);
        Assert.Equal(Failed(30_000), fleet.ClaimRate.Estimate, 1e-9);
        CombineResult combined = CombineAnalysis.Run(new LifeModel(Certain), new StudySettings(20_000, 1, "plain"), new CombineLimits(), Options);
        Assert.True(combined.IsConditional);
        Assert.Equal(Failed(Km), combined.Probability.Estimate, 1e-9);
    }

    // A scatter that is no lognormal is sampled or averaged by its own distribution: counting stands beside, standard error 0.5/sqrt(n).
    [Fact]
    public void A_scatter_of_another_form_agrees_with_counting()
    {
        Scenario weibull = Certain with
        {
            Inputs = [.. Certain.Inputs.Select(i => i.Quantity == Quantities.SectionLifeScatter
                ? i with { Value = new Value.Uncertain(new Weibull(2, 1.2, 0), Knowledge.Varies) } : i)],
        };
        RiskResult Run(RiskMethod method) => RiskAnalysis.Run(
            new LifeModel(weibull), new StudySettings(8_192, 1, "plain"), new RiskQuestion { Method = method }, Options).Result;
        double exact = 1 - (Survival(0, Km) * Math.Exp(-Math.Pow(Rates[1] * Km / 1.2, 2)));
        Assert.Equal(exact, Run(RiskMethod.Auto).AtRequired.Probability.Estimate, 1e-9);
        Assert.Equal(exact, Run(RiskMethod.Crude).AtRequired.Probability.Estimate, 0.022);
    }

    // A curve that is the first's own curve in its lines gives the first's damage.
    [Fact]
    public void A_section_may_have_a_curve_of_its_own()
    {
        SnCurve e = SnCatalogue.Find("DNV-RP-C203", "E")!.Mean;
        var own = new OwnCurve([.. e.Lines.Select(l => l.Slope)], [.. e.Lines.Select(l => l.Log10A)], "the same") { StandardDeviation = 0.2 };
        Scenario alike = TwoSections.With(TwoSections.Vehicle);
        alike = alike with
        {
            Sections = [alike.Sections[0] with { Detail = new Detail(Detail.OwnCatalogue, [Detail.OwnCategory], [1]) { Own = own } }],
        };
        double[] rates = RatesOf(alike);
        Assert.Equal(rates[0], rates[1], 1e-6 * rates[0]);
    }

    private static CausesResult Causes(Scenario scenario, Evidence evidence)
    {
        CausesResult result = CausesAnalysis.Run(new LifeModel(scenario), evidence, new StudySettings(20_000, 1, "plain"), Options);
        Assert.True(result.IsConditional);
        return result;
    }

    private static double Survival(int section, double km) => Upper(Rates[section] * km);

    private static double Upper(double used) => used > 0 ? StandardNormal.Upper(Math.Log(used) / Sigma) : 1;

    private static double Failed(double km) => 1 - (Survival(0, km) * Survival(1, km));

    private static double[] RatesOf(Scenario scenario)
    {
        var model = new LifeModel(scenario);
        Workspace workspace = model.CreateWorkspace(1);
        double[][] values = model.CreateColumns(1);
        foreach (Factor factor in model.Factors.Factors)
        {
            values[factor.FirstColumn][0] = factor.Median[0];
        }

        model.Evaluate(values, 1, workspace);
        return [.. model.Modes.Modes.Select(m => workspace.Rates!.Of(m)[0][0])];
    }

    private static Scenario Change(Scenario scenario, Quantity quantity, Func<Value, Value> change) =>
        scenario with { Inputs = [.. scenario.Inputs.Select(i => i.Quantity == quantity ? i with { Value = change(i.Value) } : i)] };
}
