namespace AxleRisk.Files.Writing;

/// <summary>The text of a new scenario: the least that is valid, to be filled with the user's own numbers.</summary>
public static class NewScenario
{
    /// <summary>The text, with a title.</summary>
    public static string Text(string title = "New scenario") => $"""
        # Invented: every number below is a placeholder. Put in your own.
        title = {TomlText.Quote(title)}
        required_km = 200_000

        # One rear wheel, but for the payload.
        [vehicle]
        sprung_kg = 500
        payload_kg = 0
        unsprung_kg = 80
        spring_n_per_mm = 40
        damper_n_s_per_mm = 3.0
        tyre_n_per_mm = 250

        # The checked section of the axle housing.
        [axle]
        shape = "tube"
        lever_arm_mm = 200
        outside_diameter_mm = 90
        wall_mm = 6.0

        [detail]
        catalogue = "DNV-RP-C203"
        category = "F"

        # Where it drives; the shares add up to 1.
        [[use.legs]]
        name = "road"
        share = 0.80
        road_class = "A"
        speed_km_per_h = 70

        [[use.legs]]
        name = "gravel"
        share = 0.20
        road_class = "C"
        speed_km_per_h = 45

        """;
}
