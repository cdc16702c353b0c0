using AxleRisk.App.Answers;
using AxleRisk.App.Documents;
using AxleRisk.App.Documents.Forms;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Studies;

/// <summary>A fleet's warranty claims, and what would meet its targets.</summary>
internal sealed class FleetStudy : Study<NoQuestion, FleetResult>
{
    public override string Name => "fleet";

    public override string Title => "The fleet under warranty";

    public override string About => "a fleet under warranty: claims and their cost, the longest warranty, the designs that meet a B life";

    public override IReadOnlyList<string> Explanation =>
    [
        "How many vehicles of the fleet make a warranty claim, and what that costs. Each makes one at most: when its axle fails before its warranty ends, by age or by distance.",
        "Expected is the mean over everything uncertain. The figure to write down is the 95 % range of the number itself: it covers chance between vehicles and what nobody knows of the whole fleet, such as a batch of the steel or an error of the model (knowledge = \"unknown\" in the file).",
        "If the file states a target claim rate, the page seeks the longest warranty that keeps it; if it states a target life, the wall, the tolerance and the weld category that meet it.",
        "The claims by month run from the first sale. The ranges do not cover wrong inputs or the limits of the model.",
        "A target life takes some ten times as many evaluations. A finished study has the same digits as axlerisk fleet with the same seed.",
    ];

    public override string Invitation => "Tells how many claims the fleet will make under its warranty, and what would meet its targets.";

    public override long DefaultEvaluations => FleetAnalysis.DefaultEvaluations;

    public override string? WhyNot(Scenario scenario, NoQuestion question) => scenario.Fleet is null ? "there is no fleet; state one under [fleet]" : null;

    public override string EvaluationsHelp =>
        $"evaluations of the fleet's sample (default {DefaultEvaluations:#,0}); each design takes a quarter more";

    public override string Sampling(LifeModel model) => FleetAnalysis.DefaultSampling;

    public override NoQuestion Usual(Scenario scenario, bool evaluationsStated) => default;

    public override long Work(Scenario scenario, NoQuestion question, long evaluations) =>
        FleetAnalysis.ExpectedEvaluations(scenario.Fleet!, evaluations);

    // A search for a design looks at what it has found before it looks on.
    public override Parting PartingOf(Scenario scenario) => scenario.Fleet?.TargetLife is null ? Parting.Apart : Parting.Together;

    public override FleetResult Run(LifeModel model, StudySettings settings, NoQuestion question, HeadlineSource headlines,
        RunOptions options)
    {
        FleetResult result = null!;
        RiskHeadline? headline = null;
        PartDoneException.Each(
            () => result = FleetAnalysis.Run(model, settings, options),
            () => headline = headlines(model.Scenario.Fleet!.TargetKm, options).FirstOrDefault());
        return result with { Headline = headline };
    }

    public override RunRecord RunOf(FleetResult result) => result.Run;

    public override string Method(FleetResult result) => FleetText.Method(result.Sampling);

    public override IEnumerable<Block> Blocks(ScenarioDocument document, FleetResult result) => FleetBlocks.Of(result);

    public override JsonForm<FleetResult> Form => FleetDocument.Form;

    public override string[] Header => FleetDocument.Header;

    public override IEnumerable<string[]> Rows(FleetResult result) => FleetDocument.Rows(result);

    protected override long Least => FleetAnalysis.LeastEvaluations;

    protected override long Most => FleetAnalysis.MostEvaluations;
}
