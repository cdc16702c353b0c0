using AxleRisk.App.Text;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Editing;

/// <summary>All inputs of a scenario in groups, for the editor's table.</summary>
internal static class InputRows
{
    /// <summary>The groups of a valid scenario.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="text">Its text, from which the numbers are shown as they were written.</param>
    public static IReadOnlyList<InputGroup> Of(Scenario scenario, string text)
    {
        var stated = new StatedValues(text);
        InputGroup Section(string title, string section, params InputRow[] before) =>
            new(title, [.. before, .. scenario.Inputs.Where(i => i.Quantity.Section == section).Select(i => Row(i, stated))]);

        return
        [
            new InputGroup("Question",
            [
                Plain(stated, "title", "title", InputKind.Text, scenario.Title, "", "what is printed at the head of every result",
                    "one line of up to 200 characters"),
                Plain(stated, "required_km", "required distance", InputKind.Number, stated.Number("required_km") ?? Figures.Number(scenario.RequiredKm), "km",
                    "the distance the axle must last", Domain.Positive.Describe()),
                Plain(stated, "currency", "currency", InputKind.Text, scenario.Currency ?? "none", "", "what costs are stated in; only printed",
                    "a word of up to 8 characters, such as EUR") with
                { Default = "none" },
            ]),
            Section("Vehicle (one rear wheel, but for the payload)", "vehicle"),
            Section("Axle: the checked section", "axle",
                Word(stated, "axle.shape", ScenarioFormat.Axle, (int)scenario.Shape)),
            new InputGroup("Weld detail", [.. Detail(scenario.Detail, stated, "detail")]),
            .. scenario.Sections.Select(s => new InputGroup(
                $"Section: {Printable.Line(s.Name)}",
                [
                    Word(stated, s.NameOf("shape"), SectionFormat.Section, (int)s.Shape),
                    .. scenario.Inputs.Where(i => i.Section == s.Name).Select(i => Row(i, stated)),
                    .. Detail(s.Detail, stated, $"{CheckedSection.Table}.{s.Name}"),
                ])),
            Section("Use", "use", Mix(scenario, stated)),
            .. scenario.Legs.Select((leg, i) => new InputGroup($"Leg {i + 1}: {Printable.Line(leg.Name)}", [.. Leg(scenario, i, stated)])),
            Section("Fatigue", "fatigue",
                Word(stated, "fatigue.counting", ScenarioFormat.Fatigue, (int)scenario.Counting)),
            .. scenario.Bearing is { } bearing
                ? [Section("Wheel bearing", Quantities.BearingSection,
                    Word(stated, "bearing.kind", ScenarioFormat.Bearing, (int)bearing))]
                : Array.Empty<InputGroup>(),
            .. scenario.Crack is not null ? [Section("Crack", Quantities.CrackSection)] : Array.Empty<InputGroup>(),
            .. ListedInputs.Of(scenario),
        ];
    }

    private static InputRow Row(Input input, StatedValues stated)
    {
        var uncertain = input.Value as Value.Uncertain;
        TomlPath path = ScenarioEdits.PathOf(input);
        string value = uncertain is null
            ? stated.Number(input.Name) ?? Figures.Number(input.Value.Nominal)
            : DistributionText.Of(uncertain);
        return new InputRow(
            path, input.Name, input.Event is { } happening ? input.Quantity.LabelOn(happening) : input.Quantity.Label,
            InputKind.Quantity, value, input.Quantity.Unit, !input.IsDefault,
            input.Quantity.Meaning, input.Quantity.Domain.Describe())
        {
            Default = input.Quantity.Default is { } standard ? $"{Text(standard)} ({input.Quantity.DefaultSource})" : null,
            Factor = uncertain?.Knowledge,
            Quantity = input.Quantity,
        };
    }

    private static string Text(Value value) =>
        value is Value.Uncertain u ? DistributionText.Of(u) : Figures.Number(value.Nominal);

