using AxleRisk.Core.Distributions;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Modes;

/// <summary>How a scenario's inputs reach the damage model: each against another way of stating the same vehicle.</summary>
public sealed class ColumnAssemblyTests
{
    private const double Width = 90, Height = 120, Wall = 6;

    private static readonly Scenario Tube = TripCases.CertainVehicle;
    private static readonly double TubeLife = Life(Tube);

    [Fact]
    public void Every_shape_lives_as_long_as_its_section_modulus_given()
    {
        // (B H^3 - b h^3) / (6 H) and pi (D^4 - d^4) / (32 D): any handbook of strength of materials.
        double box = ((Width * Math.Pow(Height, 3)) - ((Width - 12) * Math.Pow(Height - 12, 3))) / (6 * Height);
        double tube = Math.PI * (Math.Pow(95, 4) - Math.Pow(83, 4)) / (32 * 95);
        AssertSame(Life(Given(box)), Life(Box(Sure(Width), Sure(Height), Sure(Wall))));
        AssertSame(Life(Given(tube)), TubeLife);
        Assert.True(Life(Given(box)) > Life(Given(tube)));
    }

    [Fact]
    public void An_uncertain_section_has_the_life_of_its_values()
    {
        Scenario box = Box(Spread(Width), Spread(Height), Spread(Wall));
        var model = new LifeModel(box);
        double[][] values = model.CreateColumns(3);
        Set(Quantities.BoxWidth, 80, 90, 90);
        Set(Quantities.BoxHeight, 120, 110, 120);
        Set(Quantities.Wall, 6, 6, 5);
        foreach (Factor factor in model.Factors.Factors.Where(f => LifeScale.Contains(f)))
        {
            Array.Fill(values[factor.FirstColumn], factor.Nominal[0]);
        }

        Workspace workspace = model.CreateWorkspace(3);
        model.Evaluate(values, 3, workspace);
        AssertSame(Life(Box(Sure(80), Sure(120), Sure(6))), workspace.LifeKm[0]);
        AssertSame(Life(Box(Sure(90), Sure(110), Sure(6))), workspace.LifeKm[1]);
        AssertSame(Life(Box(Sure(90), Sure(120), Sure(5))), workspace.LifeKm[2]);

        void Set(Quantity quantity, params double[] column) =>
            column.CopyTo(values[model.Factors.Find(box.Find(quantity)!.Name)!.FirstColumn], 0);
    }

    [Fact]
    public void Corrosion_takes_the_wall_of_tube_and_box()
    {
        AssertSame(Life(Box(Sure(Width), Sure(Height), Sure(Wall - 1))),
            Life(Box(Sure(Width), Sure(Height), Sure(Wall)).Stating(Quantities.CorrosionLoss, Sure(1))));
        AssertSame(Life(Tube.With(Quantities.Wall, Sure(5))), Life(Tube.Stating(Quantities.CorrosionLoss, Sure(1))));
    }

    [Fact]
    public void Inputs_that_act_together_are_one()
    {
        double payload = 400, share = 0.3;
        AssertSame(Life(Tube.With(Quantities.SprungMass, Sure(600 + (payload * share)))),
            Life(Tube.Stating(Quantities.Payload, Sure(payload)).Stating(Quantities.PayloadShare, Sure(share))));
        AssertSame(Life(Tube.With(Quantities.SpringRate, Sure(57))), Life(Tube.Stating(Quantities.HelperSpringRate, Sure(12))));
        AssertSame(Life(Tube.With(Quantities.DamperRate, Sure(4 * 0.6))), Life(Tube.Stating(Quantities.DamperCondition, Sure(0.6))));
        AssertSame(Life(Tube.With(Quantities.LeverArm, Sure(265))), Life(Tube.Stating(Quantities.WheelOffset, Sure(25))));
        AssertSame(Life(Tube.With(Quantities.LeverArm, Sure(-240))), TubeLife);
        AssertSame(Life(Tube.With(Quantities.StressFactor, Sure(1.4))), Life(Tube.Stating(Quantities.StressConcentration, Sure(1.4))));
        AssertSame(Life(Tube.With(Quantities.StressFactor, Sure(1.25))), Life(Tube.With(Quantities.LeverArm, Sure(300))));
    }

