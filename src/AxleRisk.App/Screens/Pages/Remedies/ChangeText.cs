using AxleRisk.App.Screens.Pages.Inputs;
using AxleRisk.App.Text;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Pages.Remedies;

/// <summary>
/// What an input becomes by a remedy, as one line of text and back: <c>7.0</c>, <c>x 0.8</c>, <c>E</c>, or a distribution as in a
/// scenario file.
/// </summary>
internal static class ChangeText
{
    /// <summary>What can be written.</summary>
    public const string Allowed = "a number, x 0.8 for times, or { distribution = \"normal\", ... } as in the file";

    private const string TimesKey = "times";

    /// <summary>The text of a change as the file states it.</summary>
    public static string Of(TomlValue stated) => stated switch
    {
        TomlValue.Text text => text.Value,
        TomlValue.Table table when table.Items.Length == 1 && table[TimesKey] is { } times => $"x {times.Write()}",
        _ => stated.Write(),
    };

    /// <summary>The value for the file; null where the text is none.</summary>
    /// <param name="input">The input's name: a category is a word.</param>
    /// <param name="text">The text.</param>
    public static TomlValue? Parse(string input, string text)
    {
        text = text.Trim();
        if (text.StartsWith('{'))
        {
            return ScenarioEditor.Read($"v = {text}\n", TomlPath.Of("v"));
        }

        if (text.StartsWith("x ", StringComparison.OrdinalIgnoreCase) && InputEditor.Number(text[2..].Trim()) is double times)
        {
            return TomlValue.TableOf((TimesKey, new TomlValue.Number(times, text[2..].Trim())));
        }

        return input == Change.CategoryName
            ? text.Length > 0 ? TomlValue.Of(text) : null
            : InputEditor.Number(text) is double number ? new TomlValue.Number(number, text) : null;
    }

    /// <summary>What an input is without the remedy.</summary>
    public static string Now(Scenario scenario, string input)
    {
        if (input == Change.CategoryName)
        {
            return scenario.Detail.Categories is [var only]
                ? only : DistributionText.Choice(scenario.Detail.Categories, scenario.Detail.Weights);
        }

        Input? found = scenario.Inputs.FirstOrDefault(i => i.Name == input);
        return found?.Value switch
        {
            Value.Uncertain u => DistributionText.Of(u),
            { } value => Figures.Number(value.Nominal),
            null => "",
        } + (found is { Quantity.Unit.Length: > 0 } ? $" {found.Quantity.Unit}" : "");
    }
}
