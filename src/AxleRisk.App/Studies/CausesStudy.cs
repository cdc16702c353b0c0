using AxleRisk.App.Answers;
using AxleRisk.App.Documents;
using AxleRisk.App.Documents.Forms;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Studies;

/// <summary>What the evidence found on one vehicle says of its causes.</summary>
internal sealed class CausesStudy : Study<Evidence, CausesResult>
{
    public override string Name => "causes";

    public override string Title => "Causes, from the evidence";

    public override string About => "what a failure says of its causes, from the evidence found";

    public override IReadOnlyList<string> Explanation =>
    [
        "The investigator's view of one vehicle: the scenario says how likely everything was before (prior); the evidence found on this vehicle says how likely it is now (posterior). It weighs causes; it proves none.",
        "Evidence is how far the axle got (failed at a distance, between two, or not yet), factors measured on this vehicle with the standard deviation of the reading, and choices whose state was found. It is kept in the scenario file and can be taken back with Ctrl+Z. Of a vehicle that is whole, the trip and the inspections go on from it; it changes no other page.",
        "Times likelier compares before and after for the adverse tenth of a factor: the tenth of its values that goes with most damage. 1 means that the evidence says nothing of it.",
        "Explanations are named in the file; several may hold together, so they need not add up. 'nothing unusual' is that none of them holds. One that a known state decides is settled and not weighed.",
        "The effective sample size is how many equally weighted samples the answer is worth: below a few hundred its intervals are wide, below 200 there is no answer.",
    ];

    public override string Invitation => "Weighs the causes by the evidence above.";

    public override long DefaultEvaluations => CausesAnalysis.DefaultEvaluations;

    public override string? WhyNot(Scenario scenario, Evidence question) => UncertainInputs.None(scenario, "weigh")
        ?? (question.IsEmpty ? "there is no evidence; state what was found under [evidence], or with --failed-at, --failed-between or --survived" : null)
        ?? (question.Life is { } life && question.Looks is [.., var last] && last.Km > life.WholeKm
            ? $"[evidence] tells of a look at {Figures.Exact(last.Km)} km, when the axle was whole, and this says that it was so at {Figures.Exact(life.WholeKm)} km for the last time: state {Figures.Exact(last.Km)} km or more"
            : null);

    public override QuestionOptions<Evidence> Options() => new EvidenceOptions().Question;

    public override Evidence Usual(Scenario scenario, bool evaluationsStated) => scenario.Evidence;

    public override CausesResult Run(LifeModel model, StudySettings settings, Evidence question, HeadlineSource headlines,
        RunOptions options) =>
        CausesAnalysis.Run(model, question, settings, options).With(headlines(question.Life?.DistancesKm ?? [], options));

    public override RunRecord RunOf(CausesResult result) => result.Run;

    public override string Method(CausesResult result) => CausesText.Method(result);

    public override IEnumerable<Block> Blocks(ScenarioDocument document, CausesResult result) => CausesBlocks.Of(result);

    public override JsonForm<CausesResult> Form => CausesDocument.Form;

    public override string[] Header => CausesDocument.Header;

    public override IEnumerable<string[]> Rows(CausesResult result) => CausesDocument.Rows(result);
}
