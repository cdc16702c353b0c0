using AxleRisk.App.Charts;
using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Forms;
using AxleRisk.App.Screens.Live;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Pages.Inputs;

/// <summary>The weld detail: catalogue, one category or several with weights, and its S-N curve drawn.</summary>
internal sealed class CategoryForm : Form
{
    private readonly Session session;
    private readonly string category;

    public CategoryForm(Session session, InputRow row)
    {
        (this.session, category) = (session, row.Name);
        Detail detail = session.Document.Scenario.DetailOf(row.Name)!;
        Title = row.Label;
        Arrange(
        [
            new FormField("catalogue", detail.Catalogue, "", SnCatalogue.Catalogues),
            new FormField("categories", Typed(detail), ""),
            new FormField("knowledge", ScenarioEdits.KnowledgeWord(detail.Knowledge), "", ["unknown", "varies"]),
        ]);
        Look();
    }

    public override string Title { get; }

    /// <summary>The edit; null while the categories cannot be read.</summary>
    public ScenarioEdit? Edit => Categories() is { } categories
        ? ScenarioEdits.Detail(category, Fields[0].Text, categories, Knows())
        : null;

    public override IReadOnlyList<PageLine> Picture(int width, int height) =>
    [
        PageLine.Of("Categories, best first", Ink.Heading),
        .. Text.Wrap.Lines(string.Join(", ", SnCatalogue.Categories(Fields[0].Text)), Math.Max(10, width), "").Select(l => PageLine.Of(l)),
        PageLine.Empty,
        .. Text.Wrap.Lines("One: E. Several with weights that add up to 1: E 0.7; F 0.3", Math.Max(10, width), "")
            .Select(l => PageLine.Of(l, Ink.Quiet)),
        PageLine.Empty,
        .. Curves() is { Count: > 0 } curves ? Pictures.Lines(SnChart.Draw(curves, width, Math.Clamp(height - 8, 0, 16))) : [],
    ];

    /// <summary>The categories as they are typed.</summary>
    private static string Typed(Detail detail) =>
        detail.Categories is [var only] ? only : string.Join("; ", detail.Categories.Zip(detail.Weights, (c, w) => $"{c} {w:0.###}"));

    private List<SnCurve> Curves() => [.. (Categories() ?? []).Select(c => SnCatalogue.Find(Fields[0].Text, c.Category)).OfType<SnCurve>()];

    /// <summary>What is known; null where that holds anyhow and the file does not state it.</summary>
    private Knowledge? Knows() => Fields[2].Text != "varies" ? Knowledge.Unknown
        : ScenarioEditor.Read(session.Edited.Text, TomlPath.Of(category).Then("knowledge")) is null ? null : Knowledge.Varies;

    protected override void Changed(int field) => Look();

    private void Look() => Fields[1].Refusal = Edit is { } edit ? session.WhyNot(edit) : "write E, or E 0.7; F 0.3";

    /// <summary>The categories as typed: <c>E 0.7; F 0.3</c>. A category's name may itself hold a blank (<c>FAT 71</c>).</summary>
    private List<(string Category, double Weight)>? Categories()
    {
        string[] parts = Fields[1].Text.Split(';', ',').Select(p => p.Trim()).Where(p => p.Length > 0).ToArray();
        if (parts.Length == 1)
        {
            return [(parts[0], 1)];
        }

        var categories = new List<(string, double)>();
        foreach (string part in parts)
        {
            int blank = part.LastIndexOf(' ');
            if (blank < 1 || InputEditor.Number(part[(blank + 1)..]) is not { } weight || !(weight >= 0))
            {
                return null;
            }

            categories.Add((part[..blank].Trim(), weight));
        }

        return categories.Count > 0 && Math.Abs(categories.Sum(c => c.Item2) - 1) < 1e-6 ? categories : null;
    }
}
