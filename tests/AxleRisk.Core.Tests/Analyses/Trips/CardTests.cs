using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Trips;

/// <summary>The crew's card. All cases are invented.</summary>
public sealed class CardTests
{
    private const double Step = 5, BeforeKm = 10_000;

    // Of the trip as planned; the targets are parts of it.
    private static readonly double Planned = TripAnalysis
        .Run(Case(1) with { Trip = Case(1).Trip! with { TargetRisk = null } }, Settings, new TripQuestion(), new RunOptions())
        .Probability.Estimate;

    private static StudySettings Settings => new(2048, 3, "sobol");

    private static readonly Remedy Thicker = new("thicker", 85, [new Change.ToValue("axle.wall_mm", new Value.Certain(6.6))]);

    /// <summary>The search against every combination of speeds, by the same vehicles.</summary>
    [Theory]
    [InlineData(0.4)]
    [InlineData(0.7)]
    public void The_search_finds_the_fastest_of_all_combinations(double of)
    {
        Scenario whole = Trip.Whole(Case(0.02));
        var model = new LifeModel(whole);
        CardChoice choice = CardChoice.Of(whole, whole.Trip!.Card!, []);
        var vehicles = CardVehicles.Draw(
            model, model, null, choice, new TripSurvival(model, false), new StudySettings(512, 5, "sobol"),
            TestContext.Current.CancellationToken);
        double[] km = [.. Enumerable.Range(0, whole.Trip.Legs.Length).Select(l => TripAnalysis.MeanKmOf(whole, l))];
        var search = new SpeedSearch(vehicles, choice.Speeds, km);
        int[][] all = [.. Combinations(choice)];
        Assert.True(all.Length > 100);
        (double least, double most) = (all.Min(search.Risk), all.Max(search.Risk));
        double target = least + (of * of * (most - least));
        int[] fastest = all.Where(c => search.Risk(c) <= target).MinBy(search.Hours)!;
        int[] found = search.Fastest(target)!;
        Assert.True(search.Risk(found) <= target);
        Assert.Equal(search.Hours(fastest), search.Hours(found), 1e-9);
        Assert.Null(search.Fastest(0.5 * least));
    }

    /// <summary>
    /// A count that shares nothing with the card but the damage model: vehicles drawn anew, each leg a scenario of its own at the card's
    /// speed, and those counted that break on the trip of those that reach it.
    /// </summary>
    [Fact]
    public void The_risk_of_the_card_is_what_a_count_of_other_vehicles_gives()
    {
        Scenario scenario = Case(Planned / 2);
        TripResult result = Run(scenario);
        CardResult card = result.Card!;
        Assert.True(card.KeepsTarget);
        Assert.True(card.Risk.High <= Planned / 2);
        Assert.True(result.Probability.Low > Planned / 2);
        Assert.InRange(card.Risk.Estimate, 0.6 * Planned / 2, Planned / 2); // no slower than it need be
        (long reached, long failed) = Count(scenario, card, 60_000);
        double p = failed / (double)reached, error = Math.Sqrt((p * (1 - p) / reached) + Math.Pow((card.Risk.High - card.Risk.Low) / 4, 2));
        Assert.Equal(p, card.Risk.Estimate, 4 * error);
        Assert.All(card.Legs, l => Assert.Equal(0, l.KmPerHour % Step, 1e-9));
        Assert.All(card.Legs, l => Assert.True(l.KmPerHour <= l.PlannedKmPerHour));
        Assert.Equal(card.Legs.Sum(l => l.Km / l.KmPerHour), card.Hours, 1e-9);
    }

    /// <summary>Of a front that is too long every second or third point stays, the last always: the slowest is the safest.</summary>
    [Theory]
    [InlineData(3_000, 3_000)]
    [InlineData(10_001, 3_335)]
    public void A_long_front_is_thinned_and_keeps_its_ends(int many, int kept)
    {
        List<(double Hours, double Risk, int[] At)> front = SpeedSearch.Front(
            Enumerable.Range(0, many).SelectMany(i => new[] { (Hours: (double)i, Risk: 1.0 / (1 + i), At: new[] { i }), (i, 2.0, [i]) }));
        Assert.Equal(kept, front.Count);
        Assert.Equal((0, many - 1), (front[0].At[0], front[^1].At[0]));
        Assert.True(front.Count <= SpeedSearch.MostOfFront + 1);
    }

    /// <summary>
    /// With a new housing the card's risk is by the scatter of another axle; counted by vehicles that drew one, of those whose old axle
    /// reached the start.
    /// </summary>
    [Fact]
    public void The_risk_of_a_card_with_a_new_housing_is_what_a_count_gives()
    {
        Remedy housing = new("new housing", 900, [new Change.ToValue("trip.already_driven_km", new Value.Certain(0))]);
        Scenario scenario = Case(Planned / 2) with { Remedies = [housing] };
        CardResult card = Run(scenario).Card!;
        Assert.Equal(["new housing"], card.Remedies.Select(r => r.Name));
        (long reached, long failed) = Count(scenario, card, 60_000, fresh: true);
        double p = failed / (double)reached, error = Math.Sqrt((p * (1 - p) / reached) + Math.Pow((card.Risk.High - card.Risk.Low) / 4, 2));
        Assert.Equal(p, card.Risk.Estimate, 4 * error);
    }

