using AxleRisk.App.Answers;
using AxleRisk.App.Documents;
using AxleRisk.App.Documents.Forms;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Measurements;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Studies;

/// <summary>What knowing each unknown factor is worth, and each stated measurement.</summary>
internal sealed class MeasureStudy : Study<NoQuestion, MeasureResult>
{
    public override string Name => "measure";

    public override string Title => "What to measure next";

    public override string About => "what knowing each unknown factor is worth, and each stated measurement, against its cost";

    public override IReadOnlyList<string> Explanation =>
    [
        "What it is worth to know more before deciding. Of each unknown factor (knowledge = \"unknown\" in the file): what knowing it exactly would save on average, because another option would sometimes be chosen. Of each measurement under [[measurements]]: what its readings would save, and that less its cost.",
        "A factor may have a great share of the risk and be worth nothing to know: when the same option is the best whatever its value.",
        "Without a decision there is no cost to save: then the share is told by which the band of the failure probability is expected to narrow.",
        "Of a vehicle whose failure is to be explained (evidence and explanations in the file): what each measurement on it, and knowing exactly each thing that an explanation speaks of, is expected to tell of which of the two leading explanations holds, in bits.",
        "Factors that vary between vehicles are not among them: what one vehicle has says nothing of the others.",
    ];

    public override string Invitation => "Tells what knowing each unknown factor is worth, and which measurement pays.";

    public override long DefaultEvaluations => MeasureAnalysis.DefaultEvaluations;

    public override string EvaluationsHelp => $"rows drawn at each value of a factor (default {DefaultEvaluations:#,0})";

    public override string? WhyNot(Scenario scenario, NoQuestion question) =>
        scenario.Decision is null && scenario.Measurements.IsEmpty && !MeasureAnalysis.Investigates(scenario)
            ? "there is nothing to measure for; state a [decision], [[measurements]], or evidence with two [[explanations]] to tell apart"
        : !MeasureAnalysis.HasUnknown(scenario)
            ? "no input is unknown: all that is uncertain varies between vehicles; state knowledge = \"unknown\" where it is one value for all"
        : null;

    public override string Sampling(LifeModel model) => MeasureAnalysis.DefaultSampling(model);

    public override NoQuestion Usual(Scenario scenario, bool evaluationsStated) => default;

    public override long Work(Scenario scenario, NoQuestion question, long evaluations) =>
        MeasureAnalysis.EvaluationsOf(scenario, evaluations);

    public override MeasureResult Run(
        LifeModel model, StudySettings settings, NoQuestion question, HeadlineSource headlines, RunOptions options) =>
        MeasureAnalysis.Run(model, settings, options);

    public override RunRecord RunOf(MeasureResult result) => result.Run;

    public override string Method(MeasureResult result) => MeasureText.Method(result);

    public override IEnumerable<Block> Blocks(ScenarioDocument document, MeasureResult result) => MeasureBlocks.Of(result);

    public override JsonForm<MeasureResult> Form => MeasureDocument.Form;

    public override string[] Header => MeasureDocument.Header;

    public override IEnumerable<string[]> Rows(MeasureResult result) => MeasureDocument.Rows(result);

    protected override long Least => 256;

    protected override long Most => 1_000_000;
}
