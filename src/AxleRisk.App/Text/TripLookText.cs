using AxleRisk.Core.Analyses.Trips;

namespace AxleRisk.App.Text;

/// <summary>What looks for the crack before the legs of a trip are worth, as text.</summary>
internal static class TripLookText
{
    public const string Heading = "One look for the crack, before each leg or before every leg";
    public const string Reading =
        "no look: a vehicle whole before the leg fails on the rest of the trip; clean look: the same where the look has found "
        + "nothing (before every leg: where each has found nothing, of those clean before the first). finds: of the vehicles that set out. trip: fails on it with this look, a vehicle found cracked going no further. "
        + "Looks go by a few thousand of the vehicles where more are drawn, corrected by how many fail of those and of all where nobody looks. "
        + "A detection curve belongs to a procedure and to the person who follows it; in the field few have either.";

    public static TextTable Table(TripResult result)
    {
        var table = new TextTable("before leg", "<method", "finds", "no look", "clean look", "trip");
        foreach (TripLook look in result.Looks)
        {
            table.Add(
                look.Leg is { } leg ? Printable.Line(leg) : "every one", Printable.Line(look.Method), Figures.Probability(look.Found),
                Figures.Probability(look.FailsAfter), Figures.Probability(look.FailsAfterClean), Figures.Probability(look.Trip));
        }

        return table;
    }

    /// <summary>The look in words.</summary>
    public static string Looks(TripLook look) => look.Leg is { } leg
        ? $"one look ({Printable.Line(look.Method)}) before {Printable.Line(leg)}" : $"a look ({Printable.Line(look.Method)}) before every leg";

    /// <summary>The lines of the crew's card: at its own speeds, or where it has none at the planned ones.</summary>
    public static IEnumerable<string> OfCard(TripResult result)
    {
        if (result.Seen is { } seen)
        {
            yield return $"For the vehicle that was seen: {LookWords.Seen(seen.Evidence)}";
        }

        if (result.Card?.Look is { } own)
        {
            yield return $"If there is one look, {Before(own)}: at this card's speeds {Finds(own)}"
                + (result.BestLook is { } planned ? $"; at the planned speeds, {Before(planned)}, {Figures.Probability(planned.FailsAfterClean)}" : "");
        }
        else if (result.BestLook is { } look)
        {
            yield return $"If there is one look, {Before(look)}: at the planned speeds {Finds(look)}";
        }
    }

    private static string Before(TripLook look) => $"{Printable.Line(look.Method)} before {Printable.Line(look.Leg!)}";

    private static string Finds(TripLook look) =>
        $"it finds a crack in {Figures.Probability(look.Found)} of the vehicles; after a clean look {Figures.Probability(look.FailsAfterClean)} still fail on the rest of the trip";
}
