using AxleRisk.App.Answers;
using AxleRisk.App.Documents;
using AxleRisk.App.Documents.Forms;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Studies;

/// <summary>What factors do together.</summary>
internal sealed class CombineStudy : Study<CombineLimits, CombineResult>
{
    public override string Name => "combine";

    public override string Title => "Combined effects";

    public override string About => "the most dangerous combinations of factors, and what pairs do beyond what each does alone";

    public override IReadOnlyList<string> Explanation =>
    [
        "The worst combinations of up to four circumstances: how many of the vehicles that are like this fail, how many times the average that is (the lift), how common such vehicles are, and which part of all failures they make up. A combination is worth acting on where both its lift and its part of the failures are large.",
        "The adverse fifth of a factor is the fifth of vehicles at its worse end. Only what stands out from chance is listed, corrected for the number of combinations that could be made.",
        "The grid shows the pairs of the factors that are strongest alone. g goes on to another figure: the failure probability with both adverse; how many times what they would give if their effects multiplied; the Shapley interaction, which is the part of the variance of failure that belongs to the two together.",
        "Two factors whose effects multiply are no surprise: the ratio is then 1. Above 1 they make each other worse.",
        "First answers of 20 000 and 100 000 evaluations come sooner; the whole run follows and has the digits of axlerisk combine.",
    ];

    public override string Invitation => "Looks for the worst combinations of circumstances and for pairs that do more than multiply.";

    public override long DefaultEvaluations => CombineAnalysis.DefaultEvaluations;

    public override string? WhyNot(Scenario scenario, CombineLimits question) => UncertainInputs.None(scenario, "combine");

    public override CombineLimits Usual(Scenario scenario, bool evaluationsStated) => new();

    public override CombineResult Run(
        LifeModel model, StudySettings settings, CombineLimits question, HeadlineSource headlines,
        RunOptions options) =>
        CombineAnalysis.Run(model, settings, question, options) with { Headline = headlines([model.Scenario.RequiredKm], options)[0] };

    public override RunRecord RunOf(CombineResult result) => result.Run;

    public override string Method(CombineResult result) => CombineText.Method(result);

    public override IEnumerable<Block> Blocks(ScenarioDocument document, CombineResult result) => CombineBlocks.Of(result);

    public override JsonForm<CombineResult> Form => CombineDocument.Form;

    public override string[] Header => CombineDocument.Header;

    public override IEnumerable<string[]> Rows(CombineResult result) => CombineDocument.Rows(result);
}
