using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using FsCheck;
using FsCheck.Xunit;
using Xunit;

namespace AxleRisk.Core.Tests.Studies;

/// <summary>What a vehicle uses up over the stretches of its history, by the axle's own model.</summary>
public sealed class StretchesTests
{
    private const int Rows = 64;

    private static readonly Change[] OtherUse =
    [
        new Change.Times("vehicle.tyre_n_per_mm", 1.25), new Change.ToValue("vehicle.payload_kg", new Value.Certain(400)),
        new Change.ToValue("legs.leg4.speed_km_per_h", new Value.Certain(50)), new Change.ToShare("leg3", 0.2), new Change.ToShare("leg5", 0.1),
    ];

    private static readonly Scenario Loaded = ThreeModes.With(FiveLegs.Scenario, (Quantities.Payload, new Value.Certain(100)));

    // Life is where the damage of both reaches what the row can bear: t + (D - d1 t)/d2.
    [Fact]
    public void The_life_of_two_stretches_is_that_by_hand()
    {
        const double bend = 200_000;
        Workspace before = Evaluated(Loaded), after = Evaluated(Made(Loaded)), both = Evaluated(Histories.From(Loaded, bend, OtherUse));
        int behind = 0;
        for (int row = 0; row < Rows; row++)
        {
            double left = before.Scale[row] - (before.DamagePerKm[row] * bend);
            behind += left > 0 ? 1 : 0;
            double life = left > 0 ? bend + (left / after.DamagePerKm[row]) : before.LifeKm[row];
            Assert.Equal(life, both.LifeKm[row], 1e-12 * life);
            Assert.Equal(before.DamagePerKm[row], both.DamagePerKm[row], 1e-12 * before.DamagePerKm[row]); // 50,000 km are required
        }

        Assert.InRange(behind, 1, Rows - 1);
    }

    // All three modes: what each has used up is the sum over the stretches, at any distance; the life is where the first is used up.
    [Fact]
    public void Every_mode_uses_up_the_sum_over_the_stretches()
    {
        const double first = 10_000, second = 25_000;
        Scenario scenario = ThreeModes.With(ThreeModes.Scenario, (Quantities.Payload, new Value.Certain(100)));
        Change[] heavier = [new Change.ToValue("vehicle.payload_kg", new Value.Certain(900)), new Change.Times("bearing.dynamic_rating_kn", 0.8)];
        Scenario history = Histories.Of(scenario, ([], first), (heavier, second), ([new Change.Times("use.roughness_factor", 1.5)],
            double.PositiveInfinity));
        Workspace[] parts =
        [
            Evaluated(scenario), Evaluated(Remedy.Apply(scenario, new Remedy("", null, [.. heavier]))),
            Evaluated(Remedy.Apply(scenario, new Remedy("", null, [new Change.Times("use.roughness_factor", 1.5)]))),
        ];
        Workspace whole = Evaluated(history);
        double[] limits = new double[3 * Rows];
        var model = new LifeModel(history);
        model.FillLimits(Drawn(model), Rows, limits);
        for (int row = 0; row < Rows; row++)
        {
            double end = double.PositiveInfinity;
            for (int mode = 0; mode < 3; mode++)
            {
                double[] rate = [.. parts.Select(p => FailureChances.Used(mode, p, row, 1))];
                double By(double km) => (rate[0] * Math.Min(km, first)) + (rate[1] * Math.Clamp(km - first, 0, second - first))
                    + (rate[2] * Math.Max(0, km - second));
                foreach (double km in new[] { 1, 9_999, first, 10_001, 20_000, second, 40_000, 1e6 })
                {
                    Assert.Equal(By(km), FailureChances.Used(mode, whole, row, km), 1e-12 * By(km));
                }

                double limit = limits[(3 * row) + mode];
                double left = limit - By(first), rest = limit - By(second);
                end = Math.Min(end, left < 0 ? limit / rate[0] : rest < 0 ? first + (left / rate[1]) : second + (rest / rate[2]));
            }

            Assert.Equal(end, whole.LifeKm[row], 1e-12 * end);
        }

        Span<double> batch = new double[Rows];
        for (int mode = 0; mode < 3; mode++)
        {
            whole.Rates!.Curves[mode].FillUsed(Rows - 3, 30_000, batch);
            for (int row = 0; row < Rows - 3; row++)
            {
                double one = FailureChances.Used(mode, whole, row, 30_000);
                Assert.Equal(one, batch[row], 1e-14 * one);
            }
        }
    }

