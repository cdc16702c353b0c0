using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads the tree of a scenario file, table by table.</summary>
/// <param name="errors">Where errors go.</param>
/// <param name="values">Reads the scalars.</param>
/// <param name="end">The end of the file, where missing tables are reported.</param>
internal sealed class ScenarioTreeReader(ErrorLog errors, ValueReader values, Position end)
{
    private const int LongestTitle = 200;
    private const int LongestCurrency = 8;

    private static readonly Dictionary<string, CycleCounting> CountingWords = new()
    {
        ["dirlik"] = CycleCounting.Dirlik,
        ["narrow-band"] = CycleCounting.NarrowBand,
        ["tovo-benasciutti"] = CycleCounting.TovoBenasciutti,
    };

    private readonly InputCollector inputs = new();

    /// <summary>Reads the whole file. The result is good only if there are no errors.</summary>
    public Scenario Read(TomlTable document)
    {
        TableReader root = new(document, "", errors);
        QuantityReader quantities = new(errors, values, inputs);
        string title = ReadTitle(root);
        string about = root.Text("about") ?? "";
        string[] block = [.. TitleBlock.Keys.Select(key => ReadLine(root, key))];
        string? currency = ReadCurrency(root);
        double requiredKm = root.RequiredNumber("required_km", Domain.Positive) ?? 1;

        if (Section(root, "vehicle", MustState("vehicle")) is TableReader vehicle)
        {
            quantities.ReadSection(vehicle, "vehicle");
            vehicle.RejectUnknown(QuantityReader.OtherSection);
        }

        SectionShape shape = Section(root, "axle", "lever_arm_mm, outside_diameter_mm and wall_mm") is TableReader axle
            ? new AxleReader(errors, quantities, inputs).Read(axle)
            : SectionShape.Tube;
        Detail? detail = Section(root, "detail", "catalogue and category") is TableReader table
            ? new DetailReader(errors).Read(table)
            : null;

        TableReader? use = Section(root, "use", null);
        double? concentration = null;
        Knowledge mixKnowledge = Knowledge.Varies;
        ImmutableArray<Leg> legs = [];
        if (use is not null)
        {
            quantities.ReadSection(use, "use");
            concentration = use.Number("mix_concentration", Domain.Positive);
            mixKnowledge = ReadMixKnowledge(use);
            legs = new LegsReader(errors, quantities).Read(use.Find("legs"), root.Find("use") is TomlEntry entry ? entry.Node.At : end);
            if (legs.IsEmpty)
            {
                inputs.MarkWrong("legs");
            }

            use.RejectUnknown(QuantityReader.OtherSection);
        }

        TableReader? fatigue = Section(root, "fatigue", null);
        CycleCounting counting = CycleCounting.Dirlik;
        if (fatigue is not null)
        {
            counting = fatigue.Word("counting", CountingWords) ?? CycleCounting.Dirlik;
            quantities.ReadSection(fatigue, "fatigue");
            fatigue.RejectUnknown(QuantityReader.OtherSection);
        }

        BearingKind? bearing = new ModesReader(errors, quantities, inputs).Read(root);
        ImmutableArray<Input> inOrder = inputs.InOrder();
        TripReader trips = new(errors, values, inputs, legs);
        TomlEntry? tripEntry = root.Find("trip");
        Trip? trip = trips.Read(tripEntry);
        InputCollector all = inputs.With(trips.Inputs);
        TomlEntry? stated = root.Find("correlations");
        ImmutableArray<RankCorrelation> correlations = new CorrelationsReader(errors, all).Read(stated);
        Evidence evidence = new EvidenceReader(errors, new EvidenceNames(errors, inputs, detail, concentration is null ? [] : legs))
            .Read(root);
        TomlEntry? remedies = root.Find("remedies");
        Fleet? fleet = new FleetReader(errors, values).Read(root.Find("fleet"));
        root.RejectUnknown(QuantityReader.OtherSection);
        var scenario = new Scenario
        {
            Title = title,
            About = about,
            Block = new TitleBlock(block[0], block[1], block[2], block[3], block[4]),
            RequiredKm = requiredKm,
            Currency = currency,
            Shape = shape,
            Detail = detail ?? new Detail("", [""], [1]),
            Legs = legs,
            MixConcentration = concentration,
            MixKnowledge = mixKnowledge,
            Bearing = bearing,
            Counting = counting,
            Inputs = inOrder,
            Correlations = [.. correlations.Where(c => !IsOfTrip(c))],
            Evidence = evidence,
            Trip = trip is null ? null : trip with { Correlations = [.. correlations.Where(IsOfTrip)] },
            Fleet = fleet,
        };
        scenario = scenario with { Remedies = new RemediesReader(errors, values, inputs).Read(remedies, scenario) };
        return trip is null ? scenario : scenario with
        { Trip = scenario.Trip! with { Remedies = ReadTripRemedies(tripEntry!, all, scenario) } };
    }

