using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Pages.Causes;

/// <summary>The edits of a scenario's evidence.</summary>
internal static class EvidenceEdits
{
    private static readonly TomlPath Measured = TomlPath.Of("evidence.measured");
    private static readonly TomlPath Known = TomlPath.Of("evidence.known");

    /// <summary>A factor measured: a new one, or in place of one.</summary>
    /// <param name="index">The place of the one it replaces; null for a new one.</param>
    /// <param name="factor">The factor's name.</param>
    /// <param name="value">The value read.</param>
    /// <param name="sd">The standard deviation of its error.</param>
    public static ScenarioEdit Measure(int? index, string factor, TomlValue value, TomlValue sd) =>
        Put(Measured, index, ("factor", TomlValue.Of(factor)), ("value", value), ("sd", sd));

    /// <summary>A choice whose state is known: a new one, or in place of one.</summary>
    public static ScenarioEdit Know(int? index, Factor factor, double state) => Put(
        Known, index, ("factor", TomlValue.Of(factor.Name)),
            ("state", factor is WordFactor ? TomlValue.Of(factor.Show(state)) : TomlValue.Of(state)));

    /// <summary>Takes a piece of evidence out; null for what is not taken out here.</summary>
    public static ScenarioEdit? Remove(EvidenceItem item) => item.Kind switch
    {
        EvidenceKind.Life => ScenarioEdits.Life(null),
        EvidenceKind.Measured => new ScenarioEdit("evidence", [new TomlEdit.Remove(Measured.At(item.Index))]),
        EvidenceKind.Known => new ScenarioEdit("evidence", [new TomlEdit.Remove(Known.At(item.Index))]),
        _ => null,
    };

    private static ScenarioEdit Put(TomlPath all, int? index, params (string Key, TomlValue Value)[] entries) => new(
        "evidence",
        index is int i
            ? [.. entries.Select(e => new TomlEdit.Set(all.At(i).Then(e.Key), e.Value))]
            : [new TomlEdit.Append(all, TomlValue.TableOf(entries))]);
}
