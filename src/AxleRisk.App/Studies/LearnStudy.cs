using System.Collections.Immutable;
using System.CommandLine;
using AxleRisk.App.Answers;
using AxleRisk.App.Documents;
using AxleRisk.App.Documents.Forms;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Learning;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Studies;

/// <summary>What records of the field and gauge runs teach of what is unknown.</summary>
internal sealed class LearnStudy : Study<LearnQuestion, LearnResult>
{
    public override string Name => "learn";

    public override string Title => "What the data teach";

    public override string About => "what records of the field and gauge runs teach of what is unknown: failures before and after, and whether data and model agree";

    public override IReadOnlyList<string> Explanation =>
    [
        "What is unknown (knowledge = \"unknown\" in the file) is one value that all vehicles share and nobody knows: the error of the stress model, of the damage, the true weld category. The scenario says what it may be; records of the field and gauge runs say what it can be, given what was seen.",
        "First see whether data and model agree. Where the p-value of the misfit is below 0.05, failures do not fall as the model has them, whatever the unknown: find out why before you use a figure.",
        "Before and after are the mean failure probability with the middle 95 % of what is unknown. The points are what the data say without the model (Kaplan and Meier, or Turnbull where intervals overlap); beside them stand a Weibull and a lognormal fitted to the data alone.",
        "Bits tell how much the data say of each unknown thing: 1 bit halves what it may be. What could not be told apart is known together and not each by itself: measure one of the two.",
        "Records are every vehicle followed, not the failures alone: those still whole are most of what is known. A file of failures without the whole ones gives wrong figures.",
    ];

    public override string Invitation => "Weighs what is unknown by the records of the field and the gauge runs.";

    public override long DefaultEvaluations => LearnAnalysis.DefaultEvaluations;

    public override string? WhyNot(Scenario scenario, LearnQuestion question) =>
        scenario.Field.Records.IsEmpty && scenario.Gauges.Runs.IsEmpty
            ? "there are no data; name a file of records under [field] or of gauge runs under [gauges]" : null;

    public override string Sampling(LifeModel model) => SamplingPlan.Names[2];

    public override QuestionOptions<LearnQuestion> Options()
    {
        var distances = new Option<string?>("--distances")
        { Description = "distances of the failure probabilities in km, with commas between", HelpName = "KM,KM,..." };
        distances.Validators.Add(result =>
        {
            string text = result.Tokens.Count == 1 ? result.Tokens[0].Value : "";
            if (Parse(text) is null)
            {
                result.AddError($"--distances must be up to 40 distances in km above 0, such as 50000,100000, not \"{text}\"");
            }
        });
        return new([distances], (parsed, usual) => Parse(parsed.GetValue(distances)) is { } km ? new LearnQuestion(km) : usual);
    }

    public override string Arguments(LearnQuestion question) =>
        question.DistancesKm.IsEmpty ? "" : " --distances " + string.Join(',', question.DistancesKm);

    public override Parting PartingOf(Scenario scenario) => Parting.Together;

    public override LearnQuestion Usual(Scenario scenario, bool evaluationsStated) => new([]);

    public override LearnResult Run(
        LifeModel model, StudySettings settings, LearnQuestion question, HeadlineSource headlines, RunOptions options) =>
        LearnAnalysis.Run(model, question, settings, options);

    public override RunRecord RunOf(LearnResult result) => result.Run;

    public override string Method(LearnResult result) => LearnText.Method(result);

    public override IEnumerable<Block> Blocks(ScenarioDocument document, LearnResult result) => LearnBlocks.Of(document.Scenario, result);

    public override JsonForm<LearnResult> Form => LearnDocument.Form;

    public override string[] Header => LearnDocument.Header;

    public override IEnumerable<string[]> Rows(LearnResult result) => LearnDocument.Rows(result);

    protected override long Least => LearnAnalysis.LeastEvaluations;

    private static ImmutableArray<double>? Parse(string? text)
    {
        double[] km = [.. (text ?? "").Split(',').Select(p => double.TryParse(p, out double x) && double.IsFinite(x) && x > 0 ? x
            : double.NaN)];
        return km.Any(double.IsNaN) || km.Length > 40 ? null : [.. km.Distinct().Order()];
    }
}