    private ImmutableArray<Remedy> ReadTripRemedies(TomlEntry trip, InputCollector all, Scenario scenario) =>
        new RemediesReader(errors, values, all, $"trip.{TripReader.Remedies}")
            .Read(((TomlTable)trip.Node).Find(TripReader.Remedies), Trip.Whole(scenario), scenario.Remedies.Select(r => r.Name));

    private static bool IsOfTrip(RankCorrelation correlation) => Trip.IsNameOf(correlation.First) || Trip.IsNameOf(correlation.Second);

    /// <summary>A text of one line; empty where it is not stated.</summary>
    private string ReadLine(TableReader root, string key)
    {
        string text = root.Text(key) ?? "";
        if (text.Length > 0 && MessageText.LineFault(text, LongestTitle) is { } fault)
        {
            errors.Add(root.Find(key)!.Node.At, $"{key} must be one line of up to {LongestTitle} characters; {fault}");
        }

        return text;
    }

    private string ReadTitle(TableReader root)
    {
        if (root.RequiredText("title") is not string title)
        {
            return "";
        }

        if (MessageText.LineFault(title, LongestTitle) is { } fault)
        {
            errors.Add(root.Find("title")!.Node.At, $"title must be one line of up to {LongestTitle} characters; {fault}");
        }

        return title;
    }

    private string? ReadCurrency(TableReader root)
    {
        if (root.Text("currency") is string currency)
        {
            if (MessageText.LineFault(currency, LongestCurrency) is not { } fault)
            {
                return currency;
            }

            errors.Add(
                root.Find("currency")!.Node.At, $"currency must be a word of up to {LongestCurrency} characters, such as EUR; {fault}");
        }

        return null;
    }

    private Knowledge ReadMixKnowledge(TableReader use)
    {
        Knowledge knowledge = use.Word("mix_knowledge", ValueReader.KnowledgeWords) ?? Knowledge.Varies;
        if (use.Table.Find("mix_concentration") is null && use.Table.Find("mix_knowledge") is TomlEntry entry)
        {
            errors.Add(entry.KeyAt, "use.mix_knowledge needs a mix_concentration");
        }

        return knowledge;
    }

    /// <summary>A table of the file. One that is missing is an error if it must state something, and empty otherwise.</summary>
    private TableReader? Section(TableReader root, string name, string? mustState)
    {
        switch (root.Find(name)?.Node)
        {
            case TomlTable table:
                return new TableReader(table, name, errors);
            case null when mustState is null:
                return new TableReader(new TomlTable(end, TableOrigin.Implied), name, errors);
            case null:
                errors.Add(end, $"[{name}] is missing; it must state {mustState}");
                inputs.MarkWrong(name);
                return null;
            case TomlNode other:
                errors.Add(other.At, $"{name} must be one table under [{name}]");
                inputs.MarkWrong(name);
                return null;
        }
    }

    private static string MustState(string section) =>
        MessageText.List([.. Quantities.All.Where(q => q.Section == section && q.Default is null && q.Without is null).Select(q => q.Key)]);
}
