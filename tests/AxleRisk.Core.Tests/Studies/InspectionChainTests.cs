using AxleRisk.Core.Modes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Randomness;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using Xunit;

namespace AxleRisk.Core.Tests.Studies;

/// <summary>
/// One vehicle with looks: life lognormal with a median of 200,000 km and a standard deviation of ln of 0.6, a crack of 0.2 mm in a wall of
/// 6 mm that grows with an exponent of 3.
/// </summary>
public sealed class InspectionChainTests
{
    private const double MedianKm = 200_000, Sigma = 0.6;

    private static readonly CrackDepth Depth = new(0.2, 6, 3);
    private static readonly DetectionCurve Look = new(1.5, 4);

    /// <summary>Computed with scipy's adaptive quadrature; detection as in MIL-HDBK-1823A.</summary>
    [Fact]
    public void What_a_clean_look_proves_is_as_by_adaptive_quadrature()
    {
        InspectionChain none = Chain([(80, null), (120, null)]);
        Assert.Equal(0.14297787, none.CleanFails[1] / none.Clean[0], 1e-6);
        InspectionChain one = Chain([(80, Look), (120, null)]);
        Assert.Equal(0.07226572, one.CleanFails[1] / one.Clean[0], 1e-6);
        Assert.Equal(0.13492448, one.Found[0] / (one.Found[0] + one.Unfound[0]), 1e-6);
        InspectionChain two = Chain([(60, Look), (80, Look), (120, null)]);
        Assert.Equal(0.06272260, two.CleanFails[2] / two.Clean[1], 1e-6);
    }

    /// <summary>A sum over a million even steps of the score, with the formulas written out: four looks of two methods, one of
    /// them steep. The steps leave 4e-6 where a life ends within one.</summary>
    [Theory]
    [InlineData(1.5, 4, 4e-5)]
    [InlineData(1, 1.2, 4e-5)]
    [InlineData(2, 2, 4e-5)]
    public void Chances_of_each_look_are_sums_over_lives(double a50, double a90, double accuracy)
    {
        var other = new DetectionCurve(a50, a90);
        (double Km, DetectionCurve? Look)[] looks = [(40, Look), (70, other), (100, Look), (130, other), (160, null)];
        InspectionChain chain = Chain(looks);
        double[] fails = new double[5], clean = new double[5];
        const int steps = 1_000_000;
        for (int i = 0; i < steps; i++)
        {
            double z = -8 + (16 * (i + 0.5) / steps), life = MedianKm * Math.Exp(Sigma * z);
            double left = 16.0 / steps * StandardNormal.Density(z);
            for (int k = 0; k < 5; k++)
            {
                double x = looks[k].Km * 1000 / life;
                if (x > 1)
                {
                    fails[k] += left;
                    break;
                }

                double mm = Math.Pow(Math.Pow(0.2, -0.5) + (x * (Math.Pow(6, -0.5) - Math.Pow(0.2, -0.5))), -2);
                left *= 1 - (looks[k].Look?.Of(mm) ?? 0);
                clean[k] += left;
            }
        }

        for (int k = 0; k < 5; k++)
        {
            Assert.Equal(fails[k], chain.CleanFails[k], (accuracy * fails[k]) + 4e-6);
            Assert.Equal(clean[k], chain.Clean[k], accuracy * clean[k]);
        }
    }

    /// <summary>Nothing is lost: at each point a vehicle has failed, is found or is not found.</summary>
    [Fact]
    public void Probabilities_add_up()
    {
        InspectionChain chain = Chain([(40, Look), (80, null), (100, Look), (120, Look), (200, null)], otherHazardPer100: 0.2);
        double failed = 0;
        for (int k = 0; k < 5; k++)
        {
            failed += chain.Fails[k];
            Assert.Equal(1, failed + chain.Found[k] + chain.Unfound[k], 1e-9);
            Assert.InRange(chain.Missed[k], 0, chain.Unfound[k]);
        }
    }

    /// <summary>Without looks what is clean is what is whole: the product of the modes; also from where the vehicle was seen.</summary>
    [Fact]
    public void Without_looks_the_clean_are_the_whole()
    {
        double Whole(double km) => StandardNormal.Upper(Math.Log(km * 1000 / MedianKm) / Sigma) * Math.Exp(-0.2 * km / 100);
        InspectionChain chain = Chain([(40, null), (80, null), (200, null)], otherHazardPer100: 0.2);
        Assert.Equal(1, chain.Whole, 1e-12);
        double[] km = [40, 80, 200];
        for (int k = 0; k < 3; k++)
        {
            Assert.Equal(Whole(km[k]), chain.Clean[k], 1e-9);
            Assert.Equal(Whole(km[k]), chain.Unfound[k], 1e-9);
            Assert.Equal((k == 0 ? 1 : Whole(km[k - 1])) - Whole(km[k]), chain.Fails[k], 1e-9);
        }

        (chain.WholeUsed, chain.OthersSurviveBefore, chain.Weight) = (30, Math.Exp(-0.2 * 0.3), 0.7);
        chain.Fill(Sigma, Depth);
        Assert.Equal(0.7 * Whole(30), chain.Whole, 1e-9);
        Assert.Equal(0.7 * Whole(40), chain.Clean[0], 1e-9);
        Assert.Equal(0.7 * (Whole(30) - Whole(40)), chain.Fails[0], 1e-9);
        Assert.Equal(0.7 * (Whole(30) - Whole(40)), chain.CleanFails[0], 1e-9);
        Assert.Equal(0.7 * (Whole(80) - Whole(200)), chain.CleanFails[2], 1e-9);
    }

