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
        var lines = new List<PageLine> { PageLine.Of(TextTable.Shorten("Evidence found on this vehicle", width), Ink.Heading) };
        lineOf = new int[items.Count];
        for (int i = 0; i < items.Count; i++)
        {
            EvidenceItem item = items[i];
            if (item.Kind == EvidenceKind.Explanation && (i == 0 || items[i - 1].Kind != EvidenceKind.Explanation))
            {
                lines.Add(PageLine.Of(TextTable.Shorten("Explanations to weigh (in the file)", width), Ink.Heading));
            }

            lineOf[i] = lines.Count;
            Ink ink = i == chosen ? Ink.Chosen : item.Kind == EvidenceKind.Explanation ? Ink.Quiet : Ink.Plain;
            string sign = i == chosen ? "> " : "  ";
            lines.AddRange(Wrap.Lines($"{item.Label}: {item.Text}", width - 2, "  ")
                .Select((l, n) => PageLine.Of((n == 0 ? sign : "  ") + l, ink).Fit(width, ink)));
        }

        return lines;
    }
}
