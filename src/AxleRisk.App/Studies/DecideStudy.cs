using AxleRisk.App.Answers;
using AxleRisk.App.Documents;
using AxleRisk.App.Documents.Forms;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Decisions;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Studies;

/// <summary>What each option is expected to cost, its failures included.</summary>
internal sealed class DecideStudy : Study<NoQuestion, DecideResult>
{
    public override string Name => "decide";

    public override string Title => "The decision, by expected cost";

    public override string About => "the remedies by expected net cost: price and failures together, break-even prices, which is likely the best";

    public override IReadOnlyList<string> Explanation =>
    [
        "Each remedy of the scenario (or each package of them) and the scenario as it is, with what it is expected to cost: its price, and its failures times what one failure costs. The same vehicles are drawn for all of them, so that the interval of a difference is much narrower than those of the costs.",
        "best: the probability, given what is unknown (knowledge = \"unknown\" in the file), that an option has the least expected cost of all. If it is far from 0 and from 100 %, knowing more could change the choice: axlerisk measure tells what that is worth.",
        "break-even: the price of one vehicle's remedy at which it would cost as much as the best of the others. Below it, it is the better of the two.",
        "Costs are the file's. What a failure does to people is no cost here: a decision by cost alone is none where people may be hurt.",
    ];

    public override string Invitation => "Tells what each option is expected to cost with its failures, and which is the best.";

    public override long DefaultEvaluations => DecideAnalysis.DefaultEvaluations;

    public override string EvaluationsHelp => $"evaluations of each option (default {DefaultEvaluations:#,0})";

    public override string? WhyNot(Scenario scenario, NoQuestion question) => Decision.MissingIn(scenario);

    public override string Sampling(LifeModel model) => DecideAnalysis.DefaultSampling(model);

    public override NoQuestion Usual(Scenario scenario, bool evaluationsStated) => default;

    public override int Cases(Scenario scenario, NoQuestion question) => DecideAnalysis.OptionsOf(scenario);

    public override DecideResult Run(
        LifeModel model, StudySettings settings, NoQuestion question, HeadlineSource headlines, RunOptions options) =>
        DecideAnalysis.Run(
            model, settings, options, DecideAnalysis.KmOf(model.Scenario) is { } km ? headlines([km], options).FirstOrDefault() : null);

    public override RunRecord RunOf(DecideResult result) => result.Run;

    public override string Method(DecideResult result) => DecideText.Method(result);

    public override IEnumerable<Block> Blocks(ScenarioDocument document, DecideResult result) => DecideBlocks.Of(document.Scenario, result);

    public override JsonForm<DecideResult> Form => DecideDocument.Form;

    public override string[] Header => DecideDocument.Header;

    public override IEnumerable<string[]> Rows(DecideResult result) => DecideDocument.Rows(result);

    protected override long Least => DecideAnalysis.LeastEvaluations;

    protected override long Most => DecideAnalysis.MostEvaluations;
}
