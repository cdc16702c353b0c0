using AxleRisk.App.Text;

namespace AxleRisk.App.Screens.Pages.Causes;

/// <summary>The list of the evidence.</summary>
internal static class EvidenceLines
{
    /// <summary>The rows under their headings.</summary>
    /// <param name="items">The evidence.</param>
    /// <param name="chosen">The row chosen.</param>
    /// <param name="width">Characters.</param>
    /// <param name="lineOf">The line of each row.</param>
    public static IReadOnlyList<PageLine> Of(IReadOnlyList<EvidenceItem> items, int chosen, int width, out int[] lineOf)
    {
        var lines = new List<PageLine> { PageLine.Of("Evidence: what was found on this vehicle", Ink.Heading) };
        lineOf = new int[items.Count];
        for (int i = 0; i < items.Count; i++)
        {
            EvidenceItem item = items[i];
            if (item.Kind == EvidenceKind.Explanation && (i == 0 || items[i - 1].Kind != EvidenceKind.Explanation))
            {
                lines.Add(PageLine.Of("Explanations to be weighed (from the file)", Ink.Heading));
            }

            lineOf[i] = lines.Count;
            string text = TextTable.Shorten($"{(i == chosen ? ">" : " ")} {item.Label}: {item.Text}", width);
            lines.Add(i == chosen ? PageLine.Of(text, Ink.Chosen).Fit(width, Ink.Chosen) : PageLine.Of(text, item.Kind == EvidenceKind.Explanation ? Ink.Quiet : Ink.Plain));
        }

        return lines;
    }
}
