using System.Collections.Immutable;
using AxleRisk.Core.Analyses.BaseCase;

namespace AxleRisk.App.Text;

/// <summary>The hint that wheels leave the ground, which the linear ride does not know.</summary>
internal static class LiftOffText
{
    /// <summary>The hint; null where it does not apply.</summary>
    public static string? Sentence(ImmutableArray<LiftOffLeg> legs, string fileName)
    {
        LiftOffLeg[] likely = [.. legs.Where(l => l.IsLikely)];
        if (likely.Length == 0)
        {
            return null;
        }

        string named = string.Join(", ",
            likely.Select(l => $"{l.Name} ({Figures.Number(Math.Round(l.PerKm, l.PerKm < 10 ? 1 : 0))} a km)"));
        return $"Wheels leave the ground in the base case on {named}, {LiftOffCheck.NamedPerKm:0} a km or more by Rice's formula; "
            + $"the linear ride does not know it. Run `{Product.Name} confirm {fileName}` to see what it changes.";
    }
}
