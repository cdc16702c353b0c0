using AxleRisk.Core.Modes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Studies;

/// <summary>What looks at one vehicle say of its life: the scale of the log-linear fixture, a crack of 0.2 mm in a wall of 6 mm.</summary>
public sealed class LookedChanceTests
{
    private static readonly CrackDepth Depth = new(0.2, 6, 3);
    private static readonly LifeScale Scale = LogLinear.Model.Scale;
    private static readonly InspectionMethod Dye = new("dye", new DetectionCurve(1.5, 4), 0, 0, []);

    /// <summary>Sums over a million even steps of the score of the limit, with the formulas written out.</summary>
    [Theory]
    [InlineData(false, null, 0)]
    [InlineData(true, null, 0)]
    [InlineData(true, 3.0, 0.4)]
    [InlineData(true, 3.0, 0.02)]
    public void Survival_and_failure_are_sums_over_limits(bool isFound, double? depthMm, double deviation)
    {
        LookedChance chance = new(Scale, [new CrackLook(Dye, 1, false, null, 0), new CrackLook(Dye, 2, isFound, depthMm, deviation)]);
        double median = Math.Exp(Scale.Mu);
        double[] used = [0.3 * median, 0.5 * median];
        (double after, double end) = (0.6 * median, 0.9 * median);
        chance.Take(used, Depth);
        (double whole, double survives, double fails) = (0, 0, 0);
        const int steps = 1_000_000;
        for (int i = 0; i < steps; i++)
        {
            double z = -8 + (16 * (i + 0.5) / steps), limit = median * Math.Exp(Scale.Sigma * z);
            if (limit < used[1])
            {
                continue;
            }

            double Mm(double x) => Math.Pow(Math.Pow(0.2, -0.5) + (x * (Math.Pow(6, -0.5) - Math.Pow(0.2, -0.5))), -2);
            double found = Dye.Detection.Of(Mm(used[1] / limit)), error = depthMm is { } d ? (d - Mm(used[1] / limit)) / deviation : 0;
            double weight = 16.0 / steps * StandardNormal.Density(z) * (1 - Dye.Detection.Of(Mm(used[0] / limit)))
                * (isFound ? found * Math.Exp(-0.5 * error * error) : 1 - found);
            whole += weight;
            survives += limit > after ? weight : 0;
            fails += limit > after && limit <= end ? weight : 0;
        }

        Assert.Equal(1, chance.Survival(used[1]) / whole, 1e-4);
        Assert.Equal(1, chance.Survival(0) / whole, 1e-4); // it was whole at the looks
        Assert.Equal(survives, chance.Survival(after), (1e-4 * survives) + (2e-5 * whole));
        Assert.Equal(fails, chance.Fails(after, end), (1e-4 * fails) + (2e-5 * whole));
    }

    /// <summary>Scores drawn at even shares have the distribution that survival tells.</summary>
    [Fact]
    public void Scores_are_drawn_from_what_the_looks_leave()
    {
        LookedChance chance = new(Scale, [new CrackLook(Dye, 1, true, 2.5, 0.8)]);
        double median = Math.Exp(Scale.Mu);
        chance.Take([0.5 * median], Depth);
        double all = chance.Survival(0);
        for (int i = 1; i < 20; i++)
        {
            double share = i / 20.0, score = chance.Draw(double.NegativeInfinity, double.PositiveInfinity, share);
            Assert.Equal(share, 1 - (chance.Survival(median * Math.Exp(Scale.Sigma * score)) / all), 0.01);
        }
    }

    /// <summary>Columns are single numbers, and nothing fails where nothing is used up.</summary>
    [Fact]
    public void A_column_of_hazards_is_each_of_them()
    {
        LookedChance chance = new(Scale, [new CrackLook(Dye, 1, false, null, 0)]);
        double median = Math.Exp(Scale.Mu);
        chance.Take([0.3 * median], Depth);
        double[] used = [0.4 * median, 0.5 * median, 0.9 * median], hazards = new double[3];
        chance.FillHazards(used, hazards);
        Assert.Equal(used.Select(u => -Math.Log(chance.Survival(u))), hazards);
        Assert.True(hazards[0] > 0 && hazards[1] > hazards[0]);
        Assert.Equal(0, chance.Fails(used[1], used[1]));
        Assert.Equal(0, chance.Fails(used[1], used[0]));
    }

    /// <summary>A look is at what fatigue of the first section has used up, and not of the second, 4 % weaker.</summary>
    [Fact]
    public void A_look_is_at_the_first_section()
    {
        LifeModel model = new(TwoSections.Certain with { Crack = new Crack(new CrackCurve([0, 1], [0.2, 6], "")) });
        Workspace space = model.CreateWorkspace(1);
        double[][] values = model.CreateColumns(1);
        for (int i = 0; i < values.Length; i++)
        {
            values[i][0] = model.Factors.Factors.Single(f => f.FirstColumn == i).Median[0];
        }

        model.Evaluate(values, 1, space);
        const double km = 20_000;
        double first = space.Rates!.Of(model.Modes.Modes[0])[0][0] * km, second = space.Rates.Of(model.Modes.Modes[1])[0][0] * km;
        Assert.True(second > 1.1 * first);
        var looks = new LooksLikelihood(model, [new CrackLook(Dye, km, false, null, 0)]);
        looks.Take(space, values, 0);
        double limit = 2 * second;
        Assert.Equal(1 - Dye.Detection.Of(0.2 + (5.8 * first / limit)), looks.Of(limit), 1e-9);
        Assert.Equal(0, looks.Of(0.99 * first)); // it was whole then
        Assert.True(looks.Of(1.01 * first) > 0);
    }

    /// <summary>The table within 1e-6 of the curve at every fraction, its ends as well.</summary>
    [Theory]
    [InlineData(1.5, 4)]
    [InlineData(0.3, 6)]
    [InlineData(4, 5.5)]
    public void A_detection_table_is_within_a_millionth_of_its_curve(double a50, double a90)
    {
        var look = new DetectionCurve(a50, a90);
        var table = new DetectionTable(look, Depth);
        for (int i = 0; i <= 100_000; i++)
        {
            double x = i / 100_000.0;
            Assert.Equal(look.Of(Depth.At(x)), table.Of(x), 1e-6);
        }
    }
}
