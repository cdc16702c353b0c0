using AxleRisk.App.Screens.Forms;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages.Inputs;
using AxleRisk.App.Text;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Pages.Remedies;

/// <summary>A remedy: its name, its cost, and the inputs it changes.</summary>
internal sealed class RemedyForm : Form
{
    private const string NoInput = "(none)";
    private const int Before = 2;
    private const int LeastChanges = 3;

    private static readonly TomlPath All = TomlPath.Of("remedies");

    private readonly Session session;
    private readonly int? index;

    /// <summary>Creates the form.</summary>
    /// <param name="session">The open scenario.</param>
    /// <param name="index">The remedy to change; null for a new one.</param>
    public RemedyForm(Session session, int? index)
    {
        this.session = session;
        this.index = index;
        Remedy? known = index is int i ? Scenario.Remedies[i] : null;
        string[] choices = [NoInput, .. Scenario.Inputs.Select(x => x.Label), CategoryFactor.FactorLabel];
        var fields = new List<FormField>
            { new("name", known?.Name ?? ""), new("cost, if known", known?.Cost is double c ? Editing.FieldBook.Show(c) : "") };
        for (int change = 0; change < Math.Max(LeastChanges, (known?.Changes.Length ?? 0) + 1); change++)
        {
            string input = known?.Changes.ElementAtOrDefault(change)?.Input ?? NoInput;
            fields.Add(new FormField($"change {change + 1}", input == NoInput ? NoInput : Scenario.LabelOf(input), "", choices));
            fields.Add(new FormField("  becomes", input == NoInput ? "" : Stated(index!.Value, input)));
        }

        Arrange(fields);
        Check();
    }

    public override string Title => index is null ? "A new remedy" : "Change a remedy";

    /// <summary>The edit; null while something is wrong.</summary>
    public ScenarioEdit? Edit
    {
        get
        {
            if (Fields[0].Text.Trim().Length == 0 || Changes() is not { Count: > 0 } changes || (Fields[1].Text.Length > 0 && Cost is null))
            {
                return null;
            }

            (string, TomlValue)[] entries =
            [
                ("name", TomlValue.Of(Fields[0].Text.Trim())), .. Cost is { } cost ? new[] { ("cost", (TomlValue)cost) } : [],
                ("change", TomlValue.TableOf(changes)),
            ];
            if (index is not int place)
            {
                return new ScenarioEdit("add remedy", [new TomlEdit.Append(All, TomlValue.TableOf(entries))]);
            }

            TomlPath at = All.At(place);
            return new ScenarioEdit("remedy",
            [
                .. entries.Select(e => new TomlEdit.Set(at.Then(e.Item1), e.Item2)), .. Cost is null ? new TomlEdit[]
                    { new TomlEdit.Remove(at.Then("cost")) } : [],
            ]);
        }
    }

    private Scenario Scenario => session.Document.Scenario;

    private TomlValue.Number? Cost => InputEditor.Number(Fields[1].Text) is double c ? new TomlValue.Number(c, Fields[1].Text) : null;

    /// <summary>The edit that takes a remedy out.</summary>
    public static ScenarioEdit Remove(int index) => new("remove remedy", [new TomlEdit.Remove(All.At(index))]);

    public override IReadOnlyList<PageLine> Picture(int width, int height)
    {
        var lines = new List<PageLine> { PageLine.Of("Changes", Ink.Heading) };
        foreach ((FormField input, FormField becomes) in Pairs().Where(p => p.Input.Text != NoInput))
        {
            string name = NameOf(input);
            lines.AddRange(Wrap.Lines(Printable.Line($"{input.Text} ({name})"), width, "").Select(l => PageLine.Of(l, Ink.Strong)));
            lines.AddRange(Wrap.Lines($"now {Printable.Line(ChangeText.Now(Scenario, name))}", width).Select(l => PageLine.Of(l)));
            lines.AddRange(Wrap.Lines($"-> {becomes.Text}", width).Select(l => PageLine.Of(l)));
        }

        string allowed = $"becomes: {ChangeText.Allowed}; a weld category by its name.";
        return [.. lines, PageLine.Empty, .. Wrap.Lines(allowed, width, "").Select(l => PageLine.Of(l, Ink.Quiet))];
    }

    protected override void Changed(int field) => Check();

    private IEnumerable<(FormField Input, FormField Becomes)> Pairs() =>
        Enumerable.Range(0, (Fields.Count - Before) / 2).Select(i => (Fields[Before + (2 * i)], Fields[Before + (2 * i) + 1]));

    /// <summary>The changes as typed; null where one cannot be read.</summary>
    private List<(string, TomlValue)>? Changes()
    {
        (string Input, TomlValue? Value)[] read = [.. Pairs().Where(p => p.Input.Text != NoInput)
            .Select(p => (NameOf(p.Input), ChangeText.Parse(NameOf(p.Input), p.Becomes.Text)))];
        return read.Any(r => r.Value is null) || read.DistinctBy(r => r.Input).Count() < read.Length
            ? null : [.. read.Select(r => (r.Input, r.Value!))];
    }

    /// <summary>The name of the input whose plain words are chosen.</summary>
    private string NameOf(FormField field) =>
        Scenario.Inputs.FirstOrDefault(i => i.Label == field.Text)?.Name ?? Change.CategoryName;

    private string Stated(int remedy, string input)
    {
        var changes = ScenarioEditor.Read(session.Edited.Text, All.At(remedy).Then("change")) as TomlValue.Table;

        // The name may be quoted, or dotted and so nested.
        TomlValue? stated = changes?[input] ?? input.Split('.').Aggregate((TomlValue?)changes, (at, key) => (at as TomlValue.Table)?[key]);
        return stated is null ? "" : ChangeText.Of(stated);
    }

    private void Check()
    {
        Fields[0].Refusal = Fields[0].Text.Trim().Length == 0 ? "a short name"
            : Scenario.Remedies.Where((_, i) => i != index).Any(r => r.Name == Fields[0].Text.Trim()) ? "there is one of this name" : null;
        Fields[1].Refusal = Fields[1].Text.Length > 0 && !(Cost is { Value: >= 0 }) ? "a number, or empty" : null;
        foreach ((FormField input, FormField becomes) in Pairs())
        {
            bool isTwice = input.Text != NoInput && Pairs().Count(p => p.Input.Text == input.Text) > 1;
            input.Refusal = isTwice ? "changed twice" : null;
            becomes.Refusal = input.Text != NoInput && ChangeText.Parse(NameOf(input), becomes.Text) is null
                ? "a number, x 0.8 or { ... }" : null;
        }

        bool areRight = Fields.All(f => f.Refusal is null);
        Refusal = !areRight ? null : Edit is { } edit ? session.WhyNot(edit) : "choose at least one input to change";
    }
}
