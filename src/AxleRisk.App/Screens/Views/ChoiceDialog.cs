using AxleRisk.App.Text;
using Terminal.Gui.Input;
using Terminal.Gui.ViewBase;
using Terminal.Gui.Views;

namespace AxleRisk.App.Screens.Views;

/// <summary>Lets choose between answers, one a button; the question may have lines of its own.</summary>
internal sealed class ChoiceDialog : Dialog
{
    private const int TextWidth = 70;

    /// <summary>Columns and rows of the border, the buttons and the gap above them.</summary>
    private const int Around = 4, RowsAround = 5;

    private readonly string[] answers;

    public ChoiceDialog(string title, string question, string[] answers, int screenWidth, int screenHeight)
    {
        this.answers = answers;
        HotKeySpecifier = Look.NoHotKey;
        Title = title;
        int width = Math.Clamp(screenWidth - Around, 1, TextWidth);
        string[] lines = [.. question.Split('\n').SelectMany(l => Wrap.Lines(Printable.Line(l), width, "  "))];
        int rows = Math.Clamp(screenHeight - RowsAround, 1, lines.Length);
        Add(new LinesView((_, _) => [.. lines.Select(l => Pages.PageLine.Of(l))]) { Width = width, Height = rows });
        Button[] buttons = [.. answers.Select(answer => new Button { Text = answer, HotKeySpecifier = Look.NoHotKey })];
        foreach (Button button in buttons)
        {
            AddButton(button);
        }

        Initialized += (_, _) => buttons[^1].SetFocus();
    }

    /// <summary>The place of the answer; null until one was given.</summary>
    public int? Answer { get; private set; }

    /// <inheritdoc/>
    protected override bool OnAccepting(CommandEventArgs args)
    {
        string text = args.Context?.TryGetSource(out View? source) == true && source is Button button ? button.Text : answers[^1];
        Answer = Array.IndexOf(answers, text) is >= 0 and var place ? place : null;
        return base.OnAccepting(args);
    }
}
