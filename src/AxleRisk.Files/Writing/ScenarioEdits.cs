using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Files.Writing;

/// <summary>The changes of a scenario that are more than one value at one path.</summary>
public static class ScenarioEdits
{
    private static readonly string[] LifeKeys = ["failed_at_km", "failed_between_km", "survived_km"];

    private static readonly string[] ShapeKeys =
        [Quantities.OutsideDiameter.Key, Quantities.BoxWidth.Key, Quantities.BoxHeight.Key, Quantities.SectionModulus.Key];

    /// <summary>The path of an input by its name among the inputs: <c>legs.gravel.speed_km_per_h</c>.</summary>
    public static TomlPath PathOf(Input input) => TomlPath.Of(input.Name);

    /// <summary>The shares of all legs of an array of legs, in the order of the file; they add up to 1 as they are written.</summary>
    public static ScenarioEdit RoadMix(IReadOnlyList<double> shares, string legs = "use.legs")
    {
        ImmutableArray<decimal> exact = Shares.Exactly(shares);
        return new ScenarioEdit("road mix",
            [.. exact.Select((s, i) => new TomlEdit.Set(TomlPath.Of(legs).At(i).Then("share"), TomlValue.Of((double)s)))]);
    }

    /// <summary>A new leg with a share of its own; the others shrink in proportion.</summary>
    /// <param name="shares">The shares of the legs there are.</param>
    /// <param name="leg">The leg; its share is set here.</param>
    /// <param name="share">Its share, above 0 and below 1.</param>
    public static ScenarioEdit AddLeg(IReadOnlyList<double> shares, TomlValue.Table leg, double share)
    {
        double sum = shares.Sum();
        ScenarioEdit mix = RoadMix([.. shares.Select(s => s / sum * (1 - share)), share]);
        TomlItem[] items = [.. leg.Items.Where(i => i.Key != "share")];
        var withShare = new TomlValue.Table([.. items.Take(1), new TomlItem("share", TomlValue.Of(share)), .. items.Skip(1)]);
        return new ScenarioEdit("add leg", [new TomlEdit.Append(TomlPath.Of("use.legs"), withShare), .. mix.Steps]);
    }

    /// <summary>Takes a leg out; the others grow in proportion.</summary>
    public static ScenarioEdit RemoveLeg(IReadOnlyList<double> shares, int index)
    {
        double[] left = [.. shares.Where((_, i) => i != index)];
        return new ScenarioEdit("remove leg",
            [new TomlEdit.Remove(TomlPath.Of("use.legs").At(index)), .. left.Length > 0 ? RoadMix(left).Steps : []]);
    }

    /// <summary>How sure the road mix is; null where the shares are certain.</summary>
    public static ScenarioEdit MixConcentration(double? concentration, Knowledge knowledge)
    {
        TomlPath number = TomlPath.Of("use.mix_concentration");
        TomlPath word = TomlPath.Of("use.mix_knowledge");
        return new ScenarioEdit("use.mix_concentration", concentration is double c
            ? [new TomlEdit.Set(number, TomlValue.Of(c)), new TomlEdit.Set(word, Word(knowledge))]
            : [new TomlEdit.Remove(number), new TomlEdit.Remove(word)]);
    }

    /// <summary>The weld detail: a catalogue and a category, or several with weights that add up to 1 as they are written.</summary>
    public static ScenarioEdit Detail(string catalogue, IReadOnlyList<(string Category, double Weight)> categories, Knowledge knowledge) =>
        new("detail.category",
        [
            new TomlEdit.Set(TomlPath.Of("detail.catalogue"), TomlValue.Of(catalogue)),
            new TomlEdit.Set(TomlPath.Of("detail.category"), Category(categories, knowledge)),
        ]);

    /// <summary>A category, or a choice of several with their weights.</summary>
    public static TomlValue Category(IReadOnlyList<(string Category, double Weight)> categories, Knowledge knowledge) =>
        categories.Count == 1
        ? TomlValue.Of(categories[0].Category)
        : TomlValue.TableOf(
            ("distribution", TomlValue.Of("choice")),
            ("values", TomlValue.ListOf(categories.Select(c => TomlValue.Of(c.Category)))),
            ("weights", TomlValue.ListOf(Shares.Exactly([.. categories.Select(c => c.Weight)]).Select(Shares.ToValue))),
            ("knowledge", Word(knowledge)));

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
        return new ScenarioEdit("evidence",
            [.. others, .. key is null ? [] : new TomlEdit[] { new TomlEdit.Set(table.Then(key), value!) }]);
    }

    /// <summary>The road of a leg by its class, in place of a stated roughness.</summary>
    public static ScenarioEdit RoadClass(string leg, char roadClass) => new($"legs.{leg}.road_class",
    [
        new TomlEdit.Remove(LegKey(leg, Quantities.Roughness.Key)),
        new TomlEdit.Set(LegKey(leg, "road_class"), TomlValue.Of(roadClass.ToString())),
    ]);

    /// <summary>The road of a leg by its roughness, a number or a distribution, in place of a class.</summary>
    public static ScenarioEdit Roughness(string leg, TomlValue roughness) => new($"legs.{leg}.{Quantities.Roughness.Key}",
    [
        new TomlEdit.Remove(LegKey(leg, "road_class")),
        new TomlEdit.Remove(LegKey(leg, Quantities.RoughnessWithinClass.Key)),
        new TomlEdit.Set(LegKey(leg, Quantities.Roughness.Key), roughness),
    ]);

    /// <summary>Another shape of the section with its sizes; those of other shapes go.</summary>
    /// <param name="shape">The shape's word: <c>tube</c>, <c>box</c> or <c>given</c>.</param>
    /// <param name="sizes">The sizes it needs by their keys, such as <c>width_mm</c>.</param>
    public static ScenarioEdit Shape(string shape, IReadOnlyDictionary<string, double> sizes)
    {
        string[] ofShapes = [.. ShapeKeys, .. shape == "given" ? [Quantities.CorrosionLoss.Key] : Array.Empty<string>()];
        TomlPath axle = TomlPath.Of("axle");
        return new ScenarioEdit("axle.shape",
        [
            new TomlEdit.Set(axle.Then("shape"), TomlValue.Of(shape)),
            .. ofShapes.Where(k => !sizes.ContainsKey(k)).Select(k => new TomlEdit.Remove(axle.Then(k))),
            .. sizes.Select(s => new TomlEdit.Set(axle.Then(s.Key), TomlValue.Of(s.Value))),
        ]);
    }

    private static TomlPath LegKey(string leg, string key) => TomlPath.Of(Quantities.LegSection).Then(leg).Then(key);

    private static TomlValue.Text Word(Knowledge knowledge) => TomlValue.Of(KnowledgeWord(knowledge));

    /// <summary>The word of a scenario file for a kind of not knowing.</summary>
    public static string KnowledgeWord(Knowledge knowledge) => knowledge == Knowledge.Unknown ? "unknown" : "varies";
}
