using AxleRisk.App.Screens.Forms;
using AxleRisk.App.Screens.Pages;

namespace AxleRisk.App.Tests.Screens;

/// <summary>Answers every question of a page with what it was given beforehand.</summary>
internal sealed class NoDialogs(string? answer = null, int? choice = null) : IDialogs
{
    /// <summary>Why the answer was refused, if it was.</summary>
    public string? Refusal { get; private set; }

    public string? Ask(string title, string question, string initial, Func<string, string?> refusal)
    {
        Refusal = answer is null ? null : refusal(answer);
        return Refusal is null ? answer : null;
    }

    /// <summary>Fills in the forms it is given; they are accepted where that makes them right.</summary>
    public Action<Form>? Filling { get; init; }

    public bool Fill(Form form)
    {
        Filling?.Invoke(form);
        return Filling is not null && form.IsRight;
    }

    public int? Choose(string title, string question, params string[] answers) => choice;
}
