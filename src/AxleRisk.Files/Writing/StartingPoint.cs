using System.Collections.Immutable;

namespace AxleRisk.Files.Writing;

/// <summary>The answers to the questions for a new scenario.</summary>
/// <param name="Title">Its title.</param>
/// <param name="Purpose">What it is for.</param>
/// <param name="Vehicle">The vehicle.</param>
/// <param name="Section">The section of the axle.</param>
/// <param name="Weld">The weld.</param>
/// <param name="Roads">Where it drives.</param>
/// <param name="Km">The distance it must last.</param>
/// <param name="Uncertain">What is uncertain, one of <see cref="Uncertainties"/>.</param>
public sealed record StartingPoint(
    string Title, StartingPurpose Purpose, StartingVehicle Vehicle, StartingSection Section, StartingWeld Weld, StartingRoads Roads,
    double Km, string Uncertain)
{
    private const string Usual = "load, roads, build", Some = "load and roads", None = "nothing yet";

    /// <summary>The first answer to every question.</summary>
    public static StartingPoint First { get; } = new(
        "New scenario", StartingPurpose.All[0], StartingVehicle.All[0], StartingSection.All[0], StartingWeld.All[0], StartingRoads.All[0],
        StartingPurpose.All[0].Km, Usual);

    /// <summary>What can be uncertain, the usual first.</summary>
    public static ImmutableArray<string> Uncertainties { get; } = [Usual, Some, None];

    /// <summary>Whether the reader gave the distance.</summary>
    public bool IsKmOwn => Km != Purpose.Km;

    /// <summary>Whether payload, speed and roads are uncertain.</summary>
    public bool AreLoadAndRoadsUncertain => Uncertain != None;

    /// <summary>Whether springs, dampers, tyres, wall and weld are uncertain too.</summary>
    public bool IsAllUncertain => Uncertain == Usual;
}

/// <summary>What a scenario is for; it says which tables beside the vehicle it begins with.</summary>
/// <param name="Label">Who asks.</param>
/// <param name="Km">A distance that is usually asked about.</param>
/// <param name="Tables">The further tables as text.</param>
public sealed record StartingPurpose(string Label, double Km, Func<StartingPoint, string> Tables)
{
    /// <summary>The vehicle that is usually asked about.</summary>
    public StartingVehicle Vehicle { get; init; } = StartingVehicle.All[0];

    /// <summary>The roads that are usually asked about.</summary>
    public StartingRoads Roads { get; init; } = StartingRoads.All[0];

    /// <summary>Every purpose.</summary>
    public static ImmutableArray<StartingPurpose> All { get; } =
    [
        new("model, warranty", 150_000, s => $$"""

            # What could be done about it.
            [[remedies]]
            name = "thicker wall"
            cost = 100 # {{NewScenario.Mark}}
            change = { "axle.wall_mm" = {{(s.Section.WallMm + 1).Write()}} } # {{NewScenario.Mark}}

            # The vehicles sold under one warranty.
            [fleet]
            vehicles = 1000 # {{NewScenario.Mark}}
            distance_km_per_year = { distribution = "lognormal", median = 25000, cov = 0.4 } # {{NewScenario.Mark}}
            warranty_months = 36 # {{NewScenario.Mark}}
            warranty_km = {{s.Km.Write()}} # {{NewScenario.Mark}}
            target_claim_rate = 0.02 # {{NewScenario.Mark}}

            """),
        new("an expedition", 5_000, s => $$"""

            # What could be done about it.
            [[remedies]]
            name = "half the payload"
            cost = 500 # {{NewScenario.Mark}}
            change = { "vehicle.payload_kg" = { times = 0.5 } } # {{NewScenario.Mark}}

            # The journey itself, leg by leg.
            [trip]
            already_driven_km = 60000 # {{NewScenario.Mark}}
            target_risk = 0.02 # {{NewScenario.Mark}}

            {{string.Join("\n", s.Roads.Legs.Select((leg, i) => $"""
            [[trip.legs]]
            name = "leg-{i + 1}"
            km = {(leg.Share * s.Km).Write()} # {NewScenario.Mark}
            like = "{leg.Name}"

            """))}}
            """)
        { Vehicle = StartingVehicle.All[1], Roads = StartingRoads.All[^1] },
        new("a broken axle", 100_000, s => $$"""

            # What was found on the vehicle.
            [evidence]
            failed_at_km = {{(0.6 * s.Km).Write()}} # {{NewScenario.Mark}}
            {{(s.IsAllUncertain ? $$"""

            # What may explain it.
            [[explanations]]
            name = "thin wall"
            when = { "axle.wall_mm" = { below = {{(0.97 * s.Section.WallMm).Write()}} } } # {{NewScenario.Mark}}
            """ : "")}}

            """),
        new("something else", 100_000, _ => ""),
    ];
}

