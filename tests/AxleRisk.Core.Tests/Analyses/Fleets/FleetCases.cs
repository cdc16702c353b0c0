using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;

namespace AxleRisk.Core.Tests.Analyses.Fleets;

/// <summary>Fleets of the benchmark's vehicle.</summary>
internal static class FleetCases
{
    /// <summary>
    /// The life of the benchmark with every factor at its median, km. Source: an independent numpy implementation of the
    /// model, five figures.
    /// </summary>
    public const double MedianLifeKm = 486_590;

    /// <summary>The standard deviations of ln life that the Miner sum and the S-N scatter bring.</summary>
    public const double MinerSigma = 0.29;

    public static readonly double ScatterSigma = 0.2 * Math.Log(10);

    public static Value Sure(double x) => new Value.Certain(x);

    public static Value Lognormal(double median, double sigma, Knowledge knowledge = Knowledge.Varies) =>
        new Value.Uncertain(new Lognormal(median, sigma), knowledge);

    public static Fleet Fleet(long vehicles, Value kmPerYear, int months, double km) => new()
    {
        Vehicles = vehicles,
        KmPerYear = kmPerYear,
        WarrantyMonths = months,
        WarrantyKm = km,
        SaleShares = [1.0],
    };

    /// <summary>The benchmark where only the Miner sum and the S-N scatter are uncertain: life is lognormal.</summary>
    public static Scenario ScaleOnly(Knowledge miner = Knowledge.Varies) => With(
        FiveLegs.Scenario with
        {
            Inputs = [.. FiveLegs.Scenario.Inputs.Select(i =>
                i.Quantity == Quantities.MinerSum || i.Quantity == Quantities.LifeScatter ? i : i with { Value = Sure(i.Value.Nominal) })],
        },
        Quantities.MinerSum, Lognormal(1, MinerSigma, miner));

    public static Scenario With(Scenario scenario, Quantity quantity, Value value) => scenario with
    {
        Inputs = [.. scenario.Inputs.Select(i => i.Quantity == quantity ? i with { Value = value } : i)],
    };

    public static FleetResult Run(Scenario scenario, Fleet fleet, long n = 4096, int threads = 2, ulong seed = 1, string plan = "sobol") =>
        FleetAnalysis.Run(new LifeModel(scenario with { Fleet = fleet }), new StudySettings(n, seed, plan), new RunOptions
        { Threads = threads });
}
