using AxleRisk.App.Text;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Editing;

/// <summary>The lists of a scenario as groups: correlations, evidence and remedies, an element a row.</summary>
internal static class ListedInputs
{
    public static IEnumerable<InputGroup> Of(Scenario scenario)
    {
        yield return new InputGroup("Rank correlations", [.. scenario.Correlations.Select((c, i) => Row(
            $"correlations[{i}]", $"{scenario.LabelOf(c.First)} with {scenario.LabelOf(c.Second)}", c.Spearman.ToString("0.###"), "Spearman's rank correlation of the two",
                "above -1 and below 1"))]);
        yield return new InputGroup("Evidence from one vehicle", [.. Evidence(scenario)]);
        yield return new InputGroup("Remedies", [.. scenario.Remedies.Select((r, i) => Row(
            $"remedies[{i}]", r.Name, RemediesText.Changes(scenario, r),
                "what could be done about it", "changes of inputs"))]);
    }

    private static IEnumerable<InputRow> Evidence(Scenario scenario)
    {
        Evidence evidence = scenario.Evidence;
        (string key, string value)? life = evidence.Life switch
        {
            LifeEvidence.FailedAt at => ("failed_at_km", $"failed at {Figures.Exact(at.Km)} km"),
            LifeEvidence.FailedBetween between =>
                ("failed_between_km", $"failed between {Figures.Exact(between.FromKm)} and {Figures.Exact(between.ToKm)} km"),
            LifeEvidence.Survived survived => ("survived_km", $"whole at {Figures.Exact(survived.Km)} km"),
            _ => null,
        };
        if (life is var (key, value))
        {
            yield return Row($"evidence.{key}", "life", value, "what is known of the life of this axle", "a distance above 0");
        }

        if (evidence.CrackedAt is { } cracked)
        {
            yield return Row(
                "evidence.cracked_at", "cracked at", ModeText.SectionName(cracked), "the section that was found cracked, and no other",
                "axle, or the name of a further section");
        }

        for (int i = 0; i < evidence.Measured.Length; i++)
        {
            Measurement m = evidence.Measured[i];
            yield return Row(
                $"evidence.measured[{i}]", scenario.LabelOf(m.Factor), $"{Figures.Number(m.Value)} +/- {Figures.Number(m.StandardDeviation)}",
                "measured on this vehicle: value and standard deviation of the error", "a value the input can have");
        }

        for (int i = 0; i < evidence.Known.Length; i++)
        {
            KnownState k = evidence.Known[i];
            string state = scenario.FindWords(k.Factor) is { } choice ? choice.Words[(int)k.Value] : Figures.Number(k.Value);
            yield return Row(
                $"evidence.known[{i}]", scenario.LabelOf(k.Factor), state, "the state of a choice that is known of this vehicle",
                "a state of the choice");
        }
    }

    private static InputRow Row(string path, string label, string value, string meaning, string allowed) =>
        new(TomlPath.Of(path), path, Printable.Line(label), InputKind.Element, Printable.Line(value), "", true, meaning, allowed)
        { Default = "none" };
}
