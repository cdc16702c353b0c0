using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Confirmation;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Answers;

/// <summary>The comparison of the fast model with simulation in time.</summary>
internal static class ConfirmBlocks
{
    public static IEnumerable<Block> Of(ConfirmationResult result)
    {
        ConfirmedPoint first = result.Points[0];
        return
        [
            new Headline("True over computed damage in the base case", ConfirmText.Index(first.Ratio), [.. ConfirmText.Verdict(result)]),
            ConfirmText.StepTable(result, first).Captioned("Step by step in the base case: damage of the use"),
            ConfirmText.LegTable(result, first).Captioned("Base case by leg: damage of the fast model over that of the simulation"),
            ConfirmText.PointTable(result).Captioned("Base case and sampled points: true over computed damage of the use"),
            .. first.Trip is { } trip ? Trip(result, trip) : [],
            new Paragraph("To carry this in every other command, with its spread between the points, add under [fatigue]:"),
            new CommandLines([ConfirmText.TomlLine(result)]),
            new Paragraph("Or leg by leg, in place of that line, each under the [[use.legs]] of its name:"),
            new CommandLines([.. result.Legs.Select(ConfirmText.TomlLine)]),
        ];
    }

    private static IEnumerable<Block> Trip(ConfirmationResult result, ConfirmedPoint trip) =>
    [
        ConfirmText.StepTable(result, trip)
            .Captioned($"The trip in the base case: true over computed damage {ConfirmText.Index(trip.Ratio)}"),
        ConfirmText.LegTable(result, trip).Captioned("The trip by leg"),
    ];
}
