using AxleRisk.Core.Analyses.Learning;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Learning;

/// <summary>What samples made by hand say of the unknown.</summary>
public class LearnSummaryTests
{
    private const string Stress = "fatigue.stress_factor";

    // Kullback and Leibler 1951: from N(0, 1) to N(m, s) ((s^2 + m^2 - 1) / 2 - ln s) / ln 2 bits; in either tail alike.
    [Theory]
    [InlineData(0.3, 0.5)]
    [InlineData(-0.3, 2)]
    [InlineData(9, 0.25)]
    [InlineData(-9, 0.25)]
    public void The_bits_of_a_factor_are_the_divergence_of_two_normals(double m, double s)
    {
        LearnedFactor told = Assert.Single(Summary(LearnCase.Model(LearnCase.Field), [0, 0, 0, 0], [m - s, m - s, m + s, m + s]).Factors());
        Assert.Equal(((((s * s) + (m * m) - 1) / 2) - Math.Log(s)) / Math.Log(2), told.Bits, 1e-6);

        // The values are those of a lognormal at m - s and m + s.
        double a = LearnCase.Ratio * Math.Exp(LearnCase.ThetaSd * (m - s)), b = LearnCase.Ratio * Math.Exp(LearnCase.ThetaSd * (m + s));
        Assert.Equal((a + b) / 2, told.Posterior!.Mean, 1e-9 * b);
        Assert.Equal((b - a) / 2, told.Posterior.StandardDeviation, 1e-9 * b);
        Assert.Equal(a, told.Posterior.Low, 1e-9 * b);
        Assert.Equal(b, told.Posterior.High, 1e-9 * b);
        Assert.Equal(LearnCase.Ratio, told.Prior!.Median, 1e-9);
        Assert.Equal(LearnCase.Ratio * Math.Exp(-1.6448536269514722 * LearnCase.ThetaSd), told.Prior.Low, 1e-9);
        Assert.Equal(LearnCase.Ratio * Math.Exp(1.6448536269514722 * LearnCase.ThetaSd), told.Prior.High, 1e-9);
        Assert.Equal(LearnCase.Ratio * Math.Exp(0.5 * LearnCase.ThetaSd * LearnCase.ThetaSd), told.Prior.Mean, 1e-9);
    }

    // Weights 0.4, 0.1, 0.1, 0.4 at the corners of a square: both means 0, both variances 1, correlation 0.8 - 0.2.
    [Theory]
    [InlineData(0.41, 1)]
    [InlineData(0.41, -1)]
    [InlineData(0.39, 1)]
    public void Two_factors_hang_together_by_the_correlation_of_their_scores(double along, int sign)
    {
        LifeModel model = LearnCase.Model(
            LearnCase.Field, new Input(
                Stress, Quantities.StressFactor, null, new Value.Uncertain(new Lognormal(1, 0.2), Knowledge.Unknown), false));
        double[] weights = [along, 0.5 - along, 0.5 - along, along];
        LearnSummary summary = Summary(model, [0, 0, 0, 0], [-1, -1, 1, 1], [-sign, sign, -sign, sign], weights);
        if (along < 0.4)
        {
            Assert.Empty(summary.Entangled());
            return;
        }

        Entanglement pair = Assert.Single(summary.Entangled());
        Assert.Equal(sign * ((4 * along) - 1), pair.Strength, 1e-9);
        Assert.False(pair.IsChoice);
        Assert.NotEqual(pair.First, pair.Second);
    }

    // States with probabilities 3/4 and 1/4, means 1 and -3 and a spread of 1 within: 3 of a variance of 4 lie between them.
    [Fact]
    public void A_choice_explains_the_variance_between_its_states()
    {
        LifeModel model = LearnCase.Model(
            LearnCase.Field, new Input(Stress, Quantities.StressFactor, null,
                new Value.Uncertain(new NumberChoice([1.0, 1.2], [0.6, 0.4]), Knowledge.Unknown), false));
        LearnSummary summary = Summary(model, [0, 0, 1, 1], [0, 2, -4, -2], weights: [0.375, 0.375, 0.125, 0.125]);
        Entanglement pair = Assert.Single(summary.Entangled());
        Assert.True(pair is { IsChoice: true, First: Stress, Second: "fatigue.damage_ratio" });
        Assert.Equal(3.0 / 4, pair.Strength, 1e-9);
        Assert.Equal([0.75, 0.25], pair.ByState.Select(s => Math.Round(s.Probability, 12)));
        Assert.Equal(LearnCase.Ratio * (1 + Math.Exp(2 * LearnCase.ThetaSd)) / 2, pair.ByState[0].Mean, 1e-9);
        double second = LearnCase.Ratio * (Math.Exp(-4 * LearnCase.ThetaSd) + Math.Exp(-2 * LearnCase.ThetaSd)) / 2;
        Assert.Equal(second, pair.ByState[1].Mean, 1e-9);

        // Bits by hand: 3/4 log2(0.75 / 0.6) + 1/4 log2(0.25 / 0.4); the ratio's as of N(0, 2).
        LearnedFactor choice = summary.Factors().Single(f => f.Name == Stress), ratio = summary.Factors().Single(f => f.Name != Stress);
        Assert.Equal((0.75 * Math.Log2(0.75 / 0.6)) + (0.25 * Math.Log2(0.25 / 0.4)), choice.Bits, 1e-9);
        Assert.Equal((0.6, 0.75), (choice.States[0].Prior, Math.Round(choice.States[0].Posterior, 12)));
        Assert.Equal((1.5 - Math.Log(2)) / Math.Log(2), ratio.Bits, 1e-9);
        Assert.Equal(ratio, summary.Factors()[0]);
    }

    private static LearnSummary Summary(LifeModel model, int[] combination, double[] z, double[]? other = null, double[]? weights = null)
    {
        var unknowns = new Unknowns(model);
        double[][] all = other is null ? [z]
            : model.Factors.ColumnNames[unknowns.Columns[0]] == Stress ? [other, z] : [z, other];
        var sample = new PosteriorSample(
            combination, all, [.. z.Select((_, i) => Math.Log(weights?[i] ?? 1))], [], new int[z.Length]);
        return new LearnSummary(model, unknowns, sample, sample);
    }
}
