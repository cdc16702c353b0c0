using System.Xml.Linq;
using Xunit;

namespace AxleRisk.App.Tests.Sections;

/// <summary>A mark in a table has its note in the same section, and a note its mark.</summary>
public sealed class FootnoteTests
{
    private static readonly (string Mark, Func<XElement, bool> IsMarked, Func<string, bool> IsNote)[] Marks =
    [
        ("*", cell => cell.Value.StartsWith("* ", StringComparison.Ordinal), text => text.Contains("*: ", StringComparison.Ordinal)),
        ("(m)", cell => cell.Value.StartsWith("(m) ", StringComparison.Ordinal), text => text.Contains("(m): ", StringComparison.Ordinal)),
        ("i", cell => cell.Value.Split(' ').Contains("i"),
            text => text.StartsWith("i: ", StringComparison.Ordinal) || text.Contains(" marked i ", StringComparison.Ordinal)),
        ("=", cell => cell.Value.EndsWith('=') && char.IsAsciiDigit(cell.Value[0]), text => text.Contains(" (=) ", StringComparison.Ordinal)),
    ];

    [Fact]
    public void Marks_and_notes_stand_together_in_all_shipped_reports()
    {
        var seen = new HashSet<string>();
        foreach (string scenario in ShippedReports.Names)
        {
            foreach (XElement section in ShippedReports.Page(ShippedReports.Studies(scenario)).Descendants("section"))
            {
                XElement[] cells = [.. section.Descendants("tbody").Elements("tr").Elements()];
                string[] texts = [.. section.Elements("p").Concat(section.Elements("ul").Elements("li")).Select(e => e.Value)];
                foreach ((string mark, Func<XElement, bool> isMarked, Func<string, bool> isNote) in Marks)
                {
                    bool stands = cells.Any(isMarked);
                    Assert.True(
                        stands == texts.Any(isNote),
                        $"{scenario}, {section.Element("h2")!.Value}: {mark} {(stands ? "stands without its note" : "is explained, but stands nowhere")}");
                    if (stands)
                    {
                        seen.Add(mark);
                    }
                }
            }
        }

        Assert.Equal(Marks.Select(m => m.Mark).Order(), seen.Order());
    }
}
