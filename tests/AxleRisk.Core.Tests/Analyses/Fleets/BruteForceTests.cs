using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Randomness;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;
using static AxleRisk.Core.Tests.Analyses.Fleets.FleetCases;

namespace AxleRisk.Core.Tests.Analyses.Fleets;

/// <summary>Whole fleets simulated vehicle by vehicle, each life drawn: no conditional probability, no nested plan, no mixture.</summary>
public sealed class BruteForceTests
{
    private const int Fleets = 600;
    private const int Vehicles = 50;
    private const int Months = 30;
    private const int SaleMonths = 6;
    private const double KmLimit = 90_000;

    private static readonly Distribution Owners = new Lognormal(40_000, 0.3);

    [Fact]
    public void Simulated_fleets_have_the_predicted_claims()
    {
        Fleet fleet = Fleet(Vehicles, new Value.Uncertain(Owners, Knowledge.Varies), Months, KmLimit) with
        {
            SaleShares = [.. Enumerable.Repeat(1.0 / SaleMonths, SaleMonths)],
        };
        FleetResult result = Run(FiveLegs.Scenario, fleet, 32_768);
        (double[] claims, double[] early) = Simulate(12);

        // Four standard errors of the 600 fleets and of the estimate.
        Close(result.Claims.Expected, claims);
        Close(result.Months[11].SoFar.Expected, early);

        // The share of fleets in the predictive interval is binomial; an integer interval holds a little more than 95 %.
        double inside = claims.Count(c => c >= result.Claims.Low && c <= result.Claims.High) / (double)Fleets;
        double above = claims.Count(c => c > result.Claims.High) / (double)Fleets;
        Assert.True(inside > 0.95 - (4 * Math.Sqrt(0.95 * 0.05 / Fleets)), $"{inside}");
        Assert.InRange(above, 0.0001, 0.025 + (4 * Math.Sqrt(0.025 * 0.975 / Fleets)));
    }

    private static void Close(Interval expected, double[] simulated)
    {
        RunningMoments moments = default;
        foreach (double x in simulated)
        {
            moments.Add(x);
        }

        double ours = (expected.High - expected.Low) / (2 * 2.13); // Student, 15 degrees of freedom
        Assert.Equal(moments.Mean, expected.Estimate, 4 * Math.Sqrt((ours * ours) + (moments.StandardError * moments.StandardError)));
    }

    private static (double[] All, double[] Early) Simulate(int earlyMonth)
    {
        var model = new LifeModel(FiveLegs.Scenario);
        Workspace workspace = model.CreateWorkspace(Vehicles);
        double[][] values = model.CreateColumns(Vehicles);
        var plan = new PlainMonteCarlo();
        int stress = model.Factors.Find("fatigue.stress_factor")!.FirstColumn;
        double[] owner = new double[Vehicles];
        double[] sale = new double[Vehicles];
        var all = new double[Fleets];
        var early = new double[Fleets];
        for (int fleet = 0; fleet < Fleets; fleet++)
        {
            model.Draw(plan, 11, "brute", (long)fleet * Vehicles, Vehicles, workspace, values);
            values[stress].AsSpan().Fill(values[stress][0]); // the one unknown factor: the fleet shares it
            model.Evaluate(values, Vehicles, workspace);
            new RandomStream(new StreamKey(11, "owner")).FillUnit((long)fleet * Vehicles, owner);
            new RandomStream(new StreamKey(11, "sale")).FillUnit((long)fleet * Vehicles, sale);
            for (int i = 0; i < Vehicles; i++)
            {
                double perMonth = Owners.Quantile(owner[i]) / 12;
                double failedAtAge = workspace.LifeKm[i] / perMonth;
                double soldAt = Math.Floor(SaleMonths * sale[i]) + 0.5;
                bool isClaim = workspace.LifeKm[i] < KmLimit && failedAtAge < Months;
                all[fleet] += isClaim ? 1 : 0;
                early[fleet] += isClaim && soldAt + failedAtAge < earlyMonth ? 1 : 0;
            }
        }

        return (all, early);
    }
}
