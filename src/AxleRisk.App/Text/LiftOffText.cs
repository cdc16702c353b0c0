using System.Collections.Immutable;
using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Files;

namespace AxleRisk.App.Text;

/// <summary>The hint that wheels leave the ground, which the linear ride does not know.</summary>
internal static class LiftOffText
{
    /// <summary>The hint; nothing where it does not apply.</summary>
    public static IEnumerable<string> Lines(ImmutableArray<LiftOffLeg> legs, ScenarioDocument document)
    {
        LiftOffLeg[] likely = [.. legs.Where(l => l.IsLikely)];
        if (likely.Length == 0)
        {
            yield break;
        }

        string named = string.Join(", ",
            likely.Select(l => $"{Printable.Line(l.Name)} ({Figures.Number(Math.Round(l.PerKm, l.PerKm < 10 ? 1 : 0))} a km)"));
        string text = $"Wheels leave the ground in the base case on {named}, {LiftOffCheck.NamedPerKm:0} a km or more by Rice's formula; "
            + $"the linear ride does not know it. Run `{Product.Name} confirm {Printable.Line(document.FileName)}` to see what it changes.";
        foreach (string line in Wrap.Lines(text, Layout.Width))
        {
            yield return line;
        }

        yield return "";
    }
}
