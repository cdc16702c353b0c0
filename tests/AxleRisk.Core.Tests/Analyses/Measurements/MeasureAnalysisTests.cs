using AxleRisk.Core.Analyses.Measurements;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Analyses.Decisions;
using AxleRisk.Core.Tests.Fixtures;
using MathNet.Numerics;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Measurements;

/// <summary>What knowing more is worth.</summary>
public sealed class MeasureAnalysisTests
{
    /// <summary>
    /// Two options whose net benefit is N(10, 25). Raiffa and Schlaifer, Applied Statistical Decision Theory, 1961, 5.4 and 5.5; numbers by
    /// scipy: perfect information 5.760971; of a factor that carries 36 % of the variance 2.266795; of 4 measurements of the benefit with
    /// error sd 40 3.788060.
    /// </summary>
    [Fact]
    public void Normal_benefits_have_the_closed_forms()
    {
        double[] Benefit(double sd) => [.. Enumerable.Range(0, InformationValue.Nodes).Select(i => -10 - (sd * InformationValue.Score(i)))];
        double[] nothing = new double[InformationValue.Nodes];
        Assert.Equal(5.760971, InformationValue.Perfect.Of([nothing, Benefit(25)]), 0.01);
        Assert.Equal(2.266795, InformationValue.Perfect.Of([nothing, Benefit(25 * 0.6)]), 0.01);
        var four = InformationValue.Measured(z => 10 + (25 * z), 40 / Math.Sqrt(4));
        Assert.Equal(3.788060, four.Of([nothing, Benefit(25)]), 0.03);
        Assert.Equal(19.521720, Math.Sqrt(four.Variance(Benefit(25))), 0.1); // preposterior
        Assert.Equal(5.760971, InformationValue.Measured(z => 10 + (25 * z), 0.5).Of([nothing, Benefit(25)]), 0.03); // as good as perfect
        Assert.Equal(0, InformationValue.Measured(z => 10 + (25 * z), 1e5).Of([nothing, Benefit(25)]), 0.01);
    }

    /// <summary>With one unknown, knowing it is knowing all: the quadrature of the decision.</summary>
    [Fact]
    public void The_one_unknown_is_worth_what_perfect_information_is()
    {
        const double Cost = 1000, Price = 60;
        Scenario scenario = DecideAnalysisTests.Scenario(Cost) with
        { Measurements = [new("ratio", "fatigue.damage_ratio", 0.3, 4, 5), new("steel", "fatigue.miner_sum", 0.1, 1, 5)] };
        MeasureResult result = Run(scenario, 2048);
        double A(double t) => Cost * DecideAnalysisTests.Failed(t, 1);
        double B(double t) => Price + (Cost * DecideAnalysisTests.Failed(t, 0.5));
        double perfect = Math.Min(DecideAnalysisTests.Mean(A), DecideAnalysisTests.Mean(B))
            - DecideAnalysisTests.Mean(t => Math.Min(A(t), B(t)));
        KnownFactor known = Assert.Single(result.Factors);
        Assert.Equal(perfect, known.Perfect.Estimate, 0.02 * perfect);

        // A measurement is worth less; of what varies between vehicles, nothing.
        WorthOfMeasurement ratio = result.Measurements.Single(m => m.Measurement.Name == "ratio");
        Assert.InRange(ratio.Value.Estimate, 0.1 * perfect, perfect);
        Assert.Equal(ratio.Value.Estimate - 5, ratio.Net!.Value.Estimate, 1e-9);
        WorthOfMeasurement steel = result.Measurements.Single(m => m.Measurement.Name == "steel");
        Assert.Equal((0, -5), (steel.Value.Estimate, steel.Net!.Value.Estimate));
    }

