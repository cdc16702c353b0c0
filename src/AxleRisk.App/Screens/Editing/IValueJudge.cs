using AxleRisk.Core.Scenarios;
using AxleRisk.Files;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Editing;

/// <summary>Says what a value would be that a form states, and what is wrong with it.</summary>
internal interface IValueJudge
{
    /// <summary>The text in which the value stands.</summary>
    string Text { get; }

    /// <summary>The text after an edit, the value in it (null where it is wrong), and what the edit makes wrong.</summary>
    (string Text, Value? Value, IReadOnlyList<ScenarioError> Errors) Judge(ScenarioEdit edit);
}

/// <summary>Judges an input of a scenario by reading the whole.</summary>
/// <param name="scenario">The scenario.</param>
/// <param name="input">The input.</param>
internal sealed class InputJudge(EditedScenario scenario, Input input) : IValueJudge
{
    public string Text => scenario.Text;

    public (string Text, Value? Value, IReadOnlyList<ScenarioError> Errors) Judge(ScenarioEdit edit)
    {
        (string text, ScenarioDocument? document, IReadOnlyList<ScenarioError> errors) = scenario.Try(edit);
        return (text, document?.Scenario.Inputs.FirstOrDefault(i => i.Name == input.Name)?.Value,
            [.. errors.Where(e => !scenario.Errors.Any(known => known.Message == e.Message))]);
    }
}

/// <summary>Judges a value that stands in no scenario yet, by itself.</summary>
/// <param name="scenario">The scenario, beside which its data lie.</param>
/// <param name="input">Stands for the value; its name is the key in the text.</param>
/// <param name="stated">The value as stated; null where it is not.</param>
internal sealed class LoneJudge(EditedScenario scenario, Input input, TomlValue? stated) : IValueJudge
{
    public string Text { get; } = stated is null ? "" : $"{input.Name} = {stated.Write()}\n";

    public (string Text, Value? Value, IReadOnlyList<ScenarioError> Errors) Judge(ScenarioEdit edit)
    {
        string text = ScenarioEditor.Apply(Text, edit);
        (Value? value, IReadOnlyList<ScenarioError> errors) = scenario.ReadValue(text, input.Name, input.Quantity.Domain);
        return (text, value, errors);
    }
}
