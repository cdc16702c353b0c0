using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Text;

/// <summary>A look for the crack in words.</summary>
internal static class LookWords
{
    /// <summary>What was seen.</summary>
    public static string Found(CrackLook look) => !look.IsFound ? "nothing found"
        : look.DepthMm is { } mm ? $"a crack, {Figures.Exact(mm)} mm" : "a crack";

    /// <summary>What was seen of a vehicle that is whole, as the end of a sentence.</summary>
    public static string Seen(Evidence evidence)
    {
        List<string> parts = [];
        if (evidence.LifeWithLooks is LifeEvidence.Survived(var km))
        {
            parts.Add($"it has come {Figures.Exact(km)} km whole");
        }

        parts.AddRange(evidence.Looks.Select(l => $"{Printable.Line(l.Method.Name)} at {Figures.Exact(l.Km)} km found {Object(l)}"));
        if (evidence.Measured.Length + evidence.Known.Length is > 0 and var more)
        {
            parts.Add($"what is measured or known of it ({more})");
        }

        return parts.Count < 2 ? string.Concat(parts) : $"{string.Join(", ", parts.SkipLast(1))} and {parts[^1]}";
    }

    private static string Object(CrackLook look) => look.IsFound ? Found(look) : "nothing";

    /// <summary>The look and what was seen.</summary>
    public static string Sentence(CrackLook look) =>
        $"Looked at with {Printable.Line(look.Method.Name)} at {Figures.Exact(look.Km)} km: {Found(look)}"
        + (look.DepthMm is null ? "." : $", standard deviation {Figures.Exact(look.StandardDeviationMm)} mm.");
}
