using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Remedies;

/// <summary>How often the paired intervals contain the truth, on a case that has a closed form.</summary>
public sealed class CoverageTests
{
    private const double SdMiner = 0.29;

    private static readonly double SdScatter = 0.2 * Math.Log(10);

    [Theory]
    [InlineData("plain", false)]
    [InlineData("sobol", false)]
    [InlineData("plain", true)]
    public void The_paired_intervals_contain_the_truth_in_at_least_34_of_40_seeds(string plan, bool counted)
    {
        // All stresses are so small that they lie on the lower slope, 5: ln life is normal, and the remedy, a surer stress
        // factor, changes its standard deviation alone.
        LifeModel before = new(Small(0.20, counted));
        LifeModel after = new(Small(0.12, counted));
        double lnMedian = Math.Log(BaseCaseAnalysis.MedianFactorsLifeKm(before));
        double sdBefore = Sd(0.20), sdAfter = Sd(0.12);
        double lnKm = lnMedian - (1.5 * sdBefore);
        double pBefore = StandardNormal.Cumulative(-1.5), pAfter = StandardNormal.Cumulative((lnKm - lnMedian) / sdAfter);
        double lifeRatio = Math.Exp(StandardNormal.Quantile(0.1) * (sdAfter - sdBefore));

        int difference = 0, ratio = 0, life = 0;
        for (ulong seed = 1; seed <= 40; seed++)
        {
            CaseChange change = Comparison.Run([before, after], Math.Exp(lnKm), new StudySettings(counted ? 1_024 : 512, seed, plan),
                new RunOptions()).Cases[1].Change!;
            difference += Covers(change.Difference, pAfter - pBefore);
            ratio += Covers(change.Ratio, pAfter / pBefore);
            life += Covers(change.LifeRatio, lifeRatio);
        }

        // Of 40 intervals that hold with 95 %, fewer than 34 would contain the truth in 0.3 % of all cases (binomial).
        Assert.InRange(difference, 34, 40);
        Assert.InRange(ratio, 34, 40);
        Assert.InRange(life, 34, 40);
    }

    private static int Covers(Interval interval, double truth) => interval.Low <= truth && truth <= interval.High ? 1 : 0;

    private static double Sd(double sdStress) => Math.Sqrt((25 * sdStress * sdStress) + (SdMiner * SdMiner) + (SdScatter * SdScatter));

    private static Scenario Small(double sdStress, bool counted)
    {
        // A cut at 15 standard deviations changes nothing but keeps the exact method away.
        Distribution scatter = counted ? new Truncated(new Normal(0, 0.2), -3, 3) : new Normal(0, 0.2);
        Value Of(Input i) =>
            i.Quantity == Quantities.StressFactor ? new Value.Uncertain(new Lognormal(0.02, sdStress), Knowledge.Unknown)
            : i.Quantity == Quantities.MinerSum ? i.Value
            : i.Quantity == Quantities.LifeScatter ? new Value.Uncertain(scatter, Knowledge.Varies)
            : new Value.Certain(i.Value.Nominal);
        return FiveLegs.Scenario with { Inputs = [.. FiveLegs.Scenario.Inputs.Select(i => i with { Value = Of(i) })] };
    }
}
