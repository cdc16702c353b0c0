using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads a look for the crack that was done on one vehicle.</summary>
internal sealed class LookReader(ErrorLog errors)
{
    /// <summary>Reads the table; null, with the errors logged, where it is wrong.</summary>
    /// <param name="table">The table.</param>
    /// <param name="scenario">The scenario with its crack and ways of looking.</param>
    /// <param name="life">What is known of the vehicle's life; null for nothing.</param>
    public CrackLook? Read(TableReader table, Scenario scenario, LifeEvidence? life)
    {
        string? method = table.Line("method");
        double? at = table.Number("at_km");
        bool isFound = table.Word("found", FormatWords.Sightings) ?? false;
        double? depth = table.Number("depth_mm"), deviation = table.Number("sd_mm");
        table.RejectUnknown();
        if (method is null || at is not double km || MethodOf(table, method, scenario) is not { } of)
        {
            return null;
        }

        double? last = life?.WholeKm;
        if (km > last)
        {
            errors.Add(table.Find("at_km")!.Node.At, life is LifeEvidence.Survived
                ? $"evidence.looks.at_km ({km:R}) lies beyond evidence.survived_km ({last:R}): state the distance that it has reached"
                : $"evidence.looks.at_km ({km:R}) lies after the failure; it was last known to be whole at {last:R} km");
            return null;
        }

        TomlEntry? stated = table.Find("depth_mm") ?? table.Find("sd_mm");
        if (stated is not null && (!isFound || depth is null != deviation is null))
        {
            errors.Add(stated.KeyAt, isFound ? "evidence.looks.depth_mm and sd_mm belong together: a depth and its accuracy"
                : $"evidence.looks.{stated.Key} belongs to found = \"crack\"");
            return null;
        }

        double wall = scenario.Crack?.Own?.DepthsMm[^1] ?? scenario.Find(Quantities.Wall)!.Value.Nominal;
        if (depth > wall)
        {
            errors.Add(table.Find("depth_mm")!.Node.At,
                $"evidence.looks.depth_mm ({depth:R}) is deeper than the wall of {wall:G6} mm: the vehicle had failed then; state evidence.failed_at_km");
            return null;
        }

        return new CrackLook(of, km, isFound, depth, deviation ?? 0);
    }

    private InspectionMethod? MethodOf(TableReader table, string name, Scenario scenario)
    {
        InspectionMethod? found = scenario.Crack is null ? null : scenario.Inspections.FirstOrDefault(m => m.Name == name);
        if (found is null)
        {
            errors.Add(table.Find("method")!.Node.At, scenario.Inspections.IsEmpty || scenario.Crack is null
                ? "evidence.looks needs a [crack] and [[inspections]] that it names"
                : $"there is no inspection {MessageText.Quote(name)}; possible: {MessageText.List([.. scenario.Inspections.Select(m => MessageText.Quote(m.Name))], "or")}");
        }

        return found;
    }
}
