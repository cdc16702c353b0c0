using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Text;

/// <summary>The crew's card as text.</summary>
internal static class CardText
{
    public const string Heading = "The crew's card";
    public const string LegsHeading = "No faster than";
    public const string PricesHeading = "What each constraint costs";

    /// <summary>The card in a sentence; empty without one.</summary>
    public static string Summary(TripResult result) => result.Card is not { } card ? ""
        : card.KeepsTarget
            ? $"All together: {Hours(card.Hours)} h on the road keep it ({Hours(card.HoursAsPlanned)} h as planned), with the crew's card{Taken(card)}."
        : $"No combination of speeds, loads and remedies that was tried keeps {RangeWords.Percent(card.Target)}.";

    /// <summary>The time, the risk and what is taken, on lines of their own.</summary>
    public static IEnumerable<string> Lines(CardResult card)
    {
        if (!card.KeepsTarget)
        {
            yield return $"No combination that was tried keeps {RangeWords.Percent(card.Target)}. This is the card of the least risk that was found.";
        }

        yield return $"On the road: {Hours(card.Hours)} h; as planned {Hours(card.HoursAsPlanned)} h";
        yield return $"Fails on the trip, of those that set out: {Risk(card)}; to be kept: {RangeWords.Percent(card.Target)}";
        yield return $"Load: {(card.PayloadKg is { } kg ? $"{Figures.Exact(kg)} kg, on every leg" : "as planned")}";
        yield return $"Before the start: {(card.Remedies.IsEmpty ? "nothing" : string.Join("; ", card.Remedies.Select(r => Printable.Line(r.Name))))}";
        yield return Look(card);
        if (card.Notes.Length > 0)
        {
            yield return $"Notes: {Printable.Line(card.Notes)}";
        }
    }

    /// <summary>The speeds.</summary>
    public static TextTable Legs(CardResult card)
    {
        var table = new TextTable("leg", "km", "km/h", "planned", "h", "of all failures");
        foreach (CardLeg leg in card.Legs)
        {
            table.Add(
                Printable.Line(leg.Name), Figures.Exact(Math.Round(leg.Km)), Figures.Number(leg.KmPerHour),
                Figures.Number(Math.Round(leg.PlannedKmPerHour)), Hours(leg.Km / leg.KmPerHour), Figures.Share(leg.Share));
        }

        return table;
    }

    /// <summary>What each constraint costs.</summary>
    public static IEnumerable<string> Prices(CardResult card) => card.Prices.Select(p =>
    {
        string what = p.Kind switch
        {
            CardConstraint.WithoutRemedy => $"Without \"{Printable.Line(p.Remedy!.Name)}\"",
            CardConstraint.OtherLoad => p.PayloadKg is { } kg ? $"With {Figures.Exact(kg)} kg on every leg" : "With the load as planned",
            _ => "Without any target, every leg at the greatest speed tried",
        };
        return p.Hours is not { } hours ? $"{what}: none that was tried keeps it"
            : $"{what}: {Hours(hours)} h, {Difference(hours - card.Hours)}"
            + (p.Kind == CardConstraint.NoTarget ? "" : $"; then {(p.Taken.IsEmpty ? "no remedy" : "with " + Names(p.Taken))}");
    });

    /// <summary>How it was found.</summary>
    public static string Reading(CardResult card) =>
        $"The least travel time that was found over the speeds of all legs, loads and remedies together ({Figures.Count(card.Searched)} combinations of load and "
        + $"remedies, sorted with {Figures.Count(card.SortingRows)} vehicles; the {Figures.Count(card.SearchedWithMore)} that might be the best searched with {Figures.Count(card.SearchRows)}); its risk is of {Figures.Count(card.Rows)} others. Speeds are not to be exceeded; "
        + "the search is no proof that no faster card keeps it. The risk is rounded up.";

    /// <summary>Hours, to a tenth.</summary>
    public static string Hours(double hours) => hours.ToString("#,0.0");

    // The safe side: the upper end of the interval, rounded up.
    private static string Risk(CardResult card)
    {
        double high = card.Risk.High;
        double unit = Math.Pow(10, Math.Floor(Math.Log10(Math.Max(high, 1e-12))) - 1);
        return double.IsNaN(high) ? Figures.None : $"up to {Figures.Number(100 * Math.Min(1, Math.Ceiling((high / unit) - 1e-9) * unit))} % as the scenario has it (the upper end of a 95 % interval)";
    }

    private static string Look(CardResult card)
    {
        CardLeg[] worst = [.. card.Legs.Where(l => l.Share >= 0.2).OrderByDescending(l => l.Share)];
        return "Look at the housing, at the checked section, before the start"
            + (worst.Length == 0 ? " and at the end of every leg"
                : $" and after {string.Join(", ", worst.Select(l => Printable.Line(l.Name)))}, where {100 * worst.Sum(l => l.Share):0} % of the failures are expected")
            + ", and after any hard blow; a crack ends the trip";
    }

    private static string Taken(CardResult card) =>
        (card.PayloadKg is { } kg ? $", {Figures.Exact(kg)} kg" : "")
        + (card.Remedies.IsEmpty ? "" : $", with {Names(card.Remedies)}");

    private static string Names(IEnumerable<Remedy> remedies) => string.Join(" and ", remedies.Select(r => $"\"{Printable.Line(r.Name)}\""));

    private static string Difference(double hours) =>
        hours >= 0.05 ? $"{hours:0.0} h more" : hours <= -0.05 ? $"{-hours:0.0} h less" : "no longer";
}