    /// <summary>
    /// Against regression on one sample (Strong, Oakley and Brennan 2014, Medical Decision Making 34, 311-326): the benefit of every
    /// vehicle drawn, regressed on the factor by a polynomial, gives the expected benefit given its value.
    /// </summary>
    [Fact]
    public void Nested_sampling_agrees_with_regression()
    {
        const string Name = "fatigue.stress_factor";
        const double FailureCost = 5000, Price = 110;
        Scenario scenario = FiveLegs.Scenario with
        {
            RequiredKm = 60_000,
            Remedies = [new Remedy("thicker", Price, [new Change.ToValue("axle.wall_mm", new Value.Certain(6.8))])],
            Decision = new Decision { FailureCost = new Value.Certain(FailureCost) },
        };
        double told = Run(scenario, 2048).Factors.Single(f => f.Factor.Name == Name).Perfect.Estimate;

        const int Rows = 40_000;
        LifeModel asItIs = new(scenario), thicker = new(Remedy.Apply(scenario, scenario.Remedies[0]), asItIs.Factors);
        Workspace one = asItIs.CreateWorkspace(Rows), other = thicker.CreateWorkspace(Rows);
        double[][] values = asItIs.CreateColumns(Rows);
        asItIs.Draw(SamplingPlan.FromName("plain", Rows), 5, "regression", 0, Rows, one, values);
        asItIs.Evaluate(values, Rows, one);
        thicker.Evaluate(values, Rows, other);
        double[] benefit = [.. Enumerable.Range(0, Rows).Select(r => (FailureCost * (asItIs.Chances.FailureProbability(one, r, 60_000)
            - thicker.Chances.FailureProbability(other, r, 60_000))) - Price)];
        double[] ln = [.. values[asItIs.Factors.Find(Name)!.FirstColumn].Select(v => Math.Log(v))];
        Func<double, double> fit = Fit.PolynomialFunc(ln, benefit, 7);
        double[] fitted = [.. ln.Select(fit)];
        double regressed = fitted.Average(b => Math.Max(0, b)) - Math.Max(0, fitted.Average());
        Assert.True(regressed > 5);

        // 40,000 rows: the mean of benefits that spread by some 500 is known to 2.5, so is the value; and a polynomial bends.
        Assert.Equal(regressed, told, 4.0);
    }

    /// <summary>
    /// Without a decision: given theta P = Phi((c + theta)/S), so that nothing is left of the band where theta is known, and digits depend
    /// on no thread.
    /// </summary>
    [Fact]
    public void Without_a_decision_the_one_unknown_closes_the_band()
    {
        Scenario scenario = DecideAnalysisTests.Scenario(1) with
        { Decision = null, Measurements = [new("ratio", "fatigue.damage_ratio", 0.1, 1, 5)] };
        MeasureResult result = Run(scenario, 1024);
        Assert.False(result.OfDecision);
        Assert.InRange(Assert.Single(result.Factors).Perfect.Estimate, 0.9, 1);
        Assert.InRange(Assert.Single(result.Measurements).Value.Estimate, 0.3, 0.97);
        Assert.Null(result.Measurements[0].Net);
        Assert.True(result.Measurements[0].IsOfUnknown);

        // The middle 90 % of theta are 1.644854 standard deviations either way.
        double End(int sign) => DecideAnalysisTests.Failed(sign * 1.644854 * LogLinear.RatioSigma, 1);
        Assert.Equal(End(-1), result.Band!.Value.Low, 0.1 * End(-1));
        Assert.Equal(End(1), result.Band.Value.High, 0.02 * End(1));
        MeasureResult one = MeasureAnalysis.Run(new LifeModel(scenario), new StudySettings(1024, 7, "sobol"), new RunOptions { Threads = 1 });
        Assert.Equal(one.Factors[0].Perfect, result.Factors[0].Perfect);
    }

    /// <summary>Of two sections alike, with scatters of their own, P = 1 - (1 - p)^2 given theta; knowing theta is knowing all.</summary>
    [Fact]
    public void With_two_sections_the_one_unknown_is_worth_what_the_quadrature_says()
    {
        const double Cost = 1000, Price = 90;
        Scenario scenario = TwoSections.With(DecideAnalysisTests.Scenario(Cost));
        scenario = scenario with { Remedies = [scenario.Remedies[0] with { Cost = Price }] };
        static double Both(double t, double times) => 1 - Math.Pow(1 - DecideAnalysisTests.Failed(t, times), 2);
        static double Benefit(double t) => (Cost * (Both(t, 1) - Both(t, 0.5))) - Price;
        double perfect = DecideAnalysisTests.Mean(t => Math.Max(0, Benefit(t))) - Math.Max(0, DecideAnalysisTests.Mean(Benefit));
        Assert.True(perfect > 5);
        Assert.Equal(perfect, Assert.Single(Run(scenario, 2048).Factors).Perfect.Estimate, 0.02 * perfect);
    }

