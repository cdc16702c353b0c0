using System.CommandLine;
using AxleRisk.App.Documents;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Studies;
using AxleRisk.Files;

namespace AxleRisk.App.Commands;

/// <summary><c>axlerisk rank FILE</c>: which factors matter, over their real spread.</summary>
internal static class RankCommand
{
    public static Command Create(Terminal terminal)
    {
        var options = new CommonOptions(null);
        options.Evaluations.Description =
            $"evaluations of the damage model (default: until no share's interval is wider than +-{100 * RankQuestion.UsualHalfWidth:0} point, {RankAnalysis.MostEvaluations:#,0} at most)";
        var subsets = new Option<bool>("--subsets")
        { Description = "find the shares by all subsets of up to 13 factors rather than random orders: many times as dear" };
        Command command = options.StudyCommand("rank", "the factors by their share of failure and of the spread of life");
        command.Add(subsets);
        command.SetAction((parsed, cancellation) =>
        {
            ScenarioDocument document = options.Read(parsed);
            var model = new LifeModel(document.Scenario);
            if (model.Factors.Factors.IsEmpty)
            {
                terminal.Error.WriteLine(
                    $"{Printable.Line(document.FileName)}: no value is uncertain, so there is nothing to rank; give at least one a distribution");
                return Task.FromResult(ExitCode.BadInput);
            }

            RankQuestion question = RankQuestion.Of(parsed.GetValue(subsets), parsed.GetValue(options.Evaluations) is not null);
            StudySettings settings = options.Settings(parsed, RankAnalysis.DefaultEvaluations(model, question));
            (RankResult result, TimeSpan elapsed) = options.Run(
                parsed, terminal, settings.Evaluations, run =>
                {
                    RiskHeadline headline = options.HeadlineOf(parsed, model, run);
                    return RankAnalysis.Run(model, settings, run, question).With(headline);
                }, cancellation);
            return Task.FromResult(new Answer(
                [
                    .. Frame.Head(document), .. RankText.Lines(result), .. Frame.Assumptions(document.Scenario),
                    .. Frame.Foot(result.Run, RankText.Method(result), elapsed, RankText.Speed(result, elapsed)),
                ],
                () => RankDocument.AddTo(Json.Head("rank", document), result, elapsed).WithRun(result.Run, elapsed).WithNotes(document),
                RankDocument.Header, RankDocument.Rows(result), result.Run.IsPartial).Give(parsed, options, terminal));
        });
        return command;
    }
}
