using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Damage;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Modes;

/// <summary>A further checked section as a mode of failure: what it shares with the first, and what it has for itself.</summary>
public class SectionModeTests
{
    private const int Rows = 256;

    // The wall, arm and stress factor of both are certain; vehicle, roads and speeds are not.
    private static readonly Scenario Shared = FiveLegs.Scenario with
    {
        Inputs =
        [
            .. FiveLegs.Scenario.Inputs.Select(i => i.Quantity.Section == "axle" || i.Quantity == Quantities.StressFactor
                ? i with { Value = new Value.Certain(i.Value.Nominal) } : i),
        ],
    };

    [Theory]
    [InlineData(0, 1, false)]
    [InlineData(0.8, 1, false)]
    [InlineData(0.8, 1.7, true)]
    public void A_section_like_the_first_has_its_damage_at_every_age_and_twice_the_hazard(double rust, double ratio, bool ofLeg)
    {
        Scenario scenario = Set(Shared, Quantities.DamageRatio, ratio);
        scenario = rust > 0 ? Set(scenario, Quantities.CorrosionRate, rust) : scenario;
        scenario = ofLeg ? scenario with
        {
            Inputs = [.. scenario.Inputs, new Input("legs.leg2.damage_ratio", Quantities.LegDamageRatio, 1, new Value.Certain(2.5), false)],
        } : scenario;
        (LifeModel model, Workspace both) = Evaluate(TwoSections.With(scenario));
        (LifeModel alone, Workspace one) = Evaluate(scenario);
        Assert.Equal(["fatigue", "sections.seat"], model.Modes.Modes.Select(m => m.Key));
        double[][] first = both.Rates!.Of(model.Modes.Modes[0]), second = both.Rates.Of(model.Modes.Modes[1]);
        for (int age = 0; age < first.Length; age++)
        {
            for (int row = 0; row < Rows; row++)
            {
                Near.Relative(first[age][row], second[age][row], ratio == 1 && !ofLeg ? 0 : 1e-14);
            }
        }

        for (int row = 0; row < Rows; row += 16)
        {
            Assert.Equal(one.DamagePerKm[row], both.DamagePerKm[row]);
            double used = alone.Chances.Hazard(0, one, row, 40_000);
            Near.Relative(2 * used, model.Chances.Hazard(0, both, row, 40_000) + model.Chances.Hazard(1, both, row, 40_000), 1e-12);
        }
    }

    [Fact]
    public void A_section_without_stress_changes_no_digit()
    {
        (_, Workspace one) = Evaluate(Shared);
        (_, Workspace both) = Evaluate(TwoSections.With(Shared, (Quantities.StressConcentration.Key, new Value.Certain(0))));
        Assert.Equal(one.DamagePerKm, both.DamagePerKm);
        Assert.Equal(one.DamageByLeg, both.DamageByLeg);
        Assert.Equal(one.LifeKm, both.LifeKm);
        Assert.All(both.FirstMode, m => Assert.Equal(0, m));
    }

    // By hand: stress = factor x concentration x (arm + offset) / Z, Z = (b h^3 - (b - 2t)(h - 2t)^3)/(6 h) of the wall that is left; a
    // section is one vehicle whose first section is the same.
    [Fact]
    public void Its_own_inputs_are_those_of_a_vehicle_with_that_section_alone()
    {
        Scenario offset = Set(Set(Shared, Quantities.WheelOffset, 30), Quantities.CorrosionLoss, 0.4);
        Scenario with = TwoSections.With(
            offset, (Quantities.LeverArm.Key, new Value.Certain(310)), (Quantities.StressConcentration.Key, new Value.Certain(1.3)),
            (Quantities.StressFactor.Key, new Value.Certain(1.1)), (Quantities.Wall.Key, new Value.Certain(7)),
            (Quantities.BoxWidth.Key, new Value.Certain(80)), (Quantities.BoxHeight.Key, new Value.Certain(110)));
        with = with with
        {
            Sections = [with.Sections[0] with { Shape = SectionShape.Box, Detail = new Detail("IIW", ["FAT 71", "FAT 56"], [0.4, 0.6]) }],
            Inputs = [.. with.Inputs.Where(i => i.Section is null || i.Quantity.Key != Quantities.OutsideDiameter.Key)],
        };
        Scenario alone = Set(Set(Set(Set(Set(Set(offset with
        { Shape = SectionShape.Given, Detail = with.Sections[0].Detail },
            Quantities.LeverArm, 310), Quantities.StressConcentration, 1.3), Quantities.StressFactor, 1.1), Quantities.Wall, 7),
            Quantities.CorrosionLoss, 0), Quantities.SectionModulus,
            ((80 * Math.Pow(110, 3)) - ((80 - 13.2) * Math.Pow(110 - 13.2, 3))) / (6 * 110));
        (LifeModel model, Workspace both) = Evaluate(with);
        (LifeModel other, Workspace one) = Evaluate(alone);
        int category = model.Factors.ColumnNames.IndexOf("sections.seat.category");
        Assert.Equal("weld category of seat", model.Factors.LabelOf("sections.seat.category"));
        Assert.True(category >= 0 && other.Factors.ColumnNames.Contains("detail.category"));
        double[] rates = both.Rates!.Of(model.Modes.Modes[1])[0];
        double[] columns = both.Damage.Sections[1].Category;
        for (int row = 0; row < Rows; row++)
        {
            // The two draw their categories from streams of other names.
            if (columns[row] == one.Damage.Category[row])
            {
                Near.Relative(one.DamagePerKm[row], rates[row], 1e-5);
            }
        }

        Assert.InRange(columns.Zip(one.Damage.Category).Count(p => p.First == p.Second), 80, 180);
    }

