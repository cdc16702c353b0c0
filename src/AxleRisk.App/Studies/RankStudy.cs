using System.CommandLine;
using AxleRisk.App.Answers;
using AxleRisk.App.Documents;
using AxleRisk.App.Documents.Forms;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Studies;

/// <summary>Which factors matter.</summary>
internal sealed class RankStudy : Study<RankQuestion, RankResult>
{
    public override string Name => "rank";

    public override string Title => "Which factors decide it";

    public override string About => "the factors by their share of failure and of the spread of life";

    public override IReadOnlyList<string> Explanation =>
    [
        "The factors by their share of the failures: how much of the difference between vehicles that fail and vehicles that last each one accounts for, over its real spread. The shares add up to 100 %; they rank factors for this scenario and would change with its distributions.",
        "A bar is full as far as the lower end of its 95 % interval, shaded on to the share, and a whisker goes to the upper end. Factors of one place (=) are a tie: their intervals overlap, and the order between them means nothing yet. More evaluations may part them.",
        "Alone is what a factor does by itself, with others what it does in all its combinations; where the two differ, it acts together with other factors.",
        "Held is the failure probability if the factor could be fixed at its nominal, its 5 % or its 95 % point: what controlling it would be worth. Enter shows this across its whole range.",
        "First answers of 20 000 and 200 000 evaluations come sooner; the whole run follows and has the digits of axlerisk rank. Unless you choose a number of evaluations it ends when no share's interval is wider than 1 point to either side.",
    ];

    public override string Invitation => "Ranks the factors by their share of the failures.";

    public override long DefaultEvaluations => RankAnalysis.MostEvaluations;

    public override string? WhyNot(Scenario scenario, RankQuestion question) => UncertainInputs.None(scenario, "rank");

    public override string EvaluationsHelp =>
        $"evaluations of the damage model (default: until no share's interval is wider than +-{100 * RankQuestion.UsualHalfWidth:0} point, {RankAnalysis.MostEvaluations:#,0} at most)";

    public override QuestionOptions<RankQuestion> Options()
    {
        var subsets = new Option<bool>("--subsets")
        {
            Description = "find the shares by all subsets of up to 13 factors rather than random orders: many times as dear",
        };
        return new([subsets], (parsed, usual) => parsed.GetValue(subsets) ? RankQuestion.Of(allSubsets: true, false) : usual);
    }

    public override RankQuestion Usual(Scenario scenario, bool evaluationsStated) => RankQuestion.Of(allSubsets: false, evaluationsStated);

    public override long EvaluationsFor(LifeModel model, RankQuestion question) => RankAnalysis.DefaultEvaluations(model, question);

    // With its evaluations stated, as parts need them, it has no look at the shares to decide how many more.
    public override Parting PartingOf(Scenario scenario) => Parting.Apart;

    public override RankResult Run(LifeModel model, StudySettings settings, RankQuestion question, HeadlineSource headlines,
        RunOptions options)
    {
        RankResult result = null!;
        RiskHeadline headline = null!;
        PartDoneException.Each(
            () => result = RankAnalysis.Run(model, settings, options, question),
            () => headline = headlines([model.Scenario.RequiredKm], options)[0]);
        return result.With(headline);
    }

    public override string Speed(RankResult result, TimeSpan elapsed) => RankText.Speed(result, elapsed);

    public override RunRecord RunOf(RankResult result) => result.Run;

    public override string Method(RankResult result) => RankText.Method(result);

    public override IEnumerable<Block> Blocks(ScenarioDocument document, RankResult result) => RankBlocks.Of(result);

    public override JsonForm<RankResult> Form => RankDocument.Form;

    public override string[] Header => RankDocument.Header;

    public override IEnumerable<string[]> Rows(RankResult result) => RankDocument.Rows(result);

    protected override bool EndsByItself => true;

    protected override long TypicalEvaluations => RankAnalysis.TypicalEvaluations;
}
