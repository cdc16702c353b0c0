using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Core.Analyses.Strikes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Answers;

/// <summary>What holds of every answer to a scenario: what the model does not know of it, and what was assumed for it.</summary>
internal static class NoteBlocks
{
    // A page asks for its notes whenever it is drawn, and a report once a study.
    private static readonly ConditionalWeakTable<ScenarioDocument, StrongBox<ImmutableArray<LiftOffLeg>>> Known = [];
    private static readonly ConditionalWeakTable<ScenarioDocument, StopResult> KnownStops = [];

    public static IEnumerable<Block> Of(ScenarioDocument document) =>
        Of(document, Frame.Assumed(document.Scenario));

    /// <summary>The notes, with a list of its own of what was assumed.</summary>
    public static IEnumerable<Block> Of(ScenarioDocument document, IReadOnlyList<Assumption> assumed) =>
        [.. Warnings(document), .. Sources(document.Scenario), .. Assumed(assumed)];

    /// <summary>The history, and where an S-N curve that is no catalogue's comes from. Never silent.</summary>
    public static IEnumerable<Block> Sources(Scenario scenario) =>
        new[] { HistoryText.Sentence(scenario), CurveText.Source(scenario) }.OfType<string>().Select(s => new Paragraph(s));

    /// <summary>What must not be overlooked.</summary>
    public static IEnumerable<Warning> Warnings(ScenarioDocument document) =>
    [
        .. StopText.Sentences(Stop(document)).Select(s => new Warning(s)),
        .. LiftOffText.Sentence(LiftOff(document), document.FileName) is { } hint ? [new Warning(hint)] : Array.Empty<Warning>(),
    ];

    /// <summary>How the suspension meets its bump stop in the base case; worked out once.</summary>
    public static StopResult Stop(ScenarioDocument document) => KnownStops.GetValue(document, d => StopCheck.Run(d.Scenario));

    /// <summary>How often wheels leave the ground in the base case, leg by leg; worked out once.</summary>
    public static ImmutableArray<LiftOffLeg> LiftOff(ScenarioDocument document) => Known
        .GetValue(document, d => new StrongBox<ImmutableArray<LiftOffLeg>>(LiftOffCheck.Run(new LifeModel(d.Scenario)))).Value;

    /// <summary>The defaults in force that move the answer. Never silent.</summary>
    public static IEnumerable<Block> Assumed(IReadOnlyList<Assumption> assumed) =>
        assumed.Count == 0 ? [] : [new Subheading(Frame.AssumedHeading), new ItemList([.. assumed.Select(a => a.ToString())])];
}