    [Fact]
    public void Speed_and_roughness_are_scaled_by_their_factors_on_every_leg()
    {
        AssertSame(Life(OnEveryLeg(Quantities.Speed, 1.1)), Life(Tube.With(Quantities.SpeedFactor, Sure(1.1))));
        AssertSame(Life(OnEveryLeg(Quantities.Roughness, 1.7)), Life(Tube.With(Quantities.RoughnessFactor, Sure(1.7))));

        // ISO 8608 classes: the geometric mean of class C is 256e-6 m^3.
        Scenario classes = Tube with
        {
            Legs = [.. Tube.Legs.Select((l, i) => l with { RoadClass = "ABCDE"[i] })],
            Inputs = [.. Tube.Inputs.Where(i => i.Quantity != Quantities.Roughness)]
        };
        AssertSame(TubeLife, Life(classes));
    }

    // A lever that every input is: the direction is that of the physics, and no input is without effect.
    [Theory]
    [InlineData("unsprung_kg", 1.2, -1)]
    [InlineData("tyre_n_per_mm", 1.2, -1)]
    [InlineData("lever_arm_mm", 1.1, -1)]
    [InlineData("wall_mm", 1.1, 1)]
    [InlineData("outside_diameter_mm", 1.1, 1)]
    [InlineData("stress_factor", 1.1, -1)]
    [InlineData("speed_factor", 1.1, -1)]
    [InlineData("roughness_factor", 1.1, -1)]
    public void Each_input_alone_moves_the_life_its_way(string key, double times, int way)
    {
        Input input = Tube.Inputs.Single(i => i.Leg is null && i.Quantity.Key == key);
        Assert.Equal(way, Math.Sign(Life(Tube.With(input.Quantity, Sure(times * input.Value.Nominal))) - TubeLife));
    }

    [Fact]
    public void Ages_weigh_by_Simpsons_rule_and_steps_divide_them_evenly()
    {
        Assert.Equal(1, AgeGrid.Unchanged.MeanWeights.Sum(), 1e-15);
        Assert.Equal([0.0], AgeGrid.Unchanged.StepKm);
        AgeGrid grid = AgeGrid.Over(1000);
        Assert.Equal([0.0, 500, 1000, 2000, 5000], grid.Km);

        // The mean of a cubic over the required distance is exact: of (x / 1000)^k it is 1 / (k + 1).
        for (int k = 0; k <= 3; k++)
        {
            Assert.Equal(1.0 / (k + 1), grid.Km.Zip(grid.MeanWeights, (x, w) => w * Math.Pow(x / 1000, k)).Sum(), 1e-14);
        }

        Assert.Equal([0.0, 125, 250, 375, 500, 625, 750, 875, 1000, 1250, 1500, 1750, 2000, 2750, 3500, 4250, 5000], grid.StepKm);
        Assert.Equal([0, 0, 1, 8, 16, 16], new[] { 1, 125, 125.1, 1001, 5001, 1e9 }.Select(grid.StepOf));
    }

    private static Value.Certain Sure(double x) => new(x);

    private static Value.Uncertain Spread(double x) => new Value.Uncertain(new Normal(x, 0.01 * x), Knowledge.Varies);

    private static Scenario Given(double modulus) => Without(SectionShape.Given).Stating(Quantities.SectionModulus, Sure(modulus));

    private static Scenario Box(Value width, Value height, Value wall) =>
        Without(SectionShape.Box).Stating(Quantities.BoxWidth, width).Stating(Quantities.BoxHeight, height).With(Quantities.Wall, wall);

    private static Scenario Without(SectionShape shape) =>
        Tube with { Shape = shape, Inputs = [.. Tube.Inputs.Where(i => i.Quantity != Quantities.OutsideDiameter)] };

    private static Scenario OnEveryLeg(Quantity quantity, double times) => Tube with
    {
        Inputs = [.. Tube.Inputs.Select(i => i.Quantity == quantity ? i with { Value = Sure(times * i.Value.Nominal) } : i)],
    };

    private static double Life(Scenario scenario) => TripCases.MedianLifeKm(new LifeModel(scenario));

    // The damage kernel runs in single precision: 1e-6 of ln life, times slopes up to 5.
    private static void AssertSame(double expected, double actual) => Assert.Equal(1, actual / expected, 2e-5);
}

/// <summary>Scenarios with one statement more or another.</summary>
file static class Statements
{
    public static Scenario With(this Scenario scenario, Quantity quantity, Value value) => scenario with
    {
        Inputs = [.. scenario.Inputs.Select(i => i.Quantity == quantity ? i with { Value = value } : i)],
    };

    public static Scenario Stating(this Scenario scenario, Quantity quantity, Value value) => scenario with
    {
        Inputs = [.. scenario.Inputs, new Input($"{quantity.Section}.{quantity.Key}", quantity, null, value, false)],
    };
}