    // The rate at an age by a vehicle that does not age and has what is left of damper and wall then; Simpson's rule with 40
    // steps a stretch.
    // 0.1 %; without renewal the rate has its least between two ages, and the curve keeps between its ends: 0.34 % there.
    [Theory]
    [InlineData(false, 30_000, 4e-3)]
    [InlineData(true, 30_000, 1e-3)]
    [InlineData(true, 90_000, 1e-3)]
    public void With_ageing_the_sum_is_the_integral(bool renewed, double bend, double tolerance)
    {
        const double required = 100_000, wear1 = 0.3, wear2 = 0.5, rust1 = 0.4, rust2 = 0.8;
        Scenario certain = TripCases.CertainVehicle with { RequiredKm = required };
        Scenario ageing = ThreeModes.With(
            certain, (Quantities.DamperWear, new Value.Certain(wear1)), (Quantities.CorrosionRate, new Value.Certain(rust1)));
        Change[] changes =
        [
            new Change.ToValue("vehicle.damper_wear_per_100000_km", new Value.Certain(wear2)),
            new Change.ToValue("axle.corrosion_mm_per_100000_km", new Value.Certain(rust2)), new Change.Times("vehicle.tyre_n_per_mm", 0.9),
        ];
        Scenario history = Histories.From(ageing, bend, changes);
        history = history with { History = [history.History[0], history.History[1] with { RenewsDampers = renewed }] };
        double damper = certain.Find(Quantities.DamperRate)!.Value.Nominal, tyre = certain.Find(Quantities.TyreRate)!.Value.Nominal;
        double Rate(double km, bool isSecond)
        {
            double u = Math.Min(km, bend) / 1e5, v = Math.Max(0, km - bend) / 1e5;
            double left = (renewed && isSecond ? 1 : Math.Pow(1 - wear1, u)) * Math.Pow(1 - wear2, v);
            Scenario then = ThreeModes.With(
                Remedy.Apply(certain, new Remedy("", null,
                [
                    new Change.ToValue("vehicle.damper_n_s_per_mm", new Value.Certain(damper * left)),
                    new Change.ToValue("vehicle.tyre_n_per_mm", new Value.Certain(isSecond ? 0.9 * tyre : tyre)),
                ])),
                (Quantities.CorrosionLoss, new Value.Certain((rust1 * u) + (rust2 * v))));
            return Evaluated(then).DamagePerKm[0];
        }

        double Integral(double from, double to, bool isSecond)
        {
            const int steps = 40;
            double h = (to - from) / steps;
            return h / 3 * Enumerable.Range(0, steps + 1)
                .Sum(i => (i is 0 or steps ? 1 : i % 2 == 1 ? 4 : 2) * Rate(from + (i * h), isSecond));
        }

        Workspace whole = Evaluated(history);
        double first = Integral(0, bend, false);
        foreach (double km in new[] { bend / 2, bend, (bend + required) / 2, required })
        {
            double exact = km <= bend ? Integral(0, km, false) : first + Integral(bend, km, true);
            Assert.Equal(exact, FailureChances.Used(0, whole, 0, km), tolerance * exact);
        }

        Assert.Equal(FailureChances.Used(0, whole, 0, required) / required, whole.DamagePerKm[0], 1e-12 * whole.DamagePerKm[0]);
        Assert.Equal(whole.DamagePerKm[0], whole.DamageByLeg.Sum(l => l[0]), 1e-12 * whole.DamagePerKm[0]);
    }

