using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Tests.Fixtures;

/// <summary>
/// The benchmark's gravel leg with three uncertain inputs that all scale life: ln life is linear in their standard normals, so that
/// P(life &lt; km) = Phi((ln km - ln median) / sigma). Source: definition of the lognormal distribution. Invented.
/// </summary>
internal static class LogLinear
{
    public const double RatioSigma = 0.8;

    private const int Gravel = 3;

    public static double ScaleSigma { get; } = Math.Sqrt((0.29 * 0.29) + Math.Pow(0.20 * Math.Log(10), 2));

    public static double Sigma { get; } = Math.Sqrt((RatioSigma * RatioSigma) + (ScaleSigma * ScaleSigma));

    public static Scenario Scenario { get; } = TripCases.CertainVehicle with
    {
        Legs = [TripCases.CertainVehicle.Legs[Gravel] with { Share = 1 }],
        Inputs =
        [
            .. TripCases.CertainVehicle.Inputs.Where(i => i.Leg is null or Gravel).Select(i => i.Leg is null ? i : i with { Leg = 0 }),
            new Input("fatigue.damage_ratio", Quantities.DamageRatio, null,
                new Value.Uncertain(new Lognormal(1, RatioSigma), Knowledge.Varies), false),
        ],
    };

    public static LifeModel Model { get; } = new(Scenario);

    public static double MedianKm { get; } = BaseCaseAnalysis.MedianFactorsLifeKm(Model);

    public static double Probability(double km) => StandardNormal.Cumulative(Math.Log(km / MedianKm) / Sigma);

    public static double KmOf(double probability) => MedianKm * Math.Exp(Sigma * StandardNormal.Quantile(probability));

    public static LifeModel Requiring(double km) => new(Scenario with { RequiredKm = km });
}
