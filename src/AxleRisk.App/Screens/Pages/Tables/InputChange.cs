using AxleRisk.App.Screens.Forms;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages.Inputs;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Pages.Tables;

/// <summary>What an input becomes: another value, or so many times the one in force.</summary>
internal sealed class ChangeRow : IInputRow
{
    private const string Becomes = "becomes", Times = "times";

    private static readonly string TimesKey = RemedyFormat.Times.Keys[0].Key;

    private readonly StatedValue value;

    /// <summary>Creates the fields.</summary>
    /// <param name="session">The open scenario.</param>
    /// <param name="input">The input.</param>
    /// <param name="stated">What the file states; null for nothing.</param>
    public ChangeRow(Session session, Input input, TomlValue? stated)
    {
        TomlValue? times = (stated as TomlValue.Table)?[TimesKey];
        value = new StatedValue(session, input.Quantity, times is null ? stated : null, input.Value);
        string now = Text.Printable.Line(Remedies.ChangeText.Now(session.Document.Scenario, input.Name));
        Fields =
        [
            new("  how", times is null ? Becomes : Times, "", [Becomes, Times])
            { Help = "Whether it takes another value, or so many times the one in force." },
            new("  value", times is null ? value.Shown : times.Write(), times is null ? input.Quantity.Unit : "")
            { Help = $"Now: {now}. May be: {input.Quantity.Domain.Describe()}, or a distribution (F2).", IsNumber = true },
        ];
    }

    public IReadOnlyList<FormField> Fields { get; }

    public TomlValue? Value => !IsTimes ? value.Of(Fields[1].Text)
        : InputEditor.Number(Fields[1].Text) is { } factor
            ? TomlValue.TableOf((TimesKey, new TomlValue.Number(factor, Fields[1].Text.Trim()))) : null;

    private bool IsTimes => Fields[0].Text == Times;

    public bool Open(FormField field, IDialogs dialogs)
    {
        if (IsTimes || field != Fields[1])
        {
            return false;
        }

        if (value.Fill(field.Text, dialogs))
        {
            field.Text = value.Shown;
        }

        return true;
    }

    public IReadOnlyList<PageLine> Picture(FormField field, int width, int height) =>
        IsTimes ? [] : value.Picture(Fields[1].Text, width, height);
}
