using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files;

namespace AxleRisk.App.Text;

/// <summary>What all answers have around them: the scenario's name above, the assumptions, the run and the caution below.</summary>
internal static class Frame
{
    public static IEnumerable<string> Head(ScenarioDocument document) =>
    [
        TextTable.Shorten(Printable.Line(document.Scenario.Title), Layout.Width),
        $"{TextTable.Shorten(Printable.Line(document.FileName), Layout.Width - 22)}  digest {document.Digest[..12]}",
        "",
    ];

    /// <summary>The defaults in force that move the answer: those that are uncertain. Never silent.</summary>
    public static IEnumerable<string> Assumptions(Scenario scenario)
    {
        IReadOnlyList<string> assumed = Assumed(scenario);
        return assumed.Count == 0
            ? []
            : [Style.Heading(AssumedHeading), .. assumed.SelectMany(a => Wrap.Lines(a, Layout.Width - 2, "    "))
                .Select(line => "  " + line), ""];
    }

    public const string AssumedHeading = "Assumed, not stated in the file";

    /// <summary>Each default in force that is uncertain, with its source.</summary>
    public static IReadOnlyList<string> Assumed(Scenario scenario) =>
        [.. scenario.Inputs.Where(i => i.IsDefault && i.Value is Value.Uncertain).Select(i => $"{i.Name}: {i.Quantity.DefaultSource}")];

    /// <summary>What must be known to repeat a run, and how it was done.</summary>
    public static string Run(RunRecord run, string method) =>
        $"{Figures.Count(run.Evaluations)} evaluations, seed {run.Seed}, {run.Sampling} sampling{Asked(run)}, {method}; model {run.ModelVersion}, axlerisk {Product.Version}";

    // Ended early is said on a line of its own.
    private static string Asked(RunRecord run) => run.IsPartial || run.Requested == run.Evaluations ? ""
        : run.Evaluations < run.Requested
            ? $" (of {Figures.Count(run.Requested)} allowed: no more were needed, or they would not have made a whole sample more)"
        : $" ({Figures.Count(run.Requested)} asked for: fewer would not have made a whole sample)";

    /// <summary>The time a run took; on a line of its own, for it alone differs from run to run.</summary>
    public static string Took(TimeSpan elapsed, string speed = "") => $"  Took {elapsed.TotalSeconds:0.0} s{speed}.";

    /// <summary>The lines below an answer.</summary>
    /// <param name="run">The run.</param>
    /// <param name="method">How it was done, in words.</param>
    /// <param name="elapsed">The time it took.</param>
    /// <param name="speed">What is said of its speed, behind that.</param>
    public static IEnumerable<string> Foot(RunRecord run, string method, TimeSpan elapsed, string speed = "")
    {
        if (run.IsPartial)
        {
            yield return Style.Heading(
                $"PARTIAL: ended early, after {Figures.Count(run.Evaluations)} of {Figures.Count(run.Requested)} evaluations.");
        }

        foreach (string line in (string[])
            [.. Wrap.Lines($"Run: {Run(run, method)}.", Layout.Width), Took(elapsed, speed), .. Wrap.Lines(Caution.Sentence, Layout.Width)])
        {
            yield return line;
        }
    }
}
