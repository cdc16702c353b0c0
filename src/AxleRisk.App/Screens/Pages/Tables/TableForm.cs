using AxleRisk.App.Screens.Forms;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Text;
using AxleRisk.Files;
using AxleRisk.Files.Format;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Pages.Tables;

/// <summary>
/// The form of any table of the scenario, made of its description: a field or a few for each key. Keys that exclude each other take
/// each other's place. The reader of scenarios judges the whole.
/// </summary>
internal sealed class TableForm : Form
{
    private readonly Session session;
    private readonly TableFormat format;
    private readonly TomlPath path;
    private readonly Func<TomlValue.Table, ScenarioEdit> edit;
    private readonly EditorBook book;
    private readonly List<KeyEditor> editors = [];

    /// <summary>Creates the form.</summary>
    /// <param name="session">The open scenario.</param>
    /// <param name="title">The window's title.</param>
    /// <param name="format">The table.</param>
    /// <param name="path">Where it stands, or is to stand.</param>
    /// <param name="stated">What it states.</param>
    /// <param name="edit">The edit that makes it state something else.</param>
    public TableForm(Session session, string title, TableFormat format, TomlPath path, TomlValue.Table stated,
        Func<TomlValue.Table, ScenarioEdit> edit)
    {
        (this.session, this.format, this.path, this.edit, Title) = (session, format, path, edit, title);
        book = new EditorBook(session, format, path);
        foreach (KeyFormat key in format.Keys)
        {
            if (book.Of(key, stated[key.Key], Of) is { } editor)
            {
                editors.Add(editor);
            }
        }

        Arrange();
        Check();
    }

    public override string Title { get; }

    public override string Opens => At(Focused)?.Opens ?? "";

    /// <summary>The edit; null while something is wrong.</summary>
    public ScenarioEdit? Edit { get; private set; }

    public override IReadOnlyList<PageLine> Picture(int width, int height)
    {
        if (Fields.ElementAtOrDefault(Focused) is not { } field || At(Focused) is not { } editor)
        {
            return [];
        }

        PageLine[] help = [.. Wrap.Lines(field.Help, Math.Max(10, width), "").Select(l => PageLine.Of(l, Ink.Quiet))];
        IReadOnlyList<PageLine> drawn = editor.Picture(field, width, height - 1);
        return [PageLine.Of(field.Label.Trim(), Ink.Heading), .. drawn, .. help];
    }

    public override bool Open(IDialogs dialogs)
    {
        if (At(Focused) is not { } editor || !editor.Open(Fields[Focused], dialogs))
        {
            return false;
        }

        Fields[Focused].IsTouched = true;
        Changed(Focused);
        return true;
    }

    protected override void Changed(int field)
    {
        KeyEditor editor = At(field)!;
        bool others = editor.Changed(Fields[field]);
        if (!editor.IsEmpty)
        {
            others |= GiveWay(editor.Key.Key);
        }

        for (int i = 0; i < editors.Count; i++)
        {
            if (EditorBook.DependsOn(editors[i].Key, editor.Key))
            {
                editors[i] = book.Of(editors[i].Key, null, Of)!;
                others = true;
            }
        }

        if (others || IsOtherSelection())
        {
            Arrange();
        }

        Check();
    }

    /// <summary>Clears the keys that cannot be stated beside one; whether there were any.</summary>
    private bool GiveWay(string key)
    {
        KeyEditor[] excluded = [.. editors.Where(e => e.Key.Key != key && !e.IsEmpty
            && format.Choices.Any(c => c.Keys.Contains(key) && c.Keys.Contains(e.Key.Key)))];
        foreach (KeyEditor other in excluded)
        {
            other.Clear();
        }

        return excluded.Length > 0;
    }

    private TomlValue? Of(string key) => editors.Find(e => e.Key.Key == key)?.Value;

    /// <summary>Those whose key belongs to what other keys state now: the sizes of the shape that is chosen.</summary>
    private IEnumerable<KeyEditor> Shown => editors.Where(e => e.Key.BelongsTo is not { } owner
        || owner.Words.Contains(Of(owner.Key) is TomlValue.Text word ? word.Value : format.Find(owner.Key)?.Words.FirstOrDefault()));

    private KeyEditor? At(int field) => Fields.ElementAtOrDefault(field) is { } at ? editors.Find(e => e.Fields.Contains(at)) : null;

    private bool IsOtherSelection() => !Shown.SelectMany(e => e.Fields).SequenceEqual(Fields);

    private void Arrange() => Arrange([.. Shown.SelectMany(e => e.Fields)]);

    private void Check()
    {
        Edit = null;
        Refusal = null;
        foreach (KeyEditor editor in editors)
        {
            bool isMissing = editor.IsEmpty && editor.Key.IsRequired && Shown.Contains(editor)
                && (editor.Key.Unless is not { } other || Of(other) is null);
            bool isWrong = !editor.IsEmpty && editor.Value is null;
            foreach (FormField field in editor.Fields)
            {
                field.Refusal = null;
            }

            if (isMissing || isWrong)
            {
                (editor.Fields.FirstOrDefault(f => f.Text.Trim().Length == 0) ?? editor.Fields[^1]).Refusal =
                    isMissing ? $"must be filled in: {editor.MustBe}" : editor.MustBe;
            }
        }

        foreach (KeyChoice choice in format.Choices.Where(c => c.IsRequired && c.Keys.All(k => Of(k) is null)))
        {
            KeyEditor first = editors.Find(e => e.Key.Key == choice.Keys[0])!;
            first.Fields[0].Refusal ??= "one of these must be filled in: "
                + string.Join(", ", choice.Keys.Select(k => format.Find(k)!.Label));
        }

        if (Fields.All(f => f.Refusal is null))
        {
            Judge(edit(TomlValue.TableOf(Shown.Where(e => e.Value is not null).Select(e => (e.Key.Key, e.Value!)))));
        }
    }

    /// <summary>Lets the reader of scenarios judge, and puts its reasons where they belong.</summary>
    private void Judge(ScenarioEdit made)
    {
        if (session.Edited.WhyOnlyLook is { } why)
        {
            Refusal = why;
            return;
        }

        try
        {
            (string text, _, IReadOnlyList<ScenarioError> errors) = session.Edited.Try(made);
            foreach (ScenarioError error in errors)
            {
                KeyEditor? at = editors.Find(e => e.Value is not null
                    && ScenarioEditor.PlaceOf(text, path.Then(e.Key.Key)) is var (line, column)
                    && line == error.Line && column <= error.Column);
                FormField? field = at?.Fields.FirstOrDefault(f => f.Refusal is null);
                if (field is not null)
                {
                    field.Refusal = error.Message;
                }
                else
                {
                    Refusal ??= error.Message;
                }
            }
        }
        catch (EditException e)
        {
            Refusal = e.Message;
        }

        Edit = IsRight ? made : null;
    }
}
