using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Tests.Fixtures;

/// <summary>Scenarios with further checked sections that are like the first but for what is stated. Invented.</summary>
internal static class TwoSections
{
    public const string Name = "seat";

    /// <summary>The five-leg vehicle under more stress, certain but for its chances.</summary>
    public static Scenario Vehicle { get; } = TripCases.CertainVehicle with
    {
        Inputs =
        [
            .. TripCases.CertainVehicle.Inputs.Select(i => i.Quantity == Quantities.StressFactor
                ? i with { Value = new Value.Certain(1.6) } : i),
        ],
    };

    /// <summary>The same with a second section that is 4 % weaker.</summary>
    public static Scenario Certain { get; } = With(Vehicle, (Quantities.StressConcentration.Key, new Value.Certain(1.04)));

    /// <summary>A scenario with one more section, like the first but for some keys.</summary>
    public static Scenario With(Scenario scenario, params (string Key, Value Value)[] other) => Named(scenario, Name, other);

    /// <summary>The same under a name.</summary>
    public static Scenario Named(Scenario scenario, string name, params (string Key, Value Value)[] other)
    {
        var section = new CheckedSection(name, scenario.Shape, scenario.Detail);
        Value? Of(string key) => key == Quantities.SectionLifeScatter.Key
            ? new Value.Uncertain(new Lognormal(1, CertainModes.Sigma), Knowledge.Varies)
            : scenario.Inputs.FirstOrDefault(i => i.Quantity.Key == key && i.Section is null && i.Quantity.Section is "axle" or "fatigue"
                && i.Quantity.Key == key)?.Value;
        return scenario with
        {
            Sections = scenario.Sections.Add(section),
            Inputs =
            [
                .. scenario.Inputs,
                .. from quantity in Quantities.OfSections
                   let stated = other.FirstOrDefault(o => o.Key == quantity.Key).Value ?? Of(quantity.Key)
                   where stated is not null && !IsShared(quantity)
                   select new Input(section.NameOf(quantity.Key), quantity, null, stated, false) { Section = name },
            ],
        };

        bool IsShared(Quantity quantity) => quantity.Key.StartsWith("corrosion", StringComparison.Ordinal)
            && !other.Any(o => o.Key == quantity.Key);
    }
}
