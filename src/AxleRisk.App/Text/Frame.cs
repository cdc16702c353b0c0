using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files;

namespace AxleRisk.App.Text;

/// <summary>What all answers have around them: the scenario's name above, the assumptions, the run and the caution below.</summary>
internal static class Frame
{
    public static IEnumerable<TextLine> Head(ScenarioDocument document) =>
    [
        TextTable.Shorten(Printable.Line(document.Scenario.Title), Layout.Width),
        $"{TextTable.Shorten(Printable.Line(document.FileName), Layout.Width - 22)}  digest {document.Digest[..12]}",
        "",
    ];

    public const string AssumedHeading = "Assumed, not stated in the file";

    /// <summary>Each default in force that is uncertain, and so moves the answer.</summary>
    public static IReadOnlyList<Assumption> Assumed(Scenario scenario) =>
    [
        .. scenario.Inputs.Where(i => i.IsDefault && i.Value is Value.Uncertain)
            .Select(i => new Assumption(i.Name, i.Label, i.DefaultSource!)),
    ];

    /// <summary>What must be known to repeat a run, and how it was done.</summary>
    public static string Run(RunRecord run, string method) =>
        $"Run: {Figures.Count(run.Evaluations)} evaluations, seed {run.Seed}, {run.Sampling} sampling{Asked(run)}, {method}; model {run.ModelVersion}, axlerisk {Product.Version}.";

    // Ended early is said on a line of its own.
    private static string Asked(RunRecord run) => run.IsPartial || run.Requested == run.Evaluations ? ""
        : run.Evaluations < run.Requested
            ? $" (of {Figures.Count(run.Requested)} allowed: no more were needed, or they would not have made a whole sample more)"
        : $" ({Figures.Count(run.Requested)} asked for: fewer would not have made a whole sample)";

    /// <summary>The time a run took; on a line of its own, for it alone differs from run to run.</summary>
    public static string Took(TimeSpan elapsed, string speed = "") => $"  Took {elapsed.TotalSeconds:0.0} s{speed}.";

    /// <summary>The caution, below everything.</summary>
    public static IEnumerable<TextLine> CautionLines => Wrap.Lines(Caution.Sentence, Layout.Width).Select(line => new TextLine(line));

    /// <summary>That a run was ended early; null where it was not.</summary>
    public static string? Partial(RunRecord run) => run.IsPartial
        ? $"PARTIAL: ended early, after {Figures.Count(run.Evaluations)} of {Figures.Count(run.Requested)} evaluations." : null;

    /// <summary>The lines below an answer.</summary>
    /// <param name="run">The run in words: <see cref="Run"/>.</param>
    /// <param name="partial">That it was ended early; null where it was not.</param>
    /// <param name="elapsed">The time it took.</param>
    /// <param name="speed">What is said of its speed, behind that.</param>
    public static IEnumerable<TextLine> Foot(string run, string? partial, TimeSpan elapsed, string speed = "") =>
    [
        .. partial is null ? [] : new[] { new TextLine(partial, LineKind.Warning) },
        .. Wrap.Lines(run, Layout.Width).Append(Took(elapsed, speed)).Select(line => new TextLine(line)), .. CautionLines,
    ];
}

/// <summary>A default in force that moves the answer.</summary>
/// <param name="Name">The input.</param>
/// <param name="Label">The input in plain words.</param>
/// <param name="Source">The value and where it is from.</param>
internal readonly record struct Assumption(string Name, string Label, string Source)
{
    public override string ToString() => $"{Label} ({Name}): {Source}";
}
