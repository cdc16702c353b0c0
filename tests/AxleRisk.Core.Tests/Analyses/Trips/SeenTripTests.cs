using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Trips;

/// <summary>Trips of a vehicle that was seen, against single lives with every look drawn.</summary>
public sealed class SeenTripTests
{
    private const int Lives = 300_000;

    private static readonly double M = LogLinear.MedianKm;
    private static readonly StudySettings Usual = new(8_192, 3, "sobol");

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_trip_after_clean_looks_is_that_of_the_lives_that_were_seen_so(bool isCounted)
    {
        Evidence evidence = SeenLives.Clean(0.35 * M, 0.2 * M, 0.32 * M);
        double[] at = [0.4 * M, 0.55 * M, 0.65 * M]; // the start, the first leg's end, the trip's
        TripResult result = Run(evidence, at, isCounted);
        (double known, double reached, double first, double second) = (0, 0, 0, 0);
        double[] found = new double[3], fails = new double[3];
        SeenLives.Draw(evidence, Lives, (life, _, uniform) =>
        {
            known++;
            if (life <= at[0])
            {
                return;
            }

            reached++;
            first += life <= at[1] ? 1 : 0;
            second += life > at[1] && life <= at[2] ? 1 : 0;
            for (int plan = 0; plan < 3; plan++) // before the first leg, before the second, before both
            {
                bool goes = true;
                for (int leg = 0; leg < 2 && goes; leg++)
                {
                    if (plan != 1 - leg && uniform(leg) < SeenLives.Finds(at[leg] / life))
                    {
                        (found[plan], goes) = (found[plan] + 1, false);
                    }
                    else if (life <= at[leg + 1])
                    {
                        (fails[plan], goes) = (fails[plan] + 1, false);
                    }
                }
            }
        });
        SeenLives.Within(result.Reached, reached, known);
        SeenLives.Within(result.Probability, first + second, reached);
        SeenLives.Within(result.Legs[0].Conditional, first, reached);
        SeenLives.Within(result.Legs[1].Conditional, second, reached - first);
        Assert.True(result.Seen!.Unseen.Estimate > 1.2 * result.Probability.Estimate);
        Assert.Equal(
            (LogLinear.Probability(at[2]) - LogLinear.Probability(at[0])) / (1 - LogLinear.Probability(at[0])),
            result.Seen.Unseen.Estimate, result.Seen.Unseen.High - result.Seen.Unseen.Low);
        Assert.Equal(["leg1", "leg2", null], result.Looks.Select(l => l.Leg));

        // Looks go by the first 4,096 vehicles of these 8,192, but what fails without one is known of all.
        Assert.Equal(result.Probability.Estimate, result.Looks[0].FailsAfter.Estimate, 1e-12);
        Assert.Equal(result.Probability.High, result.Looks[^1].FailsAfter.High, 1e-9);
        Assert.Equal(result.Legs[1].Conditional.Estimate, result.Looks[1].FailsAfter.Estimate, 1e-12);
        for (int plan = 0; plan < 3; plan++)
        {
            SeenLives.Within(result.Looks[plan].Trip, fails[plan], reached);
            SeenLives.Within(result.Looks[plan].Found, found[plan], reached);
        }
    }

    /// <summary>
    /// A look that finds nothing changes nothing: looks go by the first 4,096 of the 8,192 vehicles, and have to say of these what the trip
    /// says of all.
    /// </summary>
    [Fact]
    public void A_look_that_finds_nothing_leaves_the_trip_as_it_is()
    {
        Scenario scenario = TripCases.Like(
            SeenLives.Scenario(Evidence.None) with { Inspections = [SeenLives.Dye with { Detection = new DetectionCurve(1e6, 2e6) }] },
            0.4 * M, (0, 0.15 * M), (0, 0.1 * M));
        TripResult result = TripAnalysis.Run(scenario, Usual, new TripQuestion(), new RunOptions());
        Assert.All([0, 2], place =>
        {
            Assert.Equal(0, result.Looks[place].Found.Estimate, 1e-12);
            Assert.Equal(1, result.Looks[place].Trip.Estimate / result.Probability.Estimate, 1e-9);
            Assert.Equal(1, result.Looks[place].FailsAfterClean.Estimate / result.Probability.Estimate, 1e-9);
        });
        Assert.Equal(1, result.Looks[1].Trip.Estimate / result.Probability.Estimate, 1e-9);
        Assert.Equal(1, result.Looks[1].FailsAfterClean.Estimate / result.Legs[1].Conditional.Estimate, 1e-9);
    }