    private static IEnumerable<InputRow> Detail(Detail detail, StatedValues stated, string table)
    {
        yield return Word(stated, $"{table}.catalogue", DetailFormat.Detail,
            DetailFormat.Detail.Find("catalogue")!.Words.IndexOf(detail.Catalogue)) with
        { Default = null };
        foreach (InputRow row in detail.IsOwn ? [] : Catalogued(detail, stated, table))
        {
            yield return row;
        }

        yield return Plain(stated, $"{table}.thickness_exponent", "thickness exponent", InputKind.Number, detail.ThicknessExponent is double k
            ? Figures.Number(k) : "of the curve", "", "exponent of the thickness correction", Domain.Fraction.Describe()) with
        {
            Default = "that of the catalogue; 0 for a curve of your own",
        };
    }

    private static IEnumerable<InputRow> Catalogued(Detail detail, StatedValues stated, string table)
    {
        bool isSure = detail.Categories.Length == 1;
        string value = isSure ? detail.Categories[0] : DistributionText.Choice(detail.Categories, detail.Weights);
        yield return Plain(stated, $"{table}.category", WordFactor.LabelOfName(Change.CategoryName)!, InputKind.Category, value, "",
            "the weld detail, or several with weights, best first", "a category of the catalogue") with
        {
            Factor = isSure ? null : detail.Knowledge,
            Words = SnCatalogue.Categories(detail.Catalogue),
        };
        int environment = DetailFormat.Detail.Find("environment")!.Words.IndexOf(detail.Environment?.Nominal ?? Surroundings.Air);
        InputRow row = Word(stated, $"{table}.environment", DetailFormat.Detail, environment);
        yield return detail.Environment is { Only: null } several
            ? row with { ValueText = DistributionText.Choice(several), Factor = several.Knowledge } : row;
    }

    private static InputRow Mix(Scenario scenario, StatedValues stated) =>
        Plain(
            stated, "use.mix_concentration", "road mix, concentration", InputKind.Number, scenario.MixConcentration is double c
                ? stated.Number("use.mix_concentration") ?? Figures.Number(c) : "certain", "",
            "how sure the road mix is: the larger, the surer are the shares", Domain.Positive.Describe()) with
        {
            Default = "the shares are certain",
            Factor = scenario.MixConcentration is null ? null : scenario.MixKnowledge,
        };

    private static IEnumerable<InputRow> Leg(Scenario scenario, int index, StatedValues stated)
    {
        Leg leg = scenario.Legs[index];
        string name = $"legs.{leg.Name}";
        yield return Plain(stated, $"{name}.name", "name", InputKind.Text, leg.Name, "", "the name of the leg",
            "up to 40 letters, digits, - and _, unique");
        yield return Plain(stated, $"{name}.share", "share", InputKind.Share, stated.Number($"{name}.share") ?? Figures.Number(leg.Share), "",
            "its share of the distance; all add up to 1", "a number above 0 and up to 1");
        if (leg.RoadClass is char roadClass)
        {
            yield return Word(stated, $"{name}.road_class", UseFormat.Leg, roadClass - 'A') with
            { Default = null };
        }

        foreach (Input input in scenario.Inputs.Where(i => i.Leg == index))
        {
            yield return Row(input, stated);
        }
    }

    // The place of the word in use among the words of its key, the last part of the name.
    private static InputRow Word(StatedValues stated, string name, TableFormat table, int place)
    {
        KeyFormat key = table.Find(name[(name.LastIndexOf('.') + 1)..])!;
        return Plain(
            stated, name, key.Label, InputKind.Word, key.Words[place], "", key.Meaning, "one of " + string.Join(", ", key.Words)) with
        { Words = key.Words, Default = key.Words[0] };
    }

    private static InputRow Plain(
        StatedValues stated, string name, string label, InputKind kind, string value, string unit, string meaning, string allowed) =>
        new(TomlPath.Of(name), name, label, kind, Printable.Line(value), unit, stated.Has(name), meaning, allowed);
}
