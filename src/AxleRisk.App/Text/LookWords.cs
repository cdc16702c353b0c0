using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Text;

/// <summary>A look for the crack in words.</summary>
internal static class LookWords
{
    /// <summary>What was seen.</summary>
    public static string Found(CrackLook look) => !look.IsFound ? "nothing found"
        : look.DepthMm is { } mm ? $"a crack, {Figures.Exact(mm)} mm" : "a crack";

    /// <summary>The look and what was seen.</summary>
    public static string Sentence(CrackLook look) =>
        $"Looked at with {Printable.Line(look.Method.Name)} at {Figures.Exact(look.Km)} km: {Found(look)}"
        + (look.DepthMm is null ? "." : $", standard deviation {Figures.Exact(look.StandardDeviationMm)} mm.");
}
