using AxleRisk.App.Answers;
using AxleRisk.App.Documents;
using AxleRisk.App.Documents.Forms;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Studies;

/// <summary>What each remedy would do.</summary>
internal sealed class RemediesStudy : Study<NoQuestion, RemediesResult>
{
    public override string Name => "remedies";

    public override string Title => "Remedies";

    public override string About => "the scenario's remedies, alone and in pairs: failure probability, B10 life and their change";

    public override IReadOnlyList<string> Explanation =>
    [
        "What could be done about the risk: each remedy changes inputs of the scenario. Space switches the chosen one on or off; the failure probability with all that are on is compared with none of them.",
        "Both are evaluated with the same random numbers, so that the interval of the change is much narrower than the two intervals would suggest. 'times' is the ratio of the failure probabilities: 0.30 means that three in ten of the failures remain.",
        "~ or 'not distinguishable' means that the interval of the change covers no change at all. Each remedy alone is drawn below; together they need not do what they do one by one.",
        "a adds a remedy, Enter changes one, Del takes it out; Ctrl+Z takes that back. Switching is no edit: the scenario itself stays as it is.",
        "Costs are the scenario's own; they are only added up.",
    ];

    public override string Invitation => "Compares the remedies, alone and in pairs, with the scenario as it is.";

    public override long DefaultEvaluations => Comparison.DefaultEvaluations;

    public override string? WhyNot(Scenario scenario, NoQuestion question) =>
        scenario.Remedies.IsEmpty ? "there are no remedies to compare; state at least one under [[remedies]]" : null;

    public override string Sampling(LifeModel model) => RemediesAnalysis.DefaultSampling(model);

    public override NoQuestion Usual(Scenario scenario, bool evaluationsStated) => default;

    public override int Cases(Scenario scenario, NoQuestion question) => RemediesAnalysis.CasesOf(scenario);

    public override RemediesResult Run(
        LifeModel model, StudySettings settings, NoQuestion question, HeadlineSource headlines,
        RunOptions options) =>
        RemediesAnalysis.Run(model, settings, options).With(headlines([model.Scenario.RequiredKm], options)[0]);

    public override RunRecord RunOf(RemediesResult result) => result.Comparison.Run;

    public override string Method(RemediesResult result) => CompareText.Method(result.Comparison);

    public override IEnumerable<Block> Blocks(ScenarioDocument document, RemediesResult result) =>
        RemediesBlocks.Of(document.Scenario, result);

    public override JsonForm<RemediesResult> Form => RemediesDocument.Form;

    public override string[] Header => RemediesDocument.Header;

    public override IEnumerable<string[]> Rows(RemediesResult result) => RemediesDocument.Rows(result);
}