    // A cycle of the wheel's load W: k W; a moment M is the same in every section: M / Z whatever the arm. DNV-RP-C203 class E, as above.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Events_act_on_it_by_its_own_stress(bool isMoment)
    {
        Scenario scenario = TwoSections.With(TripCases.CertainVehicle, (Quantities.LeverArm.Key, new Value.Certain(300)));
        Scenario events = scenario with
        {
            Inputs =
            [
                .. scenario.Inputs,
                new Input("legs.leg2.events.x.per_km", Quantities.EventsPerKm, 1, new Value.Certain(0.7), false) { Event = "x" },
                new Input("legs.leg2.events.x.size", isMoment ? Quantities.EventMoment : Quantities.EventWheelLoad, 1,
                    new Value.Certain(isMoment ? 2.0 : 3.0), false)
                { Event = "x" },
            ],
        };
        double modulus = Math.PI * (Math.Pow(95, 4) - Math.Pow(83, 4)) / (32 * 95);
        double range = isMoment ? 2e6 / modulus : 3 * 690 * 9.80665 * 300 / modulus;
        double added = 0.30 * 0.7 * (range >= 46.77 ? Math.Pow(range, 3) / Math.Pow(10, 12.41) : Math.Pow(range, 5) / Math.Pow(10, 15.75));
        double Rate(Scenario of) => Evaluate(of) is var (m, w) ? w.Rates!.Of(m.Modes.Modes[1])[0][0] : 0;
        Assert.Equal(added, Rate(events) - Rate(scenario), 1e-6 * added);
    }

    [Fact]
    public void Strikes_on_the_bump_stop_act_on_it_as_on_the_first()
    {
        Scenario stopped = Set(Set(Shared, Quantities.BumpClearance, 25), Quantities.BumpStopRate, 300);
        (LifeModel model, Workspace both) = Evaluate(TwoSections.With(stopped));
        (_, Workspace free) = Evaluate(TwoSections.With(Shared));
        double[] rates = both.Rates!.Of(model.Modes.Modes[1])[0];
        Assert.Equal(both.DamagePerKm, rates[..Rows]);
        Assert.True(rates[..Rows].Sum() > 1.01 * free.Rates!.Of(model.Modes.Modes[1])[0][..Rows].Sum());
    }

    // A thinner wall of its own is gone sooner, and ends the life.
    [Fact]
    public void It_ends_with_its_own_wall()
    {
        Scenario rusty = Set(TripCases.CertainVehicle, Quantities.CorrosionRate, 4);
        Scenario with = TwoSections.With(
            rusty, (Quantities.Wall.Key, new Value.Certain(3)), (Quantities.StressConcentration.Key, new Value.Certain(0.01)));
        (LifeModel model, Workspace workspace) = Evaluate(with);
        double lastsKm = 3 / 4.0 * 100_000;
        Assert.InRange(model.Chances.Hazard(1, workspace, 0, 0.99 * lastsKm), 0, 1e-6);
        Assert.Equal(double.PositiveInfinity, model.Chances.Hazard(1, workspace, 0, 1.01 * lastsKm));
        Assert.True(double.IsFinite(model.Chances.Hazard(0, workspace, 0, 1.01 * lastsKm)));
    }

    [Fact]
    public void A_remedy_changes_the_section_it_names()
    {
        var remedy = new Remedy("weld", null,
            [new Change.ToWord("sections.seat.category", WordChoice.Sure("F")), new Change.Times("sections.seat.wall_mm", 1.5)]);
        Scenario changed = Remedy.Apply(TwoSections.Certain, remedy);
        Assert.Equal("F", changed.Sections[0].Detail.Category.Only);
        Assert.Equal("E", changed.Detail.Category.Only);
        Assert.Equal(9, changed.Find(Quantities.OfSection(Quantities.Wall.Key)!, changed.Sections[0])!.Value.Nominal, 1e-12);
        Assert.Equal(6, changed.Find(Quantities.Wall)!.Value.Nominal);
    }

    private static Scenario Set(Scenario scenario, Quantity quantity, double value) => scenario with
    {
        Inputs =
        [
            .. scenario.Inputs.Where(i => i.Quantity != quantity),
            new Input($"{quantity.Section}.{quantity.Key}", quantity, null, new Value.Certain(value), false),
        ],
    };

    private static (LifeModel Model, Workspace Workspace) Evaluate(Scenario scenario)
    {
        var model = new LifeModel(scenario);
        Workspace workspace = model.CreateWorkspace(Rows);
        double[][] values = model.CreateColumns(Rows);
        model.Draw(new BlockPlan(new StudySettings(Rows, 1, "plain"), model.Factors.ColumnNames.Length).PlanOf(0), 1, "", 0, Rows, workspace,
            values);
        model.Evaluate(values, Rows, workspace);
        return (model, workspace);
    }
}