    /// <summary>A look that cannot find changes nothing: the closed form of the life.</summary>
    [Fact]
    public void Useless_looks_change_nothing()
    {
        var blind = new DetectionCurve(1e9, 2e9);
        InspectionChain chain = Chain([(60, blind), (120, blind), (180, null)]);
        double failed = 0;
        for (int k = 0; k < 3; k++)
        {
            failed += chain.Fails[k];
            Assert.Equal(StandardNormal.Cumulative(Math.Log(60_000 * (k + 1) / MedianKm) / Sigma), failed, 1e-12);
            Assert.Equal(0, chain.Found[k], 1e-12);
        }
    }

    /// <summary>
    /// A look that finds every crack makes every vehicle new: it fails between two looks as a new one does, Phi(ln(step / median) / sigma).
    /// </summary>
    [Fact]
    public void Perfect_looks_make_new_vehicles()
    {
        var sure = new DetectionCurve(1e-9, 2e-9);
        InspectionChain chain = Chain([(50, sure), (100, sure), (150, null)]);
        double one = StandardNormal.Cumulative(Math.Log(50_000 / MedianKm) / Sigma);
        Assert.Equal(one, chain.Fails[0], 1e-9);
        Assert.Equal(one * (1 - one), chain.Fails[1], 1e-9);
        Assert.Equal(one * (1 - one) * (1 - one), chain.Fails[2], 1e-9);
        Assert.Equal(0, chain.Missed[1], 1e-12);
    }

    /// <summary>Of a life that is certain: found at the first look at which the crack is deep enough, then again as long after
    /// the repair.</summary>
    [Fact]
    public void A_certain_life_is_followed()
    {
        var step = new DetectionCurve(1.335869, 1.335869); // at three quarters of life, by the test of depths
        var chain = new InspectionChain(4);
        Fill(chain, [(100, step), (160, step), (210, step), (330, null)], 0);
        chain.Fill(0, Depth);
        Assert.Equal([0, 1, 0, 0], chain.Found);
        Assert.Equal([1, 0, 1, 1], chain.Unfound);
        chain.Used[3] = 370; // 210 after the repair at 160
        chain.Fill(0, Depth);
        Assert.Equal([0, 0, 0, 1], chain.Fails);
    }

    /// <summary>
    /// Brute force: single lives with every look drawn, repaired vehicles with a new life of 0.8 of the old; counts within five standard
    /// errors of the chain's probabilities.
    /// </summary>
    [Fact]
    public void Single_lives_with_every_look_drawn_agree()
    {
        (double Km, DetectionCurve? Look)[] looks = [(60, Look), (90, Look), (120, new DetectionCurve(0.8, 1.6)), (160, Look), (200, null)];
        var chain = new InspectionChain(5);
        Fill(chain, looks, 0);
        for (int k = 1; k < chain.FromScratch.Length; k++)
        {
            chain.FromScratch[k] += Math.Log(0.8);
        }

        chain.Fill(Sigma, Depth);
        const int lives = 1_000_000;
        double[][] u = [.. Enumerable.Range(0, 11).Select(stream => // of life first; of each look and of the life after it
        {
            var column = new double[lives];
            new RandomStream(new StreamKey(20261128, $"{stream}")).FillUnit(0, column);
            return column;
        })];
        double[] fails = new double[5], found = new double[5], missed = new double[5];
        for (int i = 0; i < lives; i++)
        {
            (double from, double life) = (0, MedianKm * Math.Exp(Sigma * StandardNormal.Quantile(u[0][i])));
            for (int k = 0; k < 5; k++)
            {
                double x = (looks[k].Km * 1000 - from) / life;
                if (x > 1)
                {
                    fails[k]++;
                    break;
                }

                if (looks[k].Look is not { } look)
                {
                    continue;
                }

                double mm = Math.Pow(Math.Pow(0.2, -0.5) + (x * (Math.Pow(6, -0.5) - Math.Pow(0.2, -0.5))), -2);
                if (u[1 + k][i] < look.Of(mm))
                {
                    found[k]++;
                    (from, life) = (looks[k].Km * 1000, 0.8 * MedianKm * Math.Exp(Sigma * StandardNormal.Quantile(u[6 + k][i])));
                }
                else if (mm >= look.A50Mm)
                {
                    missed[k]++;
                }
            }
        }

        for (int k = 0; k < 5; k++)
        {
            Within(chain.Fails[k], fails[k]);
            Within(chain.Found[k], found[k]);
            Within(chain.Missed[k], missed[k]);
        }

        static void Within(double p, double count) => Assert.InRange(
            count / lives, p - (5 * Math.Sqrt(p * (1 - p) / lives)) - 1e-12, p + (5 * Math.Sqrt(p * (1 - p) / lives)) + 1e-12);
    }

    private static InspectionChain Chain((double Km, DetectionCurve? Look)[] looks, double otherHazardPer100 = 0)
    {
        var chain = new InspectionChain(looks.Length);
        Fill(chain, looks, otherHazardPer100);
        chain.Fill(Sigma, Depth);
        return chain;
    }

    // Damage 1 per 1000 km, so that the limit is the life in thousands of km.
    private static void Fill(InspectionChain chain, (double Km, DetectionCurve? Look)[] looks, double otherHazardPer100)
    {
        chain.FromScratch.AsSpan().Fill(Math.Log(MedianKm / 1000));
        for (int k = 0; k < looks.Length; k++)
        {
            (chain.Used[k], chain.Looks[k]) = (looks[k].Km, looks[k].Look);
            chain.OthersSurvive[k] = Math.Exp(-otherHazardPer100 * looks[k].Km / 100);
        }
    }
}
