using AxleRisk.App.Screens.Forms;

namespace AxleRisk.App.Screens.Pages;

/// <summary>What a page may ask of the reader in a window of its own; the calls return when it is closed.</summary>
internal interface IDialogs
{
    /// <summary>Asks for a text.</summary>
    /// <param name="title">The window's title.</param>
    /// <param name="question">The question, with the unit.</param>
    /// <param name="initial">What stands in the field at first.</param>
    /// <param name="refusal">Why a text is not right; null where it is.</param>
    /// <returns>The text; null where the reader left without an answer.</returns>
    string? Ask(string title, string question, string initial, Func<string, string?> refusal);

    /// <summary>Lets the reader fill in a form.</summary>
    /// <returns>Whether it was accepted; it is then right.</returns>
    bool Fill(Form form);

    /// <summary>Lets the reader choose between answers; Enter takes the last, which therefore never destroys anything.</summary>
    /// <returns>The index of the answer; null where the reader left without one.</returns>
    int? Choose(string title, string question, params string[] answers);
}
