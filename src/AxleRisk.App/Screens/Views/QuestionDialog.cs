using AxleRisk.App.Text;
using Terminal.Gui.Input;
using Terminal.Gui.ViewBase;
using Terminal.Gui.Views;

namespace AxleRisk.App.Screens.Views;

/// <summary>Asks for one text and refuses a wrong one at the field, with the reason.</summary>
internal sealed class QuestionDialog : Dialog
{
    private const int TextWidth = 60;
    private const string Leave = "_Leave";

    private readonly TextField field;
    private readonly Label reason;
    private readonly Func<string, string?> refusal;

    public QuestionDialog(string title, string question, string initial, Func<string, string?> refusal)
    {
        this.refusal = refusal;
        HotKeySpecifier = Look.NoHotKey;
        Title = title;
        string[] lines = [.. Wrap.Lines(question, TextWidth, "")];
        Add(new Label { HotKeySpecifier = Look.NoHotKey, Text = string.Join('\n', lines), Width = TextWidth, Height = lines.Length });
        field = new TextField { Y = lines.Length + 1, Width = TextWidth, Text = initial };
        reason = new Label { HotKeySpecifier = Look.NoHotKey, Y = lines.Length + 2, Width = TextWidth, Height = 2 };
        Add(field, reason);
        AddButton(new Button { Text = Leave });
        AddButton(new Button { Text = "_OK" });
    }

    /// <summary>The text; null until it was given.</summary>
    public string? Answer { get; private set; }

    /// <inheritdoc/>
    protected override bool OnAccepting(CommandEventArgs args)
    {
        if (args.Context?.TryGetSource(out View? source) == true && source is Button { Text: Leave })
        {
            return base.OnAccepting(args);
        }

        string text = field.Text.Trim();
        if (refusal(text) is { } why)
        {
            reason.Text = "Not right: " + why;
            return true;
        }

        Answer = text;
        return base.OnAccepting(args);
    }
}
