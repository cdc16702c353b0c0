using AxleRisk.Core.Analyses.Strikes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Text;

/// <summary>What must be said of the bump stop, so that it is never silent.</summary>
internal static class StopText
{
    /// <summary>The sentences; none where a stated stop is hardly met.</summary>
    public static IEnumerable<string> Sentences(StopResult stop)
    {
        if (!stop.IsStated)
        {
            StopLeg worst = stop.Legs.MaxBy(l => l.RareFromMm)!;
            yield return $"No {Quantities.BumpClearance.Label} is stated: strikes are left out, and with them most of what "
                + $"the payload does. In the base case they come less than once a km if the empty vehicle has more than "
                + $"{Math.Ceiling(worst.RareFromMm / 5) * 5:0} mm of clearance (the worst leg is {Name(worst)}).";
            yield break;
        }

        StopLeg[] often = [.. stop.Legs.Where(l => l.IsOften)];
        if (often.Length > 0 || stop.StrikeShare >= StopCheck.NamedShare)
        {
            string where = often.Length == 0 ? "" : $" on {Named(often, l => $"{Figures.Number(Math.Round(l.PerKm))} a km")}";
            yield return $"The suspension meets its bump stop in the base case{where}; strikes add {Figures.Share(stop.StrikeShare)} of the damage of the usual use"
                + $"{OfTrip(often)}.";
        }

        StopLeg[] rough = [.. stop.Legs.Where(l => l.IsRough)];
        if (rough.Length > 0)
        {
            yield return $"The clearance to the bump stop is below {StopCheck.RoughLevel} standard deviations of the travel on "
                + $"{Named(rough, l => $"{l.Level:0.00}")}: the formula of the strikes is rough there.";
        }
    }

    private static string OfTrip(StopLeg[] often) => often.Where(l => l.IsTrip).ToArray() is { Length: > 0 } trip
        ? $" and {Named(trip, l => $"{Figures.Share(l.StrikeShare)}")} of that of the leg" : "";

    private static string Named(StopLeg[] legs, Func<StopLeg, string> told) =>
        string.Join(", ", legs.Select(l => $"{Name(l)} ({told(l)})"));

    private static string Name(StopLeg leg) => (leg.IsTrip ? "trip leg " : "") + leg.Name;
}
