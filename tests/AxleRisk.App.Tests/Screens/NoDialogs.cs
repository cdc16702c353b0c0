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

    public int? Choose(string title, string question, params string[] answers) => choice;
}
