using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Tests.Fixtures;

/// <summary>
/// The five-leg case with a weak section, a small bearing and offset wheels, so that each mode of failure counts. Invented.
/// </summary>
internal static class ThreeModes
{
    public static Scenario Scenario { get; } = With(
        FiveLegs.With(Quantities.StressFactor, new Value.Uncertain(new Lognormal(1.45, 0.20), Knowledge.Unknown)) with
        { Bearing = BearingKind.Roller },
        (Quantities.YieldStrength, new Value.Uncertain(Lognormal.FromMedianAndCov(225, 0.07), Knowledge.Varies)),
        (Quantities.YieldScatter, Quantities.YieldScatter.Default!),
        (Quantities.BearingRating, new Value.Certain(14)), (Quantities.BearingSpread, new Value.Certain(70)),
        (Quantities.BearingOverhang, new Value.Certain(-30)), (Quantities.RollingRadius, new Value.Certain(350)),
        (Quantities.BearingScatter, Quantities.BearingScatter.Default!),
        (Quantities.WheelOffset, new Value.Uncertain(new Uniform(0, 40), Knowledge.Unknown)));

    public static Scenario With(Scenario scenario, params (Quantity Quantity, Value Value)[] inputs) => scenario with
    {
        Inputs = [.. scenario.Inputs,
            .. inputs.Select(i => new Input($"{i.Quantity.Section}.{i.Quantity.Key}", i.Quantity, null, i.Value, false))],
    };
}