    /// <summary>A found crack with a measured depth, against a sum over lives: 400 steps of the ratio, 4,000 of the scatter.</summary>
    [Fact]
    public void A_trip_after_a_found_crack_is_a_sum_over_lives()
    {
        double look = 0.3 * M;
        Evidence evidence = SeenLives.Clean(look, look) with
        { Looks = [new CrackLook(SeenLives.Dye, look, true, 1.2, 0.4)] };
        TripResult result = Run(evidence, [look, 0.36 * M, 0.42 * M], false);
        (double known, double fails) = (0, 0);
        double wall = LogLinear.Scenario.Find(Quantities.Wall)!.Value.Nominal;
        for (int i = 0; i < 400; i++)
        {
            double t = -6 + (12 * (i + 0.5) / 400);
            for (int j = 0; j < 4_000; j++)
            {
                double z = -6 + (12 * (j + 0.5) / 4_000), life = M * Math.Exp((LogLinear.RatioSigma * t) + (LogLinear.ScaleSigma * z));
                if (life > look)
                {
                    double x = look / life, mm = Math.Pow(Math.Pow(0.2, -0.5) + (x * (Math.Pow(wall, -0.5) - Math.Pow(0.2, -0.5))), -2);
                    double weight = StandardNormal.Density(t) * StandardNormal.Density(z) * SeenLives.Finds(x)
                        * Math.Exp(-0.5 * (1.2 - mm) * (1.2 - mm) / 0.16);
                    known += weight;
                    fails += life <= 0.42 * M ? weight : 0;
                }
            }
        }

        Assert.Equal(1, result.Reached.Estimate, 1e-9);
        double wide = result.Probability.High - result.Probability.Low;
        Assert.Equal(fails / known, result.Probability.Estimate, wide + (0.002 * fails / known));
    }

    /// <summary>What was measured and is known of a vehicle: the posterior of a normal by its closed form, and a choice held.</summary>
    [Fact]
    public void What_was_measured_is_given()
    {
        Scenario scenario = SeenLives.Scenario(Evidence.None);
        Input ratio = scenario.Find(Quantities.DamageRatio)!;
        scenario = scenario with
        {
            Inputs = [.. scenario.Inputs.Select(i => i == ratio
                ? i with { Value = new Value.Uncertain(new Normal(1, 0.2), Knowledge.Varies) } : i)],
            Evidence = new Evidence { Measured = [new Measurement(ratio.Name, 1.3, 0.1)] },
        };
        TripResult result = TripRiskTests.Run(TripCases.Like(scenario, 0.4 * M, (0, 0.2 * M)), Usual);

        // Precisions 25 and 100 add up: mean (25 + 130) / 125, variance 1 / 125.
        (double reached, double fails) = (0, 0);
        for (int i = 0; i < 2_000; i++)
        {
            double z = -7 + (14 * (i + 0.5) / 2_000), damage = (155 / 125.0) + (z / Math.Sqrt(125));
            double F(double km) => StandardNormal.Cumulative(Math.Log(km * damage / M) / LogLinear.ScaleSigma);
            reached += StandardNormal.Density(z) * (1 - F(0.4 * M));
            fails += StandardNormal.Density(z) * (F(0.6 * M) - F(0.4 * M));
        }

        Assert.Equal(fails / reached, result.Probability.Estimate, result.Probability.High - result.Probability.Low);
        Assert.InRange(result.Seen!.Effective, 500, 6_000);
    }