/// <summary>A vehicle to begin with, one rear wheel of it but for the payload.</summary>
/// <param name="Label">What it is.</param>
/// <param name="SprungKg">Sprung mass, kg.</param>
/// <param name="PayloadKg">Payload of the whole vehicle, kg.</param>
/// <param name="UnsprungKg">Unsprung mass, kg.</param>
/// <param name="SpringRate">Spring rate, N/mm.</param>
/// <param name="DamperRate">Damper rate, N s/mm.</param>
/// <param name="TyreRate">Tyre rate, N/mm.</param>
/// <param name="LeverArmMm">From the wheel's plane to the section, mm.</param>
public sealed record StartingVehicle(
    string Label, double SprungKg, double PayloadKg, double UnsprungKg, double SpringRate, double DamperRate, double TyreRate,
    double LeverArmMm)
{
    /// <summary>Every vehicle.</summary>
    public static ImmutableArray<StartingVehicle> All { get; } =
    [
        new("light van", 550, 500, 90, 45, 3.5, 280, 220),
        new("off-road vehicle", 520, 450, 105, 42, 3.8, 240, 220),
        new("pick-up", 450, 600, 95, 48, 3.2, 260, 210),
        new("delivery truck", 900, 1500, 170, 110, 7.5, 550, 260),
    ];
}

/// <summary>A section of the axle to begin with.</summary>
/// <param name="Label">What it is.</param>
/// <param name="Lines">Its shape and outer sizes as keys and values, a line each.</param>
/// <param name="WallMm">The wall, mm.</param>
public sealed record StartingSection(string Label, string Lines, double WallMm)
{
    /// <summary>Every section.</summary>
    public static ImmutableArray<StartingSection> All { get; } =
    [
        new("tube 90 x 7 mm", "shape = \"tube\"\noutside_diameter_mm = 90", 7),
        new("tube 80 x 6 mm", "shape = \"tube\"\noutside_diameter_mm = 80", 6),
        new("tube 110 x 9 mm", "shape = \"tube\"\noutside_diameter_mm = 110", 9),
        new("box 90 x 100 x 6 mm", "shape = \"box\"\nwidth_mm = 90\nheight_mm = 100", 6),
    ];
}

/// <summary>A weld to begin with.</summary>
/// <param name="Label">What it is.</param>
/// <param name="Category">Its category in DNV-RP-C203.</param>
/// <param name="Worse">What it may be as well; null where it is sure.</param>
/// <param name="StressConcentration">The factor on the nominal stress.</param>
public sealed record StartingWeld(string Label, string Category, string? Worse, double StressConcentration)
{
    /// <summary>Every weld.</summary>
    public static ImmutableArray<StartingWeld> All { get; } =
    [
        new("spring seat, fillet", "E", "F", 1.9),
        new("rough fillet weld", "F", "F1", 1.9),
        new("butt weld around", "D", "E", 1.5),
        new("no weld near", "C", null, 1.5),
    ];
}

/// <summary>Roads to begin with.</summary>
/// <param name="Label">What they are.</param>
/// <param name="Legs">The kinds of road; their shares add up to 1.</param>
public sealed record StartingRoads(string Label, ImmutableArray<StartingLeg> Legs)
{
    /// <summary>Every kind of use.</summary>
    public static ImmutableArray<StartingRoads> All { get; } =
    [
        new("paved, some gravel", [new("town", 0.4, 'B', 40), new("road", 0.45, 'A', 80), new("gravel", 0.15, 'C', 50)]),
        new("paved", [new("town", 0.4, 'B', 40), new("road", 0.6, 'A', 85)]),
        new("gravel and tracks", [new("road", 0.3, 'B', 70), new("gravel", 0.5, 'C', 55), new("track", 0.2, 'D', 30)]),
        new("corrugated tracks", [new("road", 0.3, 'B', 70), new("washboard", 0.5, 'C', 55, true), new("track", 0.2, 'D', 30)]),
    ];
}

/// <summary>A kind of road to begin with.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Share">Its share of the distance.</param>
/// <param name="RoadClass">Its class by ISO 8608.</param>
/// <param name="Speed">The speed, km/h.</param>
/// <param name="IsCorrugated">Whether a part of it is corrugated.</param>
public sealed record StartingLeg(string Name, double Share, char RoadClass, double Speed, bool IsCorrugated = false);
