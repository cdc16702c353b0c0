using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Files.Writing;

/// <summary>The changes of a scenario that are more than one value at one path.</summary>
public static class ScenarioEdits
{
    private static readonly string[] LifeKeys = ["failed_at_km", "failed_between_km", "survived_km"];

    /// <summary>The path of an input by its name among the inputs: <c>legs.gravel.speed_km_per_h</c>.</summary>
    public static TomlPath PathOf(Input input) => TomlPath.Of(input.Name);

    /// <summary>The shares of all legs of an array of legs, in the order of the file; they add up to 1 as they are written.</summary>
    public static ScenarioEdit RoadMix(IReadOnlyList<double> shares, string legs = "use.legs")
    {
        ImmutableArray<decimal> exact = Shares.Exactly(shares);
        return new ScenarioEdit("road mix",
            [.. exact.Select((s, i) => new TomlEdit.Set(TomlPath.Of(legs).At(i).Then("share"), TomlValue.Of((double)s)))]);
    }

    /// <summary>The weld detail: a catalogue and a category, or several with weights that add up to 1 as they are written.</summary>
    /// <param name="name">The name of the category among the inputs.</param>
    /// <param name="catalogue">The catalogue.</param>
    /// <param name="categories">The categories.</param>
    /// <param name="knowledge">Why there are several; null to state nothing.</param>
    public static ScenarioEdit Detail(
        string name, string catalogue, IReadOnlyList<(string Category, double Weight)> categories, Knowledge? knowledge) =>
        new(name,
        [
            new TomlEdit.Set(TomlPath.Of(name).Parent.Then("catalogue"), TomlValue.Of(catalogue)),
            new TomlEdit.Set(TomlPath.Of(name), Category(categories, knowledge)),
        ]);

    /// <summary>A category, or a choice of several with their weights.</summary>
    public static TomlValue Category(IReadOnlyList<(string Category, double Weight)> categories, Knowledge? knowledge) =>
        categories.Count == 1
        ? TomlValue.Of(categories[0].Category)
        : TomlValue.TableOf(
        [
            ("distribution", TomlValue.Of("choice")),
            ("values", TomlValue.ListOf(categories.Select(c => TomlValue.Of(c.Category)))),
            ("weights", TomlValue.ListOf(Shares.Exactly([.. categories.Select(c => c.Weight)]).Select(Shares.ToValue))),
            .. knowledge is { } known ? new (string, TomlValue)[] { ("knowledge", TomlValue.Of(KnowledgeWord(known))) } : [],
        ]);

    /// <summary>The rank correlation of two inputs: added, changed where they have one, or taken out where it is 0.</summary>
    public static ScenarioEdit Correlation(Scenario scenario, string first, string second, double spearman)
    {
        TomlPath all = TomlPath.Of("correlations");
        int index = scenario.Correlations.ToList()
            .FindIndex(c => (c.First == first && c.Second == second) || (c.First == second && c.Second == first));
        TomlEdit[] steps = (index, spearman) switch
        {
            (-1, 0) => [],
            (-1, _) =>
            [
                new TomlEdit.Append(all, new TomlValue.Table([
                    new TomlItem("between", TomlValue.ListOf(TomlValue.Of(first), TomlValue.Of(second))),
                    new TomlItem("spearman", TomlValue.Of(spearman)),
                ])),
            ],
            (_, 0) => [new TomlEdit.Remove(all.At(index))],
            _ => [new TomlEdit.Set(all.At(index).Then("spearman"), TomlValue.Of(spearman))],
        };
        return new ScenarioEdit("correlation", [.. steps]);
    }

    /// <summary>What is known of the life of this axle; null where nothing is.</summary>
    public static ScenarioEdit Life(LifeEvidence? life)
    {
        (string? key, TomlValue? value) = life switch
        {
            LifeEvidence.FailedAt at => ("failed_at_km", TomlValue.Of(at.Km)),
            LifeEvidence.FailedBetween between =>
                ("failed_between_km", TomlValue.ListOf(TomlValue.Of(between.FromKm), TomlValue.Of(between.ToKm))),
            LifeEvidence.Survived survived => ("survived_km", TomlValue.Of(survived.Km)),
            _ => ((string?)null, (TomlValue?)null),
        };
        TomlPath table = TomlPath.Of("evidence");
        IEnumerable<TomlEdit> others = LifeKeys.Where(k => k != key).Select(k => new TomlEdit.Remove(table.Then(k)));
        TomlEdit[] crack = life?.FailedByKm is null ? [new TomlEdit.Remove(table.Then("cracked_at"))] : [];
        return new ScenarioEdit("evidence",
            [.. others, .. crack, .. key is null ? [] : new TomlEdit[] { new TomlEdit.Set(table.Then(key), value!) }]);
    }

    /// <summary>The word of a scenario file for a kind of not knowing.</summary>
    public static string KnowledgeWord(Knowledge knowledge) => knowledge == Knowledge.Unknown ? "unknown" : "varies";
}
