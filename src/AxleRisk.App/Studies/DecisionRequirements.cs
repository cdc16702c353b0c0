using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Studies;

/// <summary>What a decision needs.</summary>
internal static class DecisionRequirements
{
    /// <summary>What is missing, and what would help, as the end of a sentence; null where all is there.</summary>
    public static string? Missing(Scenario scenario)
    {
        if (scenario.Decision is not { } decision)
        {
            return "there is no decision; state one under [decision]: what a failure costs";
        }

        if (decision.OptionsIn(scenario).IsEmpty)
        {
            return "there is nothing to decide between; state at least one remedy under [[remedies]], with its cost";
        }

        if (decision.UnderWarranty && scenario.Fleet is null)
        {
            return "decision.over = \"warranty\" needs a fleet; state one under [fleet], or over = \"distance\"";
        }

        if (decision.CostOfFailure(scenario) is null)
        {
            return "what a failure costs is not known; state decision.failure_cost";
        }

        return decision.OptionsIn(scenario).FirstOrDefault(o => o.Cost is null) is { } without
            ? $"the cost of {Text.Printable.Line(without.Name)} is not known; state the cost of each remedy (0 where it costs nothing)" : null;
    }
}
