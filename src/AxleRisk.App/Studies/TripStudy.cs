using System.CommandLine;
using AxleRisk.App.Answers;
using AxleRisk.App.Commands;
using AxleRisk.App.Documents;
using AxleRisk.App.Documents.Forms;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Studies;

/// <summary>Whether the axle lasts the trip, and what would let it.</summary>
internal sealed class TripStudy : Study<TripQuestion, TripResult>
{
    private readonly OutputFile card = new("--card")
    { Description = "also write the crew's card for print: a page of HTML, and the same as text beside it", HelpName = "PATH" };

    public override string Name => "trip";

    public override string Title => "The trip";

    public override string About => "will the axle last the trip: failure by leg, and the speed and load that keep a target";

    public override IReadOnlyList<string> Explanation =>
    [
        "Whether the housing lasts the trip stated in the file, told of vehicles that reach its start unbroken: the damage of the usual use before it counts as well.",
        "By leg: the share that fails on each leg, of those that reach it, and how much of all failures on the trip happen there. A short bad leg may hold most of them.",
        "If the file states a target, the page seeks the highest speed and payload that keep it: each alone, for the whole trip and for the worst leg. A limit holds while all else stays as planned.",
        "Remedies are taken before the start. An interval covers the error of sampling only: it does not make a trip safe. Look at the housing before and on the way.",
        "The study keeps every vehicle in memory: at most 1,000,000 of them. A finished study has the same digits as axlerisk trip with the same seed.",
    ];

    public override string Invitation => "Tells how likely the axle is to fail on the trip, on which leg, and what would keep the target.";

    public override long DefaultEvaluations => TripAnalysis.DefaultEvaluations;

    public override string? WhyNot(Scenario scenario, TripQuestion question) =>
        scenario.Trip is null ? "there is no trip; state its legs under [trip] and [[trip.legs]]" : Early(scenario);

    // A trip goes on from what was seen of the vehicle.
    private static string? Early(Scenario scenario)
    {
        Value driven = scenario.Trip!.Inputs.FirstOrDefault(i => i.Quantity == TripQuantities.AlreadyDriven)?.Value ?? new Value.Certain(0);
        double least = driven is Value.Uncertain { Distribution: var d } ? d.Minimum : driven.Nominal;
        return scenario.Evidence is { IsOfWhole: true, LifeWithLooks: LifeEvidence.Survived(var km) } && least < km
            ? $"trip.already_driven_km {(driven is Value.Uncertain ? "may be as little as" : "is")} {Figures.Exact(least)}, and [evidence] says that the vehicle has come {Figures.Exact(km)} km whole: state {Figures.Exact(km)} or more"
            : null;
    }

    public override string Sampling(LifeModel model) => RiskAnalysis.DefaultSampling(new LifeModel(Trip.Whole(model.Scenario)));

    public override QuestionOptions<TripQuestion> Options()
    {
        var target = new Option<string?>("--target")
        {
            Description = "the failure probability on the trip to be kept, such as 0.02 (default: the scenario's target_risk)",
            HelpName = "P",
        };
        target.Validators.Add(result =>
        {
            string text = result.Tokens.Count == 1 ? result.Tokens[0].Value : "";
            if (!(double.TryParse(text, out double p) && p > 0 && p <= 1))
            {
                result.AddError($"--target must be a number above 0 and up to 1, not \"{text}\"");
            }
        });
        Option<string> method = new("--method")
        {
            Description = "how probabilities are estimated",
            HelpName = "METHOD",
            DefaultValueFactory = _ => "auto",
        };
        method.AcceptOnlyFromAmong("auto", "crude");
        return new([target, card, method], (parsed, usual) => usual with
        {
            WithCard = parsed.GetValue(card) is not null,
            Target = parsed.GetValue(target) is { } text ? double.Parse(text) : null,
            IsCounted = parsed.GetValue(method) == "crude",
        });
    }

    /// <inheritdoc/>
    public override string? WriteBesides(ParseResult parsed, ScenarioDocument document, TripResult result) =>
        parsed.GetValue(card) is not { } path ? null
        : result.Card is null ? "no card was made: it needs a target (--target, or trip.target_risk) and a trip whose start is reached"
        : CardFile.Write(path, document, result);

    public override TripQuestion Usual(Scenario scenario, bool evaluationsStated) => new();

    public override long Work(Scenario scenario, TripQuestion question, long evaluations) =>
        TripAnalysis.EvaluationsOf(scenario, evaluations, (question.Target ?? scenario.Trip!.TargetRisk) is not null);

    public override TripResult Run(LifeModel model, StudySettings settings, TripQuestion question, HeadlineSource headlines,
        RunOptions options) =>
        TripAnalysis.Run(model.Scenario, settings, question, options);

    public override Scenario Told(Scenario scenario) => Trip.Whole(scenario);

    public override RunRecord RunOf(TripResult result) => result.Run;

    public override string Method(TripResult result) => TripText.Method(result);

    public override IEnumerable<Block> Blocks(ScenarioDocument document, TripResult result) => TripBlocks.Of(result);

    public override JsonForm<TripResult> Form => TripDocument.Form;

    public override string[] Header => TripDocument.Header;

    public override IEnumerable<string[]> Rows(TripResult result) => TripDocument.Rows(result);

    protected override long Least => TripAnalysis.LeastRows;

    protected override long Most => TripAnalysis.MostRows;
}
