using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Studies;

/// <summary>What studies of uncertain inputs need.</summary>
internal static class UncertainInputs
{
    /// <summary>That a scenario has none, as the end of a sentence; null where it has.</summary>
    public static string? None(Scenario scenario, string verb) => FactorSet.Of(scenario).Factors.IsEmpty
        ? $"no value is uncertain, so there is nothing to {verb}; give at least one a distribution" : null;
}
