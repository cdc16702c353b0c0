using AxleRisk.App.Answers;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Core.Analyses.Strikes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files;

namespace AxleRisk.App.Documents.Forms;

/// <summary>What all JSON documents share.</summary>
internal static class CommonForms
{
    /// <summary>The words for the two kinds of not knowing.</summary>
    public static IReadOnlyList<string> KnowledgeWords { get; } = ["varies", "unknown"];

    /// <summary>How an event's probability is found in a sample.</summary>
    public static IReadOnlyList<string> EventMethods { get; } = ["conditional", "crude"];

    /// <summary>An estimate with its 95 % interval.</summary>
    public static JsonForm<Interval> Interval { get; } = new JsonForm<Interval>("interval")
        .NumberOrNull("estimate", "the estimate", i => i.Estimate)
        .NumberOrNull("low", "lower end of the 95 % interval", i => i.Low)
        .NumberOrNull("high", "upper end of the 95 % interval", i => i.High);

    /// <summary>A probability that may have a bound alone.</summary>
    public static JsonForm<Interval> Probability { get; } = new JsonForm<Interval>("probability")
        .With(Interval, i => i)
        .Flag(
            "resolved", "whether there is an estimate; if not, `estimate` is null, `low` is 0 and `high` a bound below which it lies",
            i => !double.IsNaN(i.Estimate));

    /// <summary>What the answer is about.</summary>
    public static JsonForm<(string Command, ScenarioDocument Document)> Head { get; } =
        new JsonForm<(string Command, ScenarioDocument Document)>()
            .Text("command", "the command", h => h.Command)
            .With(Scenario(), h => h.Document)
            .Text("version", "version of the program", _ => Product.Version);

    /// <summary>What is needed to repeat a run, and how long it took.</summary>
    public static JsonForm<(RunRecord Record, TimeSpan? Elapsed)> Run { get; } = new JsonForm<(RunRecord Record, TimeSpan? Elapsed)>()
        .Whole("evaluations", "evaluations of the damage model", r => r.Record.Evaluations)
        .Whole("evaluations_requested", "evaluations asked for", r => r.Record.Requested)
        .Flag("partial", "whether the run was ended early", r => r.Record.IsPartial)
        .Key("seed", new JsonShape.Whole(), "seed of the random numbers", r => r.Record.Seed)
        .Text("sampling", "sampling plan", r => r.Record.Sampling)
        .Whole("model_version", "version of the damage model; the same version, scenario and seed give the same digits",
            r => r.Record.ModelVersion)
        .Number("seconds", "time it took, s; not in a report's files",
            r => r.Elapsed is { } time ? Math.Round(time.TotalSeconds, 3) : null).Optional()
        .Number("evaluations_per_second", "evaluations a second; not in a report's files",
            r => r.Elapsed is { } time ? Math.Round(r.Record.Evaluations / time.TotalSeconds) : null).Optional();

    /// <summary>What the model does not know of the scenario, the defaults in force and the caution.</summary>
    public static JsonForm<(ScenarioDocument Document, IReadOnlyList<Assumption> Assumed)> Notes { get; } =
        new JsonForm<(ScenarioDocument Document, IReadOnlyList<Assumption> Assumed)>()
            .List("lift_off", "how near each leg of the base case comes to wheels that leave the ground", LiftOff(), n => NoteBlocks.LiftOff(n.Document))
            .List("strikes", "how each leg of the base case, those of a trip behind them, meets the bump stop; only where one is stated",
                Strikes(), n => NoteBlocks.Stop(n.Document) is { IsStated: true } stop ? stop.Legs : null)
            .Optional()
            .Texts("warnings", "what the model does not know of this scenario, as sentences",
                n => NoteBlocks.Warnings(n.Document).Select(w => w.Text))
            .List("history", "the stretches of the vehicle's use; only where the scenario states them", HistoryForm(),
                n => n.Document.Scenario is { History.IsEmpty: false } scenario ? scenario.History.Select(s => (scenario, s)) : null)
            .Optional()
            .Text("sn_curve_source", "where the S-N curve comes from; only where the scenario states its own",
                n => CurveText.Source(n.Document.Scenario))
            .Optional()
            .List("assumed", "defaults in force that are uncertain",
                new JsonForm<Assumption>()
                    .Text("name", "the input", a => a.Name)
                    .Text("source", "where its default comes from", a => a.Source),
                n => n.Assumed)
            .Text("caution", "what must be said beside every figure", _ => Caution.Sentence);

    private static JsonForm<(Scenario Scenario, Stretch Stretch)> HistoryForm() => new JsonForm<(Scenario Scenario, Stretch Stretch)>()
        .Number("from_km", "where it begins, km", s => s.Stretch.FromKm)
        .NumberOrNull("until_km", "where it ends, km; null for the last, which is open", s => s.Stretch.ToKm)
        .Texts("changes", "what is otherwise in it than the scenario states", s => HistoryText.Changes(s.Scenario, s.Stretch));

    /// <summary>The key of a factor's or input's kind of not knowing.</summary>
    public static string Word(Knowledge knowledge) => knowledge.ToString().ToLowerInvariant();

    /// <summary>A scenario file.</summary>
    public static JsonForm<ScenarioDocument> Scenario() => new JsonForm<ScenarioDocument>()
        .Text("title", "title of the scenario", d => d.Scenario.Title)
        .Text("file", "the file, as it was named", d => d.FileName)
        .Text("digest", "SHA-256 of the scenario and the data files that it names", d => d.Digest);

    private static JsonForm<StopLeg> Strikes() => new JsonForm<StopLeg>()
        .Text("leg", "the leg", l => l.Name)
        .Flag("trip", "whether it is the trip's", l => l.IsTrip)
        .NumberOrNull("per_km", "strikes a km, as reckoned from the spectrum", l => l.PerKm)
        .NumberOrNull("clearance_over_sd", "clearance under load over the standard deviation of the travel; below 0.6 the formula is rough",
            l => l.Level)
        .NumberOrNull("added_share", "the share of the leg's damage that strikes add", l => l.StrikeShare);

    private static JsonForm<LiftOffLeg> LiftOff() => new JsonForm<LiftOffLeg>()
        .Text("leg", "the leg", l => l.Name)
        .Number("tyre_force_rms_over_static", "RMS of the tyre's force about its static value, over that", l => l.TyreForceRatio)
        .NumberOrNull("per_km", "lift-offs a km, as reckoned from the spectrum", l => l.PerKm)
        .Flag("likely", "whether that is often enough to matter", l => l.IsLikely);
}