    /// <summary>
    /// A choice beside theta: damage once or three times as much. With a decision its worth is over the two states; without, the band
    /// narrows by the variance between them: 1 - sqrt(1 - B / V), V that of P over both.
    /// </summary>
    [Fact]
    public void A_choice_is_worth_what_its_states_say()
    {
        const double Cost = 1000, Price = 220, P = 0.7;
        double[] ratios = [1, 3];
        Scenario scenario = DecideAnalysisTests.Scenario(Cost);
        scenario = scenario with
        {
            Remedies = [scenario.Remedies[0] with { Cost = Price }],
            Inputs = scenario.Inputs.Add(new Input("legs.gravel.damage_ratio", Quantities.LegDamageRatio, 0,
                new Value.Uncertain(new NumberChoice(ratios, [P, 1 - P]), Knowledge.Unknown), false)),
        };
        double Given(int k, Func<double, double> of) => DecideAnalysisTests.Mean(t => of(t + Math.Log(ratios[k])));
        double Over(Func<int, double> of) => (P * of(0)) + ((1 - P) * of(1));
        static double Benefit(double t) => (Cost * (DecideAnalysisTests.Failed(t, 1) - DecideAnalysisTests.Failed(t, 0.5))) - Price;
        double perfect = Over(k => Math.Max(0, Given(k, Benefit))) - Math.Max(0, Over(k => Given(k, Benefit)));
        Assert.True(perfect > 3);
        Assert.Equal(perfect, PerfectOf(Run(scenario, 2048)), 0.03 * perfect);

        static double Failed(double t) => DecideAnalysisTests.Failed(t, 1);
        double mean = Over(k => Given(k, Failed)), between = Over(k => Math.Pow(Given(k, Failed) - mean, 2));
        double all = Over(k => Given(k, t => Math.Pow(Failed(t) - mean, 2))), narrows = 1 - Math.Sqrt(1 - (between / all));
        Assert.InRange(narrows, 0.05, 0.9);
        Assert.Equal(
            narrows, PerfectOf(Run(scenario with { Decision = null, Measurements = [new("x", "fatigue.damage_ratio", 1, 1, 1)] }, 2048)),
            0.06 * narrows);

        static double PerfectOf(MeasureResult result) =>
            result.Factors.Single(f => f.Factor.Name == "legs.gravel.damage_ratio").Perfect.Estimate;
    }

    /// <summary>
    /// What is left to chance in a mode, unknown and so the same for all vehicles: with all else certain the axle has failed by a distance
    /// or not once it is known, and knowing it is knowing all. Of fatigue and of a further mode (the second section's scatter) alike.
    /// </summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_scatter_that_is_unknown_is_held_too(bool ofSection)
    {
        const double Cost = 1000, Price = 60;
        Scenario certain = DecideAnalysisTests.Scenario(Cost);
        certain = certain with
        {
            Inputs = [.. certain.Inputs.Select(i => i.Quantity == Quantities.DamageRatio ? i with { Value = new Value.Certain(1) }
                : i.Quantity == Quantities.MinerSum ? i with { Value = new Value.Certain(1) }
                : i.Quantity != Quantities.LifeScatter ? i
                : ofSection ? i with { Value = new Value.Uncertain(new Normal(0.6, 0.01), Knowledge.Varies) } // averaged, and far off
                : i with { Value = new Value.Uncertain(new Normal(0, 0.2), Knowledge.Unknown) })],
        };
        Scenario scenario = ofSection
            ? TwoSections.With(certain, (Quantities.SectionLifeScatter.Key, new Value.Uncertain(new Lognormal(1, 0.46), Knowledge.Unknown)))
            : certain;

        // Failed at x times its damage: ln x above the scatter. Known: pay where it fails as it is and not with half the damage.
        double sigma = ofSection ? 0.46 : 0.2 * Math.Log(10), at = Math.Log(scenario.RequiredKm / LogLinear.MedianKm);
        double asItIs = StandardNormal.Cumulative(at / sigma), half = StandardNormal.Cumulative((at - Math.Log(2)) / sigma);
        double perfect = ((asItIs - half) * (Cost - Price)) - Math.Max(0, (Cost * (asItIs - half)) - Price);
        Assert.True(perfect > 5);

        // The cost is a step of the score, and the nodes are 0.4 of it apart: a tenth of what is between two.
        Assert.Equal(perfect, Assert.Single(Run(scenario, 256).Factors).Perfect.Estimate, 0.4 * perfect);
    }

    private static MeasureResult Run(Scenario scenario, long rows) =>
        MeasureAnalysis.Run(new LifeModel(scenario), new StudySettings(rows, 7, "sobol"), new RunOptions { Threads = 2 });
}