    // A wall that is gone before the bend, behind it, and never in the second stretch.
    [Fact]
    public void A_wall_that_is_gone_ends_the_life_in_its_stretch()
    {
        Scenario ageing = ThreeModes.With(TripCases.CertainVehicle, (Quantities.CorrosionRate, new Value.Certain(10)));
        double gone = ageing.Find(Quantities.Wall)!.Value.Nominal / 10 * 1e5;
        Scenario Slower(double bend, double rate) => Histories.From(
            ageing, bend, new Change.ToValue("axle.corrosion_mm_per_100000_km", new Value.Certain(rate)));
        Assert.Equal(double.PositiveInfinity, FailureChances.Used(0, Evaluated(Slower(gone + 1, 0)), 0, gone + 2));
        Assert.Equal(double.PositiveInfinity, FailureChances.Used(0, Evaluated(Slower(gone + 1, 0)), 0, gone * 1.0001));
        Workspace half = Evaluated(Slower(gone / 2, 5));
        Assert.True(double.IsFinite(FailureChances.Used(0, half, 0, gone * 1.4999)));
        Assert.Equal(double.PositiveInfinity, FailureChances.Used(0, half, 0, gone * 1.5001));
        Assert.True(double.IsFinite(FailureChances.Used(0, Evaluated(Slower(gone / 2, 0)), 0, gone * 100)));
        Assert.All(Enumerable.Range(0, Rows), row => Assert.InRange(half.LifeKm[row], 0, gone * 1.5 * (1 + 1e-12)));
    }

    // The same numbers, the same distribution made anew, once the value, the one word, the dampers of a vehicle whose dampers do not wear.
    [Fact]
    public void Changes_that_change_nothing_change_no_digit()
    {
        var ln = (Lognormal)((Value.Uncertain)Loaded.Find(Quantities.TyreRate)!.Value).Distribution;
        Change[] nothing =
        [
            new Change.ToValue("vehicle.payload_kg", new Value.Certain(100)), new Change.Times("vehicle.sprung_kg", 1),
            new Change.ToValue("vehicle.tyre_n_per_mm", new Value.Uncertain(new Lognormal(ln.MedianValue, ln.StandardDeviationOfLn), Knowledge.Varies)),
            new Change.ToWord(Change.CategoryName, WordChoice.Sure("E")), new Change.ToShare("leg1", Loaded.Legs[0].Share),
        ];
        Scenario same = Histories.Of(Loaded, ([], 20_000), (nothing, 30_000), ([], double.PositiveInfinity));
        Assert.Empty(Stretches.Of(same));
        Assert.True(new LifeModel(same).Modes.IsPlain);
        Workspace a = Evaluated(Loaded), b = Evaluated(same);
        Assert.Equal(a.LifeKm, b.LifeKm);
        Assert.Equal(a.DamagePerKm, b.DamagePerKm);
        Assert.Equal(Estimates(Loaded), Estimates(same));
    }

    // A stretch cut in two stays one; where another path is taken, for a change of the last bit, lives are the same to 1e-12.
    [Property(MaxTest = 40)]
    public void A_stretch_may_be_cut_in_two(PositiveInt cut, PositiveInt bend)
    {
        double at = 1_000 * (1 + (bend.Get % 300)), between = at + (500 * (1 + (cut.Get % 300)));
        Scenario one = Histories.From(Loaded, at, OtherUse);
        Scenario two = Histories.Of(
            Loaded, ([], at / 2), ([], at), (OtherUse, between), ([.. OtherUse.Reverse()], double.PositiveInfinity));
        Assert.Equal(2, Stretches.Of(two).Length);
        Assert.Equal(Evaluated(one).LifeKm, Evaluated(two).LifeKm);
        Change[] nearly = [.. OtherUse.Select(c => c is Change.Times t ? t with { Factor = t.Factor * (1 + 1e-15) } : c)];
        Scenario other = Histories.Of(Loaded, ([], at), (OtherUse, between), (nearly, double.PositiveInfinity));
        Assert.Equal(3, Stretches.Of(other).Length);
        Assert.All(Evaluated(one).LifeKm.Zip(Evaluated(other).LifeKm), x => Assert.Equal(x.First, x.Second, 1e-12 * x.First));
    }

    // With ageing a cut that stays one changes no digit either; one that does not follows the same vehicle between other ages.
    [Fact]
    public void With_ageing_a_cut_changes_no_more_than_the_curve_between_its_ages()
    {
        Scenario ageing = ThreeModes.With(
            Loaded, (Quantities.DamperWear, new Value.Certain(0.4)), (Quantities.CorrosionRate, new Value.Certain(0.5)));
        Scenario cut = Histories.Of(ageing, ([], 20_000), ([], double.PositiveInfinity));
        Assert.Equal(Evaluated(ageing).LifeKm, Evaluated(cut).LifeKm);
        Scenario nearly = Histories.From(ageing, 20_000, new Change.ToValue("vehicle.payload_kg", new Value.Certain(100 * (1 + 1e-12))));
        Workspace a = Evaluated(ageing), b = Evaluated(nearly);
        for (int row = 0; row < Rows; row++)
        {
            double used = FailureChances.Used(0, a, row, 50_000);
            Assert.Equal(used, FailureChances.Used(0, b, row, 50_000), 3e-3 * used);
        }
    }

