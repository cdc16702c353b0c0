using System.Globalization;
using System.Text;

namespace AxleRisk.Files.Writing;

/// <summary>
/// The text of a new scenario, made of the answers to a few questions. Every number of it is a starting value, invented, and says so in
/// a comment; the reader is to replace it.
/// </summary>
public static class NewScenario
{
    /// <summary>The comment behind every number.</summary>
    public const string Mark = "starting value";

    /// <summary>The text.</summary>
    public static string Text(StartingPoint start)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"""
            # Invented: every number marked "{Mark}" is made up to begin with. Put in your own; the console takes the mark away with the value.
            title = {TomlText.Quote(start.Title)}
            required_km = {start.Km.Write()} # {(start.IsKmOwn ? "as asked" : Mark)}

            # One rear wheel, but for the payload.
            [vehicle]

            """);
        StartingVehicle vehicle = start.Vehicle;
        Add(text, start, "sprung_kg", vehicle.SprungKg, 0.03, false);
        Add(text, start, "payload_kg", vehicle.PayloadKg, 0.20, start.AreLoadAndRoadsUncertain);
        Add(text, start, "unsprung_kg", vehicle.UnsprungKg, 0.03, false);
        Add(text, start, "spring_n_per_mm", vehicle.SpringRate, 0.06, start.IsAllUncertain);
        Add(text, start, "damper_n_s_per_mm", vehicle.DamperRate, 0.10, start.IsAllUncertain);
        Add(text, start, "tyre_n_per_mm", vehicle.TyreRate, 0.08, start.IsAllUncertain);
        text.Append(CultureInfo.InvariantCulture, $"""

            # The checked section of the axle housing.
            [axle]
            {start.Section.Lines.ReplaceLineEndings("\n").Replace("\n", $" # {Mark}\n")} # {Mark}
            lever_arm_mm = {vehicle.LeverArmMm.Write()} # {Mark}

            """);
        Add(text, start, "wall_mm", start.Section.WallMm, 0.03, start.IsAllUncertain);
        text.Append(CultureInfo.InvariantCulture, $"""
            stress_concentration = {start.Weld.StressConcentration.Write()} # {Mark}

            [detail]
            catalogue = "DNV-RP-C203"
            {Category(start)} # {Mark}

            """);
        if (start.AreLoadAndRoadsUncertain)
        {
            text.Append(CultureInfo.InvariantCulture, $$"""

                [use]
                speed_factor = { distribution = "lognormal", median = 1, cov = 0.1 } # {{Mark}}
                roughness_factor = { distribution = "lognormal", median = 1, sd_ln = 0.3 } # {{Mark}}

                """);
        }

        text.Append("\n# Where it drives; the shares add up to 1.\n");
        text.AppendJoin("\n", start.Roads.Legs.Select(Leg));
        text.Append(start.Purpose.Tables(start));
        return text.ToString().TrimEnd() + "\n";
    }

    private static string Leg(StartingLeg leg) => string.Create(CultureInfo.InvariantCulture, $"""
        [[use.legs]]
        name = "{leg.Name}"
        share = {leg.Share.Write()} # {Mark}
        road_class = "{leg.RoadClass}" # {Mark}
        speed_km_per_h = {leg.Speed.Write()} # {Mark}
        {(leg.IsCorrugated ? $"corrugated_share = 0.3 # {Mark}\ncorrugation_wavelength_m = 0.8 # {Mark}\ncorrugation_rms_mm = 6 # {Mark}\n" : "")}
        """).TrimEnd() + "\n";

    private static string Category(StartingPoint start) => start.IsAllUncertain && start.Weld.Worse is { } worse
        ? $"category = {{ distribution = \"choice\", values = [\"{start.Weld.Category}\", \"{worse}\"], weights = [0.7, 0.3], knowledge = \"unknown\" }}"
        : $"category = \"{start.Weld.Category}\"";

    private static void Add(StringBuilder text, StartingPoint start, string key, double value, double cov, bool isUncertain) =>
        text.Append(CultureInfo.InvariantCulture, $"{key} = {(isUncertain && value > 0
            ? $"{{ distribution = \"normal\", mean = {value.Write()}, sd = {(cov * value).Write()}, min = {(value * (1 - (3 * cov))).Write()} }}"
            : value.Write())} # {Mark}\n");

    /// <summary>A number as it is written in a file.</summary>
    internal static string Write(this double number) => TomlText.OfNumber(Math.Round(number, 6));
}
