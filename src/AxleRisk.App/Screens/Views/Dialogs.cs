using AxleRisk.App.Screens.Forms;
using AxleRisk.App.Screens.Pages;
using Terminal.Gui.App;

namespace AxleRisk.App.Screens.Views;

/// <summary>The windows of their own, on the terminal.</summary>
/// <param name="app">The application, once it runs.</param>
internal sealed class Dialogs(Func<IApplication> app) : IDialogs
{
    /// <inheritdoc/>
    public string? Ask(string title, string question, string initial, Func<string, string?> refusal)
    {
        using var dialog = new QuestionDialog(title, question, initial, refusal);
        app().Run(dialog);
        return dialog.Answer;
    }

    /// <inheritdoc/>
    public bool Fill(Form form)
    {
        using var dialog = new FormDialog(form, app().Screen.Height, () => this);
        app().Run(dialog);
        return dialog.IsAccepted;
    }

    /// <inheritdoc/>
    public int? Choose(string title, string question, params string[] answers)
    {
        using var dialog = new ChoiceDialog(title, question, answers, app().Screen.Width, app().Screen.Height);
        app().Run(dialog);
        return dialog.Answer;
    }
}