    /// <summary>Two looks with an axle of two sections: the crack is the first's, and the second fails beside it.</summary>
    [Fact]
    public void A_second_section_fails_beside_the_crack_that_was_looked_for()
    {
        Evidence evidence = SeenLives.Clean(0.3 * M, 0.3 * M);
        Scenario scenario = TwoSections.With(SeenLives.Scenario(evidence));
        TripResult result = TripRiskTests.Run(TripCases.Like(scenario, 0.35 * M, (0, 0.2 * M)), Usual);
        (double reached, double fails) = (0, 0);
        SeenLives.Draw(evidence, Lives, (life, median, uniform) =>
        {
            double both = Math.Min(life, median * Math.Exp(CertainModes.Sigma * StandardNormal.Quantile(uniform(0))));
            reached += both > 0.35 * M ? 1 : 0;
            fails += both > 0.35 * M && both <= 0.55 * M ? 1 : 0;
        });
        SeenLives.Within(result.Probability, fails, reached);
    }

    /// <summary>A rare trip goes by importance sampling, given what was seen.</summary>
    [Fact]
    public void A_rare_trip_after_a_clean_look_is_a_sum_over_lives()
    {
        double start = 0.01 * M, end = 0.0125 * M;
        Evidence evidence = SeenLives.Clean(start, start);
        TripResult result = Run(evidence, [start, 0.012 * M, end], false);
        Assert.NotEmpty(result.Rare);
        (double whole, double fails) = (0, 0);
        for (int i = 0; i < 1_000; i++)
        {
            double t = -8 + (16 * (i + 0.5) / 1_000);
            for (int j = 0; j < 2_000; j++)
            {
                double z = -8 + (16 * (j + 0.5) / 2_000), life = M * Math.Exp((LogLinear.RatioSigma * t) + (LogLinear.ScaleSigma * z));
                double clean = life > start ? 1 - SeenLives.Finds(start / life) : 0;
                double weight = StandardNormal.Density(t) * StandardNormal.Density(z) * clean;
                whole += weight;
                fails += life <= end ? weight : 0;
            }
        }

        Assert.InRange(fails / whole, 1e-8, 1e-3);
        Assert.InRange(result.Probability.Estimate / (fails / whole), 0.8, 1.25);
        Assert.InRange(fails / whole, 0.9 * result.Probability.Low, 1.1 * result.Probability.High);
    }

    /// <summary>The card's own look is at the card's speeds: of a card that drives as planned it is that of the trip.</summary>
    [Fact]
    public void The_card_of_a_seen_vehicle_keeps_its_target_and_looks_at_its_own_speeds()
    {
        Evidence evidence = SeenLives.Clean(0.35 * M, 0.3 * M);
        Scenario scenario = TripCases.Like(SeenLives.Scenario(evidence), 0.4 * M, (0, 0.1 * M), (0, 0.1 * M));
        TripResult planned = TripRiskTests.Run(scenario, Usual);
        double easy = Math.Min(0.9, 3 * planned.Probability.Estimate), hard = 0.5 * planned.Probability.Estimate;
        TripResult asPlanned = TripRiskTests.Run(scenario, Usual, new TripQuestion { Target = easy, WithCard = true });
        TripResult slower = TripRiskTests.Run(scenario, Usual, new TripQuestion { Target = hard, WithCard = true });
        Assert.True(asPlanned.Card!.KeepsTarget && slower.Card!.KeepsTarget);
        Assert.True(slower.Card.Hours > asPlanned.Card.Hours);
        Interval same = asPlanned.Card.Look!.FailsAfterClean, trip = planned.BestLook!.FailsAfterClean;
        Assert.InRange(same.Estimate, trip.Estimate * 0.5, trip.Estimate * 1.1); // speeds are rounded down
        Assert.True(slower.Card.Look!.FailsAfterClean.High < trip.Low);
        Assert.Null(asPlanned.KeepingLook);
        Assert.True(slower.KeepingLook!.Trip.High <= hard);
    }

    private static TripResult Run(Evidence evidence, double[] at, bool isCounted) => TripRiskTests.Run(
        TripCases.Like(SeenLives.Scenario(evidence), at[0], (0, at[1] - at[0]), (0, at[2] - at[1])),
        isCounted ? new StudySettings(100_000, 3, "plain") : Usual, new TripQuestion { IsCounted = isCounted });
}
