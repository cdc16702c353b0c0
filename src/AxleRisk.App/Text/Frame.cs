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
        List<Input> assumed = [.. scenario.Inputs.Where(i => i.IsDefault && i.Value is Value.Uncertain)];
        if (assumed.Count == 0)
        {
            yield break;
        }

        yield return Style.Heading("Assumed, not stated in the file");
        foreach (Input input in assumed)
        {
            string text = $"  {input.Name}: {input.Quantity.DefaultSource}";
            foreach (string line in Wrap.Lines(text.TrimStart(), Layout.Width - 2, "    "))
            {
                yield return "  " + line;
            }
        }

        yield return "";
    }

    public static IEnumerable<string> Foot(RunRecord run, string method, TimeSpan elapsed)
    {
        string text = $"Run: {Figures.Count(run.Evaluations)} evaluations, seed {run.Seed}, {run.Sampling} sampling, {method}; "
            + $"model {run.ModelVersion}, axlerisk {Product.Version}, {elapsed.TotalSeconds:0.0} s.";
        if (run.IsPartial)
        {
            yield return Style.Heading($"PARTIAL: ended early, after {Figures.Count(run.Evaluations)} of {Figures.Count(run.Requested)} evaluations.");
        }

        foreach (string line in Wrap.Lines(text, Layout.Width).Concat(Wrap.Lines(Caution.Sentence, Layout.Width)))
        {
            yield return line;
        }
    }
}
