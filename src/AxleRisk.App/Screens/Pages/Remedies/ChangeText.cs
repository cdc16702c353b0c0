using AxleRisk.App.Text;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Screens.Pages.Remedies;

/// <summary>What an input is that a remedy would change, as one line of text.</summary>
internal static class ChangeText
{
    /// <summary>What an input is without the remedy.</summary>
    public static string Now(Scenario scenario, string input)
    {
        if (scenario.WordNames.Contains(input))
        {
            return scenario.FindWords(input) is { } choice ? DistributionText.Choice(choice) : Surroundings.Air;
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
