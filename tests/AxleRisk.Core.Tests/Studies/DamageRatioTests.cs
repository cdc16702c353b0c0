using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Studies;

/// <summary>True over computed damage by leg: damages are multiplied, everything else follows from them.</summary>
public sealed class DamageRatioTests
{
    private const int Rows = 5;

    private static readonly double[] Ratios = [4.1, 1, 1.5, 0.86, 1];

    public static TheoryData<string> Cases => ["fatigue alone", "three modes", "ageing"];

    // Rates of new vehicles are damages by leg: the ratio of each multiplies its own, and the sum is theirs, times the ratio of the use.
    [Theory]
    [MemberData(nameof(Cases))]
    public void Each_leg_is_multiplied_by_its_own_and_the_use_is_their_sum(string name)
    {
        Scenario scenario = CaseOf(name);
        (double[][] plain, _, double[] plainRate) = Evaluate(scenario);
        (double[][] byLeg, double[] total, double[] rate) = Evaluate(With(scenario, 2));
        for (int row = 0; row < Rows; row++)
        {
            double sum = 0;
            for (int leg = 0; leg < Ratios.Length; leg++)
            {
                Assert.Equal(2 * Ratios[leg] * plain[leg][row], byLeg[leg][row], (name == "ageing" ? 2e-3 : 1e-12) * byLeg[leg][row]);
                sum += byLeg[leg][row];
            }

            Assert.Equal(sum, total[row], 1e-12 * sum);
            double ratio = total[row] / plain.Sum(l => l[row]);
            Assert.Equal(ratio, rate[row] / plainRate[row], (name == "ageing" ? 0.05 : 1e-12) * ratio);
        }
    }

    // Ratios that are uncertain and the same on all legs are that of the use.
    [Fact]
    public void Of_one_column_on_all_legs_they_are_the_ratio_of_the_use()
    {
        Value ratio = new Value.Uncertain(new Lognormal(1.3, 0.3), Knowledge.Unknown);
        Scenario ofUse = ThreeModes.With(FiveLegs.Scenario, (Quantities.DamageRatio, ratio));
        Scenario ofLegs = FiveLegs.Scenario with
        {
            Inputs = [.. FiveLegs.Scenario.Inputs, .. Enumerable.Range(0, 5)
                .Select(leg => new Input("fatigue.damage_ratio", Quantities.LegDamageRatio, leg, ratio, false))],
        };
        var factors = new LifeModel(ofUse).Factors;
        (_, double[] expected, _) = Evaluate(ofUse, factors);
        (_, double[] total, _) = Evaluate(ofLegs, factors);
        Assert.All(Enumerable.Range(0, Rows), row => Assert.Equal(expected[row], total[row], 1e-12 * expected[row]));
        Assert.Equal(Rows, expected.Distinct().Count());
    }

    // A leg of a trip has the ratio of the usual leg it is like, or its own in place of it.
    [Fact]
    public void A_leg_of_a_trip_has_the_ratio_of_the_leg_it_is_like_unless_it_states_its_own()
    {
        Scenario with = With(TripCases.CertainVehicle, 1);
        Scenario like = TripCases.Like(with, 0, (0, 100.0), (0, 100.0));
        Scenario own = TripCases.Stating(like, 1, Quantities.LegDamageRatio, new Value.Certain(3));
        var model = new TripModel(new LifeModel(Trip.Whole(own)));
        double[][] used = Workspace.Columns(2, 1);
        model.Evaluate(new LifeModel(Trip.Whole(own)).CreateColumns(1), 1, model.CreateWorkspace(1), used);
        Assert.Equal(used[0][0] / 4.1 * 3, used[1][0], 1e-12 * used[1][0]);
        var plain = new TripModel(new LifeModel(Trip.Whole(TripCases.Like(TripCases.CertainVehicle, 0, (0, 100.0)))));
        double[][] without = Workspace.Columns(1, 1);
        plain.Evaluate(new LifeModel(TripCases.CertainVehicle).CreateColumns(1), 1, plain.CreateWorkspace(1), without);
        Assert.Equal(4.1 * without[0][0], used[0][0], 1e-12 * used[0][0]);
    }

    private static Scenario CaseOf(string name) => name switch
    {
        "three modes" => ThreeModes.Scenario,
        "ageing" => ThreeModes.With(FiveLegs.Scenario, (Quantities.CorrosionRate, new Value.Certain(0.2))),
        _ => FiveLegs.Scenario,
    };

    private static Scenario With(Scenario scenario, double ofUse) => scenario with
    {
        Inputs =
        [
            .. scenario.Inputs, new Input("fatigue.damage_ratio", Quantities.DamageRatio, null, new Value.Certain(ofUse), false),
            .. Ratios.Index().Where(r => r.Item != 1).Select(r => new Input(
                $"legs.leg{r.Index + 1}.damage_ratio", Quantities.LegDamageRatio, r.Index, new Value.Certain(r.Item), false)),
        ],
    };

    // Damage by leg, in all, and the rate of fatigue of a vehicle when new.
    private static (double[][] ByLeg, double[] Total, double[] Rate) Evaluate(Scenario scenario, FactorSet? factors = null)
    {
        var model = factors is null ? new LifeModel(scenario) : new LifeModel(scenario, factors);
        Workspace workspace = model.CreateWorkspace(Rows);
        double[][] values = model.CreateColumns(Rows);
        model.Draw(SamplingPlan.FromName("plain", Rows), 1, "", 0, Rows, workspace, values);
        model.Evaluate(values, Rows, workspace);
        double[] rate = workspace.Rates is { } rates ? rates.OfFatigue[0] : workspace.DamagePerKm;
        return (workspace.DamageByLeg, workspace.DamagePerKm, rate);
    }
}
