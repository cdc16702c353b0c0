using AxleRisk.Files;
using Xunit;

namespace AxleRisk.App.Tests.Files;

/// <summary>A small scenario that is right, and ways to spoil it.</summary>
internal static class Good
{
    public const string Text = """
        title = "A tube on gravel"
        required_km = 50000

        [vehicle]
        sprung_kg = { distribution = "lognormal", median = 600, sd_ln = 0.10 }
        unsprung_kg = 90
        spring_n_per_mm = 45
        damper_n_s_per_mm = { distribution = "normal", mean = 4, sd = 0.4, knowledge = "unknown", nominal = 4.2 }
        tyre_n_per_mm = 300

        [axle]
        lever_arm_mm = 240
        outside_diameter_mm = 95
        wall_mm = 6

        [detail]
        catalogue = "DNV-RP-C203"
        category = "E"

        [[use.legs]]
        name = "road"
        share = 0.75
        roughness_1e_6_m3 = 16
        speed_km_per_h = 80

        [[use.legs]]
        name = "gravel"
        share = 0.25
        road_class = "C"
        speed_km_per_h = { distribution = "uniform", low = 30, high = 60 }

        """;

    /// <summary>The good text with one piece, which must be there, replaced.</summary>
    public static string With(string old, string replacement)
    {
        Assert.Contains(old, Text);
        return Text.Replace(old, replacement);
    }

    public static ScenarioDocument Parse(string text, Func<string, string>? readCsv = null) =>
        ScenarioReader.Parse(text, "a.toml", readCsv);

    /// <summary>The errors of a text that must have some, as they are printed.</summary>
    public static string[] ErrorsOf(string text, Func<string, string>? readCsv = null) =>
        [.. Assert.Throws<ScenarioException>(() => Parse(text, readCsv)).Errors.Select(e => e.ToString())];

    /// <summary>The errors of the good text with one piece replaced.</summary>
    public static string[] ErrorsWith(string old, string replacement) => ErrorsOf(With(old, replacement));
}
