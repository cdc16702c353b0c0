using System.Collections.Immutable;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Distributions;
using AxleRisk.Files.Format;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads the tree of a scenario file, table by table.</summary>
/// <param name="errors">Where errors go.</param>
/// <param name="values">Reads the scalars.</param>
/// <param name="end">The end of the file, where missing tables are reported.</param>
/// <param name="data">The data files that it names.</param>
internal sealed class ScenarioTreeReader(ErrorLog errors, ValueReader values, Position end, DataFiles data)
{
    private readonly InputCollector inputs = new();

    /// <summary>Reads the whole file. The result is good only if there are no errors.</summary>
    public Scenario Read(TomlTable document)
    {
        TableReader root = new(document, "", ScenarioFormat.Top, errors);
        QuantityReader quantities = new(errors, values, inputs);
        string title = root.Line("title") ?? "";
        string about = root.Text("about") ?? "";
        string[] block = [.. TitleBlock.Keys.Select(key => root.Line(key) ?? "")];
        string? currency = root.Line("currency");
        double requiredKm = root.Number("required_km") ?? 1;

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
            concentration = use.Number("mix_concentration");
            mixKnowledge = ReadMixKnowledge(use);
            legs = new LegsReader(errors, quantities).Read(use, root.Find("use") is TomlEntry entry ? entry.Node.At : end);
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
            counting = fatigue.Word("counting", FormatWords.Countings) ?? CycleCounting.Dirlik;
            ReadFatigue(quantities, fatigue, detail?.Own is { } own && detail.IsOwn ? own : null);
            fatigue.RejectUnknown(QuantityReader.OtherSection);
        }

        ImmutableArray<CheckedSection> sections = new SectionsReader(errors, quantities, inputs).Read(root);
        BearingKind? bearing = new ModesReader(errors, quantities, inputs).Read(root);
        CrackReader cracks = new(errors, quantities, inputs);
        Crack? crack = cracks.Read(root);
        ImmutableArray<InspectionMethod> inspections = cracks.ReadMethods(root, requiredKm);
        InspectionTerms terms = CrackReader.ReadTerms(root.Inner("inspection_plan"));
        ImmutableArray<Input> inOrder = inputs.InOrder();
        TripReader trips = new(errors, values, inputs, legs);
        TableReader? tripTable = root.Inner("trip");
        Trip? trip = trips.Read(tripTable, root.Find("trip") is not null);
        InputCollector all = inputs.With(trips.Inputs);
        ImmutableArray<RankCorrelation> correlations = new CorrelationsReader(errors, all).Read(root);
        Fleet? fleet = new FleetReader(errors, values).Read(root.Inner("fleet"));
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
            Sections = sections,
            Legs = legs,
            MixConcentration = concentration,
            MixKnowledge = mixKnowledge,
            Bearing = bearing,
            Counting = counting,
            Inputs = inOrder,
            Correlations = [.. correlations.Where(c => !IsOfTrip(c))],
            Trip = trip is null ? null : trip with { Correlations = [.. correlations.Where(IsOfTrip)] },
            Fleet = fleet,
            Crack = crack,
            Inspections = inspections,
            InspectionTerms = terms,
        };
        var names = new EvidenceNames(errors, inputs, detail, sections, concentration is null ? [] : legs);
        scenario = scenario with
        { Evidence = new EvidenceReader(errors, names, new ChangeReader(errors, values, inputs)).Read(root, scenario) };
        var tables = new DataTableReader(errors, data);
        scenario = scenario with
        {
            Field = new FieldReader(tables, names).Read(root.Inner("field"), scenario),
            Gauges = new GaugesReader(tables, names, inOrder, legs).Read(root.Inner("gauges")),
        };
        scenario = scenario with { History = new HistoryReader(errors, new ChangeReader(errors, values, inputs)).Read(root, scenario) };
        scenario = scenario with { Learned = new LearnedReader(errors).Read(root.Inner("learned"), scenario) };
        scenario = scenario with { Remedies = new RemediesReader(errors, values, inputs).Read(root, scenario) };
        scenario = scenario with { Measurements = new MeasurementsReader(errors, names).Read(root) };
        scenario = scenario with { Decision = new DecisionReader(errors, values).Read(root.Inner("decision"), scenario.Remedies) };
        return trip is null ? scenario : scenario with
        { Trip = scenario.Trip! with { Remedies = ReadTripRemedies(tripTable!, all, scenario) } };
    }

    private ImmutableArray<Remedy> ReadTripRemedies(TableReader trip, InputCollector all, Scenario scenario) =>
        new RemediesReader(errors, values, all).Read(trip, Trip.Whole(scenario), scenario.Remedies.Select(r => r.Name));

    private static bool IsOfTrip(RankCorrelation correlation) => Trip.IsNameOf(correlation.First) || Trip.IsNameOf(correlation.Second);

    // A curve of the user's own brings its scatter with it.
    private static void ReadFatigue(QuantityReader quantities, TableReader table, OwnCurve? own)
    {
        foreach (Quantity quantity in Quantities.All.Where(q => q.Section == "fatigue"))
        {
            bool isOwn = own is not null && quantity == Quantities.LifeScatter;
            quantities.Read(
                table, quantity,
                otherwise: isOwn ? new Value.Uncertain(new Normal(0, own!.StandardDeviation), Knowledge.Varies) : null,
                source: isOwn ? $"standard deviation {own!.StandardDeviation:0.###} of log10 N: [detail.curve]" : null);
        }
    }

    private Knowledge ReadMixKnowledge(TableReader use)
    {
        Knowledge knowledge = use.Word("mix_knowledge", FormatWords.KnowledgeKinds) ?? Knowledge.Varies;
        if (use.Table.Find("mix_concentration") is null && use.Table.Find("mix_knowledge") is TomlEntry entry)
        {
            errors.Add(entry.KeyAt, "use.mix_knowledge needs a mix_concentration");
        }

        return knowledge;
    }

    /// <summary>A table of the file. One that is missing is an error if it must state something, and empty otherwise.</summary>
    private TableReader? Section(TableReader root, string name, string? mustState)
    {
        if (root.Inner(name) is TableReader stated)
        {
            return stated;
        }

        if (root.Find(name) is null)
        {
            if (mustState is null)
            {
                return root.Empty(name, end);
            }

            errors.Add(end, $"[{name}] is missing; it must state {mustState}");
        }

        inputs.MarkWrong(name);
        return null;
    }

    private static string MustState(string section) =>
        MessageText.List([.. Quantities.All.Where(q => q.Section == section && q.Default is null && q.Without is null).Select(q => q.Key)]);
}