    /// <summary>The jobs that few vehicles left out would not have been the best: as all of them searched in full.</summary>
    [Fact]
    public void Jobs_sorted_out_are_none_of_the_best()
    {
        Scenario scenario = Case(Planned / 3) with
        {
            Remedies =
            [
                Thicker, new("light", 20, [new Change.ToValue("axle.wall_mm", new Value.Certain(6.3))]),
                new("calm", 30, [new Change.Times("fatigue.stress_factor", 0.97)]),
            ],
        };
        TripResult result = Run(scenario with
        { Trip = scenario.Trip! with { Card = scenario.Trip.Card! with { PayloadsKg = [200, 400] } } });
        var whole = new LifeModel(Trip.Whole(scenario));
        CardChoice choice = CardChoice.Of(
            whole.Scenario, scenario.Trip!.Card! with { PayloadsKg = [200, 400] }, result.Remedies);
        double[] km = [.. Enumerable.Range(0, choice.Speeds.Length).Select(l => TripAnalysis.MeanKmOf(whole.Scenario, l))];
        var search = new CardSearch(whole, choice, km, new TripSurvival(whole, false), Settings, new RunOptions());
        double target = 0.95 * Planned / 3;
        System.Collections.Immutable.ImmutableSortedDictionary<int, int[]> found = search.Fastest(target);
        Assert.True(search.Searched < search.Jobs);
        double best = found.Min(f => search.Hours(f.Value));
        double ofAll = Enumerable.Range(0, search.Jobs).Min(j => new SpeedSearch(
            CardVehicles.Draw(whole, search.ModelOf(j), choice.Loads[search.LoadOf(j)], choice, new TripSurvival(whole, false),
                Settings, TestContext.Current.CancellationToken), choice.Speeds, km).Fastest(target) is { } at
                    ? search.Hours(at) : double.MaxValue);
        Assert.Equal(ofAll, best, 1e-9);
    }

    [Fact]
    public void A_remedy_that_saves_time_is_on_the_card_with_its_price()
    {
        TripResult plain = Run(Case(Planned / 3)), helped = Run(Case(Planned / 3) with { Remedies = [Thicker] });
        Assert.Equal(["thicker"], helped.Card!.Remedies.Select(r => r.Name));
        Assert.True(helped.Card.Hours < plain.Card!.Hours);
        CardPrice without = Assert.Single(helped.Card.Prices, p => p.Kind == CardConstraint.WithoutRemedy);
        Assert.True(without.Hours > helped.Card.Hours);
        Assert.Empty(without.Taken);
    }

    [Fact]
    public void Where_nothing_keeps_the_target_the_least_risk_is_told_and_digits_depend_on_no_thread()
    {
        Scenario scenario = Case(Planned / 1e4);
        CardResult card = Run(scenario).Card!;
        Assert.False(card.KeepsTarget);
        Assert.Empty(card.Prices);
        Assert.True(card.Risk.High > Planned / 1e4);
        CardResult one = TripAnalysis.Run(scenario, Settings, new TripQuestion(), new RunOptions { Threads = 1 }).Card!;
        Assert.Equal((card.Risk, card.Hours), (one.Risk, one.Hours));
        Assert.Null(Run(scenario with { Trip = scenario.Trip! with { Card = null } }).Card);
    }

    private static Scenario Case(double target)
    {
        Scenario scenario = TripCases.Like(FiveLegs.Scenario, BeforeKm, (2, 15_000), (3, 20_000), (4, 3_000));
        return scenario with { Trip = scenario.Trip! with { TargetRisk = target, Card = new TripCard { StepKmPerHour = Step } } };
    }

    private static TripResult Run(Scenario scenario) =>
        TripAnalysis.Run(scenario, Settings, new TripQuestion(), new RunOptions { Threads = 2 });

    private static IEnumerable<int[]> Combinations(CardChoice choice) => choice.Speeds.Aggregate(
        (IEnumerable<int[]>)[[]], (all, speeds) => all.SelectMany(c => Enumerable.Range(0, speeds.Length).Select(i => (int[])[.. c, i])));

    private static (long Reached, long Failed) Count(Scenario scenario, CardResult card, int rows, bool fresh = false)
    {
        var usual = new LifeModel(scenario);
        Workspace space = usual.CreateWorkspace(rows);
        double[][] values = usual.CreateColumns(rows);
        usual.Draw(SamplingPlan.FromName("plain", rows), 991, "count", 0, rows, space, values);
        usual.Evaluate(values, rows, space);
        double[] start = [.. space.DamagePerKm[..rows].Select(d => BeforeKm * d)], end = [.. start.Select(s => fresh ? 0 : s)];
        double[] limit = [.. space.Scale[..rows]];
        for (int leg = 0; leg < card.Legs.Length; leg++)
        {
            int like = scenario.Trip!.Legs[leg].Like!.Value;
            var alone = new LifeModel(scenario with
            {
                Trip = null,
                MixConcentration = null,
                Legs = [scenario.Legs[like] with { Share = 1 }],
                Inputs = [.. scenario.Inputs.Where(i => i.Leg is null || i.Leg == like).Select(i => i.Leg is null ? i
                    : i with { Leg = 0, Value = i.Quantity == Quantities.Speed ? new Value.Certain(card.Legs[leg].KmPerHour) : i.Value })],
            }, usual.Factors);
            Workspace of = alone.CreateWorkspace(rows);
            alone.Evaluate(values, rows, of);
            for (int row = 0; row < rows; row++)
            {
                end[row] += card.Legs[leg].Km * of.DamagePerKm[row];
            }
        }

        int[] set = [.. Enumerable.Range(0, rows).Where(r => start[r] <= limit[r])];

        // A new axle has a Miner sum and scatter of its own: those of a vehicle drawn apart.
        double[] other = [.. limit];
        if (fresh)
        {
            usual.Draw(SamplingPlan.FromName("plain", rows), 992, "other axle", 0, rows, space, values);
            usual.FillScale(values, rows, other);
        }

        return (set.Length, set.Count(r => end[r] > other[r]));
    }
}
