using System.Collections.Immutable;
using System.CommandLine;
using AxleRisk.App.Answers;
using AxleRisk.App.Documents;
using AxleRisk.App.Documents.Forms;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Sweeps;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Studies;

/// <summary>What becomes of life and failure when one or two inputs are moved over a range.</summary>
/// <param name="inputs">The inputs where nobody names others; none for those that must be named.</param>
/// <param name="title">What is moved.</param>
internal sealed class SweepStudy(ImmutableArray<SweptInput> inputs, string title) : Study<ImmutableArray<SweptInput>, SweepResult>
{
    /// <summary>The study whose inputs must be named.</summary>
    public SweepStudy()
        : this([], "One input moved over a range")
    {
    }

    public override string Name => "sweep";

    public override string Title => title;

    public override string About => "one or two inputs moved over a range, all else as stated: relative life, damage and failure probability";

    public override IReadOnlyList<string> Explanation =>
    [
        "One input is moved over a range while everything else stays as stated: the trade's own way of looking, with the failure probability beside the life of the base case.",
        "Relative life is the life of the base case, every input at its nominal, over that of the scenario as stated: 0.5 means half as long. It is exact: nothing is sampled. It says nothing of how many fail; the failure probability does.",
        "Every point is evaluated with the same samples, so that differences between points are surer than their intervals. A factor that is moved is certain at each point; what it is correlated with goes on as if it were not.",
        "i asks for another range, and for a second input: then all pairs are evaluated, and what two do together is set against what each does alone.",
    ];

    public override string Invitation => "Moves the input over a range.";

    public override long DefaultEvaluations => SweepAnalysis.DefaultEvaluations;

    public override string EvaluationsHelp => $"evaluations of each point (default {DefaultEvaluations:#,0})";

    public override string? WhyNot(Scenario scenario, ImmutableArray<SweptInput> question) =>
        question.IsEmpty ? "no input is named; name one with --input, such as --input axle.wall_mm=5..9" : null;

    public override QuestionOptions<ImmutableArray<SweptInput>> Options()
    {
        Option<string[]> option = SweptInputs.Option("the input to be moved and its range, such as axle.wall_mm=5..9 or axle.wall_mm=5..9:20 for 20 steps; twice for two inputs");
        return new([option], (parsed, usual) =>
            SweptInputs.Parse(parsed.GetValue(option) ?? []) is { IsEmpty: false } named ? named : usual);
    }

    public override string Arguments(ImmutableArray<SweptInput> question) => SweptInputs.Arguments(question);

    public override ImmutableArray<SweptInput> Usual(Scenario scenario, bool evaluationsStated) => inputs;

    public override int Cases(Scenario scenario, ImmutableArray<SweptInput> question) => SweepAnalysis.CasesOf(scenario, question);

    public override SweepResult Run(
        LifeModel model, StudySettings settings, ImmutableArray<SweptInput> question, HeadlineSource headlines, RunOptions options) =>
        SweepAnalysis.Run(model, question, settings, options, headlines([model.Scenario.RequiredKm], options)[0]);

    public override RunRecord RunOf(SweepResult result) => result.Run;

    public override string Method(SweepResult result) => SweepText.Method(result);

    public override IEnumerable<Block> Blocks(ScenarioDocument document, SweepResult result) => SweepBlocks.Of(result);

    public override JsonForm<SweepResult> Form => SweepDocument.Form;

    public override string[] Header => SweepDocument.Header;

    public override IEnumerable<string[]> Rows(SweepResult result) => SweepDocument.Rows(result);
}
