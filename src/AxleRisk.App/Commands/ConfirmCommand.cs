using System.CommandLine;
using AxleRisk.App.Answers;
using AxleRisk.App.Documents;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Confirmation;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Commands;

/// <summary><c>axlerisk confirm FILE</c>: the fast model against simulation in time.</summary>
internal static class ConfirmCommand
{
    public static Command Create(Terminal terminal)
    {
        var options = new CommonOptions(null);
        var own = new ConfirmOptions();
        Command command = options.PlainCommand("confirm",
            "the fast model against simulation in time, with wheel lift-off and stops: what it misses, and by how much");
        own.AddTo(command);
        command.Options.Add(options.Seed);
        command.Options.Add(options.Threads);
        command.SetAction((parsed, cancellation) =>
        {
            ScenarioDocument document = options.Read(parsed);
            int? stretch = own.StretchOf(parsed, document.Scenario);
            Scenario whole = Trip.Whole(document.Scenario);
            var model = new LifeModel(stretch is { } place ? Stretches.At(whole, whole.History[place - 1].FromKm) : whole);
            ConfirmationQuestion question = own.Question(parsed, options.Seed) with { Stretch = stretch };
            (ConfirmationResult result, TimeSpan elapsed) = options.Run(
                parsed, terminal, ConfirmationAnalysis.SimulationsOf(model, question), run =>
                    ConfirmationAnalysis.Run(model, question, run), cancellation);
            var record = new RunRecord(result.Evaluations, result.Evaluations, question.Seed, "plain", LifeModel.Version, result.IsPartial);
            return Task.FromResult(new Answer(
                [
                    .. Frame.Head(document),
                    .. BlockLines.Of([.. ConfirmBlocks.Of(result), .. Driven(document.Scenario, stretch), .. NoteBlocks.Of(document)]),
                    TextLine.Empty,
                    .. Frame.Foot(ConfirmText.Run(result), ConfirmText.Partial(result), elapsed),
                ],
                () => WholeDocument.Write("confirm", document, ConfirmDocument.Form, result, (record, elapsed)),
                ConfirmDocument.Header, ConfirmDocument.Rows(result), result.IsPartial).Give(parsed, options, terminal));
        });
        return command;
    }

    private static IEnumerable<Block> Driven(Scenario scenario, int? stretch) =>
        stretch is { } place ? [new Paragraph(HistoryText.Driven(scenario, place))] : [];
}
