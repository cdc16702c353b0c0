using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Inspections;

/// <summary>
/// Life lognormal with the median and the spread of the log-linear fixture: by a distance d the depth is no greater than a where
/// life passes d / x(a), so that over the whole vehicles its distribution is P(life above d / x(a)) / P(life above d), in closed form.
/// </summary>
public sealed class CrackDepthsTests
{
    private static readonly double End = 0.8 * LogLinear.MedianKm;

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Quantiles_of_depth_are_those_of_the_closed_form(bool isDrawn)
    {
        Scenario scenario = isDrawn ? Scenario with
        {
            Inputs = [.. Scenario.Inputs.Select(i => i.Quantity == Quantities.LifeScatter && i.Value is Value.Uncertain u
                ? i with { Value = u with { Distribution = new Truncated(u.Distribution, -1.6, 1.6) } } : i)],
        } : Scenario;
        var model = new LifeModel(scenario);
        RiskResult result = RiskAnalysis.Run(
            model, new StudySettings(512, 3, RiskAnalysis.DefaultSampling(model)), new RiskQuestion(), new RunOptions { Threads = 2 })
            .Result;
        Assert.Equal([0.25 * End, 0.5 * End, 0.75 * End, End], result.Depths.Select(d => d.Km));
        foreach (DepthAtDistance d in result.Depths)
        {
            Within(0.05, d.Km, d.Low);
            Within(0.5, d.Km, d.Median);
            Within(0.95, d.Km, d.High);
        }
    }

    [Fact]
    public void The_base_case_has_the_depth_of_its_own_life()
    {
        BaseCaseResult result = BaseCaseAnalysis.Run(new LifeModel(Scenario));
        Assert.All(result.Depths, d => Assert.Equal(Depth.At(d.Km / result.LifeKm), d.Mm, 1e-9));
        Assert.Empty(BaseCaseAnalysis.Run(LogLinear.Model).Depths);
    }

    private static Scenario Scenario => LogLinear.Scenario with
    {
        RequiredKm = End,
        Crack = new Crack(),
        Inputs = [.. LogLinear.Scenario.Inputs, new("crack.initial_depth_mm", Quantities.InitialDepth, null, new Value.Certain(0.2), false)],
    };

    private static CrackDepth Depth => new(0.2, LogLinear.Scenario.Find(Quantities.Wall)!.Value.Nominal, 3);

    private static void Within(double share, double km, Interval told)
    {
        double Whole(double at) => 1 - LogLinear.Probability(at);
        double truth = RootFinder.FindRoot(a => (Whole(km / Depth.FractionAt(a)) / Whole(km)) - share);
        Assert.InRange(truth, told.Estimate - (1.5 * (told.High - told.Low)) - 1e-6, told.Estimate + (1.5 * (told.High - told.Low)) + 1e-6);
    }

    private static class RootFinder
    {
        public static double FindRoot(Func<double, double> of)
        {
            (double low, double high) = (0.2 + 1e-12, Depth.WallMm);
            for (int i = 0; i < 60; i++)
            {
                double middle = (low + high) / 2;
                (low, high) = of(middle) < 0 ? (middle, high) : (low, middle);
            }

            return low;
        }
    }
}
