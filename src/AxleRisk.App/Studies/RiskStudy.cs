using System.Collections.Immutable;
using AxleRisk.App.Answers;
using AxleRisk.App.Documents;
using AxleRisk.App.Documents.Forms;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Studies;

/// <summary>The failure probability over distance, the lives, the damage by leg.</summary>
internal sealed class RiskStudy : Study<RiskQuestion, RiskRun>
{
    /// <summary>The ends of the drawn curve, as multiples of the required distance, and the number of its points.</summary>
    private const double CurveFrom = 0.1, CurveTo = 5;
    private const int CurvePoints = 80;

    public override string Name => "risk";

    public override string Title => "Failure probability over distance";

    public override string About => "the failure probability over distance, and the B1, B5, B10 and B50 lives";

    public override IReadOnlyList<string> Explanation =>
    [
        "The failure probability by a distance is the share of all vehicles covered by this scenario whose housing will have begun to crack through by then. It holds for the distributions you stated: it is no measured failure rate.",
        "The 95 % interval covers the error of sampling only, and shrinks as evaluations are made: the bar [==*==] shows it on the scale of the first answer. It does not cover wrong inputs or the limits of the model.",
        "The first picture is the failure probability over distance; the second shows where the lives lie: the share of the vehicles that fails within each further step of distance. The required distance is marked in both.",
        "B10 is the distance by which one vehicle in ten has failed; B1, B5 and B50 likewise. Beta is the failure probability on the scale of standard deviations: 1.28 is 10 %, 2.33 is 1 %, 3.09 is 0.1 %.",
        "The study starts by itself after every edit. r runs it again, s stops and continues it, e sets another number of evaluations. A finished study has the same digits as axlerisk risk with the same seed.",
    ];

    public override string Invitation => "The first answer is on its way.";

    public override long DefaultEvaluations => RiskAnalysis.DefaultEvaluations;

    public override string Sampling(LifeModel model) => RiskAnalysis.DefaultSampling(model);

    public override RiskQuestion Usual(Scenario scenario, bool evaluationsStated) => new();

    public override RiskRun Run(
        LifeModel model, StudySettings settings, RiskQuestion question, HeadlineSource headlines, RunOptions options)
    {
        (RiskResult result, RiskState state) = RiskAnalysis.Run(model, settings, question, options);
        options.Cancellation.ThrowIfCancellationRequested();
        double required = model.Scenario.RequiredKm;
        ImmutableArray<double> between = [.. Enumerable.Range(0, CurvePoints)
            .Select(i => required * CurveFrom * Math.Pow(CurveTo / CurveFrom, i / (CurvePoints - 1.0)))];
        return new RiskRun(result, state, RiskAnalysis.Drawn(model, state, result, between, options));
    }

    public override RunRecord RunOf(RiskRun result) => result.Result.Run;

    public override string Method(RiskRun result) => RiskText.Method(result.Result);

    public override IEnumerable<Block> Blocks(ScenarioDocument document, RiskRun result) => RiskBlocks.Of(result.Result, result.Curve);

    public override JsonForm<RiskRun> Form { get; } = new JsonForm<RiskRun>().With(RiskDocument.Form, r => r.Result);

    public override string[] Header => RiskDocument.Header;

    public override IEnumerable<string[]> Rows(RiskRun result) => RiskDocument.Rows(result.Result);
}
