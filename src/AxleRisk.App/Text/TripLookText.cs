using AxleRisk.Core.Analyses.Trips;

namespace AxleRisk.App.Text;

/// <summary>What looks for the crack before the legs of a trip are worth, as text.</summary>
internal static class TripLookText
{
    public const string Heading = "One look for the crack, before each leg";
    public const string Reading =
        "after no look: a vehicle whole before the leg fails on the rest of the trip; after a clean look: the same where the look has found "
        + "nothing. finds: of the vehicles that set out. trip: fails on it with this one look, a vehicle found cracked going no further. "
        + "A detection curve belongs to a procedure and to the person who follows it; in the field few have either.";

    public static TextTable Table(TripResult result)
    {
        var table = new TextTable("before leg", "<method", "finds", "after no look", "after a clean look", "trip");
        foreach (TripLook look in result.Looks)
        {
            table.Add(
                Printable.Line(look.Leg), Printable.Line(look.Method), Figures.Probability(look.Found),
                Figures.Probability(look.FailsAfter), Figures.Probability(look.FailsAfterClean), Figures.Probability(look.Trip));
        }

        return table;
    }

    /// <summary>The line of the crew's card.</summary>
    public static string OfCard(TripLook look) =>
        $"If there is one look, {Printable.Line(look.Method)} before {Printable.Line(look.Leg)}: at the planned speeds it finds a crack in {Figures.Probability(look.Found)} of the vehicles; "
        + $"after a clean look {Figures.Probability(look.FailsAfterClean)} still fail on the rest of the trip";
}
