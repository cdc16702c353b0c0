using System.Collections.Immutable;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Tests.Fixtures;

/// <summary>The five-leg benchmark case, also shipped as scenarios/benchmark-five-legs.toml: 13 independent factors, invented.</summary>
internal static class FiveLegs
{
    private static readonly (double Share, double Roughness, double Speed)[] Use =
        [(0.20, 16, 80), (0.30, 64, 60), (0.25, 256, 50), (0.20, 1024, 40), (0.05, 4096, 25)];

    public static Scenario Scenario { get; } = Make();

    /// <summary>The same scenario with one input replaced.</summary>
    public static Scenario With(Quantity quantity, Value value) => Scenario with
    {
        Inputs = [.. Scenario.Inputs.Select(i => i.Quantity == quantity ? i with { Value = value } : i)],
    };

    private static Scenario Make()
    {
        ImmutableArray<Leg> legs = [.. Use.Select((u, i) => new Leg($"leg{i + 1}", null, u.Share))];
        var inputs = ImmutableArray.CreateBuilder<Input>();
        void Add(Quantity quantity, Value value) =>
            inputs.Add(new Input($"{quantity.Section}.{quantity.Key}", quantity, null, value, false));
        Value Ln(double median, double sd) => new Value.Uncertain(new Lognormal(median, sd), Knowledge.Varies);
        Value N(double mean, double sd) => new Value.Uncertain(new Normal(mean, sd), Knowledge.Varies);
        Value Sure(double x) => new Value.Certain(x);
        Add(Quantities.SprungMass, Ln(600, 0.10));
        Add(Quantities.UnsprungMass, N(90, 4));
        Add(Quantities.SpringRate, Ln(45, 0.08));
        Add(Quantities.DamperRate, Ln(4.0, 0.25));
        Add(Quantities.TyreRate, Ln(300, 0.10));
        Add(Quantities.TyreDamping, Sure(0.2));
        Add(Quantities.ContactLength, N(200, 10));
        Add(Quantities.OutboardShare, Sure(0.5));
        Add(Quantities.LeverArm, N(240, 4));
        Add(Quantities.OutsideDiameter, Sure(95));
        Add(Quantities.Wall, N(6.0, 0.25));
        Add(Quantities.SpeedFactor, Ln(1, 0.15));
        Add(Quantities.RoughnessFactor, Ln(1, 0.30));
        for (int leg = 0; leg < legs.Length; leg++)
        {
            inputs.Add(new Input($"legs.{legs[leg].Name}.speed_km_per_h", Quantities.Speed, leg, Sure(Use[leg].Speed), false));
            inputs.Add(new Input($"legs.{legs[leg].Name}.roughness_1e_6_m3", Quantities.Roughness, leg, Sure(Use[leg].Roughness), false));
        }

        Add(Quantities.StressFactor, new Value.Uncertain(new Lognormal(1, 0.20), Knowledge.Unknown));
        Add(Quantities.MinerSum, Ln(1, 0.29));
        Add(Quantities.LifeScatter, N(0, 0.20));
        return new Scenario
        {
            Title = "Five-leg benchmark (invented)",
            RequiredKm = 50_000,
            Shape = SectionShape.Tube,
            Detail = new Detail("DNV-RP-C203", ["E"], [1]),
            Legs = legs,
            Inputs = inputs.ToImmutable(),
        };
    }
}
