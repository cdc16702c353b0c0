using AxleRisk.App.Screens.Editing;
using AxleRisk.Core.Scenarios;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace AxleRisk.App.Tests.Screens.Editing;

public class RoadMixTests
{
    private static readonly RoadMix Three = RoadMix.Of([new Leg("a", 'A', 0.5), new Leg("b", 'B', 0.3), new Leg("c", 'C', 0.2)]);

    [Fact]
    public void Raising_one_lowers_the_others_in_proportion()
    {
        RoadMix mix = Three.With(0, 0.75);
        Assert.Equal([0.75, 0.15, 0.1], mix.Shares.Select(s => Math.Round(s, 12)));
        Assert.Equal([75.0m, 15.0m, 10.0m], mix.Percents);
    }

    [Fact]
    public void A_locked_leg_stays()
    {
        RoadMix mix = Three.WithLock(1, true).With(0, 0.6);
        Assert.Equal([0.6, 0.3, 0.1], mix.Shares.Select(s => Math.Round(s, 12)));
        Assert.Equal([0.7 - RoadMix.Least, 0.3, RoadMix.Least], Three.WithLock(1, true).With(0, 1).Shares.Select(s => Math.Round(s, 12)));
        Assert.Equal(Three.Shares, Three.WithLock(1, true).WithLock(2, true).With(0, 0.9).Shares);
        Assert.Equal(Three.Shares, Three.With(0, double.NaN).Shares);
    }

    [Property]
    public Property It_always_adds_up_and_no_leg_vanishes() => Prop.ForAll(
        Gen.ListOf(Gen.Zip(Gen.Choose(0, 7), Gen.Choose(-200, 1200)), 12).Zip(Gen.ListOf(Gen.Choose(1, 1000), 8))
            .Zip(Gen.ListOf(Gen.Elements(true, false, false), 8)).ToArbitrary(),
        c =>
        {
            ((var moves, var weights), var locks) = c;
            double sum = weights.Sum();
            RoadMix mix = RoadMix.Of([.. weights.Select((w, i) => new Leg($"l{i}", 'A', w / sum))]);
            foreach ((bool isLocked, int i) in locks.Select((l, i) => (l, i)))
            {
                mix = mix.WithLock(i, isLocked);
            }

            bool good = true;
            foreach ((int leg, int share) in moves)
            {
                RoadMix next = mix.With(leg, share / 1000.0);
                good &= Math.Abs(next.Shares.Sum() - 1) < 1e-9 && next.Shares.All(s => s > 0) && next.Percents.Sum() == 100m
                    && Enumerable.Range(0, 8).All(i => i == leg || !locks[i] || next.Shares[i] == mix.Shares[i]);
                mix = next;
            }

            return good;
        });
}