    [Fact]
    public void Renewed_dampers_wear_from_their_stretch_on()
    {
        Scenario ageing = ThreeModes.With(TripCases.CertainVehicle, (Quantities.DamperWear, new Value.Certain(0.9)));
        Scenario history = Histories.Of(ageing, ([], 40_000), ([], double.PositiveInfinity));
        history = history with { History = [history.History[0], history.History[1] with { RenewsDampers = true }] };
        Workspace once = Evaluated(ageing), twice = Evaluated(history);
        double of = FailureChances.Used(0, once, 0, 40_000);
        Assert.Equal(of, FailureChances.Used(0, twice, 0, 40_000), 1e-2 * of);
        Assert.Equal(2 * of, FailureChances.Used(0, twice, 0, 80_000), 2e-2 * of);
        Assert.True(FailureChances.Used(0, once, 0, 80_000) > 2.1 * of);
    }

    [Fact]
    public void What_is_one_for_the_whole_life_is_known()
    {
        Assert.All(AxleMode.Of(ThreeModes.Scenario), m => Assert.True(Stretches.IsOfTheWholeLife(m.Scatter)));
        Assert.True(Stretches.IsOfTheWholeLife(Quantities.MinerSum));
        Assert.True(Stretches.IsOfTheWholeLife(Quantities.LifeScatter));
        Assert.False(Stretches.IsOfTheWholeLife(Quantities.StressFactor));
    }

    // A factor of a stretch held at a value is held in every stretch that shares it, and nowhere else.
    [Fact]
    public void A_factor_of_a_stretch_can_be_held()
    {
        var own = new Value.Uncertain(new Lognormal(350, 0.1), Knowledge.Varies);
        Change[] tyres = [new Change.ToValue("vehicle.tyre_n_per_mm", own)];
        Scenario history = Histories.Of(Loaded, ([], 10_000), (tyres, 20_000), (OtherUse[1..2], 30_000),
            ([new Change.ToValue("vehicle.tyre_n_per_mm", new Value.Uncertain(new Lognormal(350, 0.1), Knowledge.Varies))], double.PositiveInfinity));
        Assert.Equal("history.2.vehicle.tyre_n_per_mm", Assert.Single(new LifeModel(history).Factors.Factors, f => Stretches.IsNameOf(f.Name)).Name);
        Scenario held = Remedy.Apply(history, new Remedy("", null, [new Change.ToValue("history.2.vehicle.tyre_n_per_mm", new Value.Certain(333))]));
        Assert.DoesNotContain(new LifeModel(held).Factors.Factors, f => Stretches.IsNameOf(f.Name));
        Assert.Equal([null, 333.0, null, 333.0], held.History.Select(s => s.Changes.OfType<Change.ToValue>()
            .Where(c => c.Input == "vehicle.tyre_n_per_mm").Select(c => (double?)c.Value.Nominal).SingleOrDefault()));
        Assert.Equal(new LifeModel(Loaded).Factors.ColumnNames, new LifeModel(held).Factors.ColumnNames);
    }

    private static Scenario Made(Scenario scenario) => OtherUse.Aggregate(scenario, (s, c) => c.ApplyTo(s));

    private static double[] Estimates(Scenario scenario)
    {
        (RiskResult result, _) = RiskAnalysis.Run(
            new LifeModel(scenario), new StudySettings(4_096, 1, "sobol"), new RiskQuestion(), new RunOptions { Threads = 2 });
        return [.. result.Distances.Select(d => d.Probability.Estimate), .. result.Lives.Select(l => l.LifeKm.Estimate)];
    }

    private static double[][] Drawn(LifeModel model)
    {
        Workspace workspace = model.CreateWorkspace(Rows);
        double[][] values = model.CreateColumns(Rows);
        model.Draw(SamplingPlan.FromName("plain", Rows), 3, "s", 0, Rows, workspace, values);
        return values;
    }

    private static Workspace Evaluated(Scenario scenario)
    {
        var model = new LifeModel(scenario);
        Workspace workspace = model.CreateWorkspace(Rows);
        model.Evaluate(Drawn(model), Rows, workspace);
        return workspace;
    }
}
