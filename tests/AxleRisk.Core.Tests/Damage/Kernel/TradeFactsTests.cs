using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Rides;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

/// <summary>
/// What people who build and mend such axles say of a four-wheel drive on a class D track at 50 km/h: common practice, no source, met
/// within a quarter. Beside it an independent prototype of the same model, 3 digits, met within 1 %.
/// </summary>
public class TradeFactsTests
{
    private static readonly Vehicle Base = new()
    {
        SprungKg = 572,
        UnsprungKg = 96,
        SpringNPerMm = 45.8,
        DamperNsPerMm = 2.34,
        TyreNPerMm = 302,
        TyreDampingNsPerMm = 0.18,
        OutboardShare = 0.4,
        ContactMm = 207,
        ArmMm = 228,
        DiameterMm = 88,
        WallMm = 6.7,
        StressFactor = 0.91,
    };

    [Theory]
    // what                                        km/h  spring  wall  arm+  kg+  tyre  trade  prototype: damage over the base case's
    [InlineData("faster", 80, 1, 6.7, 0, 0, 1, 2.2, 1.75)]
    [InlineData("slower", 20, 1, 6.7, 0, 0, 1, 0.12, 0.117)]
    [InlineData("a stiffer spring", 50, 1.2, 6.7, 0, 0, 1, 1.07, 1.062)]
    [InlineData("a thinner wall", 50, 1, 4, 0, 0, 1, 4, 4.47)]
    [InlineData("a wide wheel with a heavy tyre", 50, 1, 6.7, 100, 13, 1.16, 6, 6.18)]
    public void A_change_costs_or_saves_what_the_trade_says(
        string what, double kmPerH, double spring, double wall, double arm, double unsprung, double tyre, double trade, double prototype)
    {
        Vehicle changed = Base with
        {
            SpringNPerMm = spring * Base.SpringNPerMm,
            WallMm = wall,
            ArmMm = Base.ArmMm + arm,
            UnsprungKg = Base.UnsprungKg + unsprung,
            TyreNPerMm = tyre * Base.TyreNPerMm,
        };
        double ratio = Damage(changed, kmPerH) / Damage(Base);
        Assert.True(Math.Abs(ratio - trade) <= 0.25 * trade, $"{what}: {ratio:G4}, the trade says {trade}");
        Near.Relative(prototype, ratio, 0.01);
    }

    // The trade: below 0.30. The prototype: 0.28.
    [Fact]
    public void A_poor_weld_leaves_less_than_a_third_of_the_life()
    {
        double ratio = Damage(Base) / Rows.DamagePerKm(Base, SnCatalogue.Find("DNV-RP-C203", "F3")!.Mean, Track(50));
        Assert.True(ratio < 0.30);
        Near.Relative(0.28, ratio, 0.01);
    }

    // The trade: about 10 % for 20 % more spring rate; the square root of 1.2 is 1.095, less the tyre's part.
    [Fact]
    public void A_stiffer_spring_bounces_faster_by_half_as_much()
    {
        static double Bounce(double spring) =>
            Ride.BodyBounceHz(new(572, 96, spring * 45.8e3, 2340, 302e3, 180, 0.4));
        Assert.InRange(Bounce(1.2) / Bounce(1), 1.075, 1.095);
    }

    private static RoadLeg Track(double kmPerH) => new(1, 1024, kmPerH);

    private static double Damage(Vehicle vehicle, double kmPerH = 50) => Rows.DamagePerKm(vehicle, Track(kmPerH));
}
