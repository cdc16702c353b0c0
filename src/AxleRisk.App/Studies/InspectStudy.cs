using AxleRisk.App.Answers;
using AxleRisk.App.Documents;
using AxleRisk.App.Documents.Forms;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Inspections;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Studies;

/// <summary>What looking for the crack brings, and when to look.</summary>
internal sealed class InspectStudy : Study<NoQuestion, InspectResult>
{
    public override string Name => "inspect";

    public override string Title => "Inspection";

    public override string About => "when to look for the crack: with and without the looks, what each finds and misses, the fewest and the cheapest";

    public override IReadOnlyList<string> Explanation =>
    [
        "Where [evidence] is of a vehicle that is whole, all is told of vehicles like it: that have come as far, and of which the same would have been seen. Else of new ones.",
        "The failure probability over distance without a look and with the looks that the scenario states ([[inspections]] with at_km), or with the first plan made. A found crack is repaired: life begins anew, with scatter of its own, as inspection_plan.repaired_life says.",
        "found: that a vehicle comes whole to the look and the crack is found. missed: that it comes whole to the look with a crack of the method's a50 or deeper, which is not found. false calls: that a crack is called where the look has found none.",
        "before the next: that a vehicle which is whole at the look, and of which this look and all before have found nothing, fails before the next look, or the required distance.",
        "Plans are regular: a first look, then as many at even distances as are needed. The fewest keep inspection_plan.target; the cheapest has the least expected cost of looks, repairs, false calls and failures.",
        "A detection curve belongs to a procedure and to the person who follows it. A clean look proves little of cracks below its a90.",
    ];

    public override string Invitation => "Tells what looking for the crack brings, and when to look.";

    public override long DefaultEvaluations => InspectAnalysis.DefaultEvaluations;

    public override string EvaluationsHelp => $"vehicles drawn (default {DefaultEvaluations:#,0})";

    public override string? WhyNot(Scenario scenario, NoQuestion question) =>
        scenario.Crack is null ? "there is no crack; state one under [crack], with initial_depth_mm"
        : scenario.Inspections.IsEmpty ? "there is no way of looking for the crack; state one under [[inspections]], with a50_mm and a90_mm"
        : scenario.Inspections.All(i => i.AtKm.IsEmpty) && scenario.InspectionTerms.Target is null
            && InspectAnalysis.TermsOf(scenario).FailureCost is null
            ? "no look is stated and nothing to plan by; state at_km of an inspection, or target or failure_cost under [inspection_plan]"
        : scenario.Evidence is { IsOfWhole: true, LifeWithLooks: LifeEvidence.Survived(var km) } && km >= scenario.RequiredKm
            ? $"the vehicle has already come {Figures.Exact(km)} km ([evidence]) and required_km is {Figures.Exact(scenario.RequiredKm)}: state how far it is to go" : null;

    public override string Sampling(LifeModel model) => InspectAnalysis.DefaultSampling(model);

    public override Parting PartingOf(Scenario scenario) => Parting.Together;

    public override NoQuestion Usual(Scenario scenario, bool evaluationsStated) => default;

    public override InspectResult Run(
        LifeModel model, StudySettings settings, NoQuestion question, HeadlineSource headlines, RunOptions options) =>
        InspectAnalysis.Run(model, settings, options, km => headlines(km, options));

    public override RunRecord RunOf(InspectResult result) => result.Run;

    public override string Method(InspectResult result) => InspectText.Method(result);

    public override IEnumerable<Block> Blocks(ScenarioDocument document, InspectResult result) => InspectBlocks.Of(result);

    public override JsonForm<InspectResult> Form => InspectDocument.Form;

    public override string[] Header => InspectDocument.Header;

    public override IEnumerable<string[]> Rows(InspectResult result) => InspectDocument.Rows(result);

    protected override long Least => InspectAnalysis.LeastEvaluations;

    protected override long Most => InspectAnalysis.MostEvaluations;
}
