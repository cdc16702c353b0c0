using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Numerics;

namespace AxleRisk.App.Text;

/// <summary>A trip as text: first what a planner can act on, then the figures behind it.</summary>
internal static class TripText
{
    /// <summary>The share of the trip's failures from which on it is told how a rare leg fails.</summary>
    private const double WorthTelling = 0.05;

    public const string LegsHeading = "By leg, of the vehicles that reach the leg's start";
    public const string EndsHeading = "Failed by the end of each leg, of the vehicles that reach the trip's start";
    public const string RemediesHeading = "Remedies taken before the start; how many times the plan's risk";
    public const string CombinationsHeading = "The worst combinations for this trip";

    /// <summary>How long the trip is, what was driven before it, and who gets to its start.</summary>
    public static string Distances(TripResult result) =>
        $"The trip: {Figures.Exact(result.Km)} km, after {Figures.Exact(result.AlreadyDrivenKm)} km of the usual use; {Reached(result.Reached)} of such vehicles reach its start"
        + (result.Seen is null ? "." : ", given what was seen.");

    /// <summary>The method in words, for the line that tells how to repeat the run.</summary>
    public static string Method(TripResult result) =>
        (result.IsConditional ? "exact survival probabilities given the damage averaged" : "failures counted")
        + $", {Figures.Count(result.AllEvaluations)} evaluations for all questions together";

    private static string Reached(Interval p) => p.Low > 0.99995
        ? "all but a few"
        : $"{Figures.Probability(p.Estimate)} ({Figures.ProbabilityRange(p)})";

    public static TextTable LegTable(TripResult result)
    {
        string[] marks = result.Rare.IsEmpty ? [] : ["<"];
        var table = new TextTable(["leg", "km", "fail on it", "95 % interval", "of all failures", .. marks]);
        foreach (TripLegRisk leg in result.Legs)
        {
            table.Add(
            [
                leg.Name, Figures.Exact(leg.Km), Figures.Probability(leg.Conditional), Range(leg.Conditional),
                double.IsNaN(leg.Share.Estimate)
                    ? Figures.None : $"{100 * leg.Share.Estimate:0} % ({100 * leg.Share.Low:0} to {100 * leg.Share.High:0})",
                .. marks.Select(_ => result.Rare.Any(r => r.Leg == leg.Name) ? "i" : ""),
            ]);
        }

        return table;
    }

    private static string Range(Interval p) => double.IsNaN(p.High) ? Figures.None : Figures.ProbabilityRange(p);

    public static TextTable EndTable(TripResult result)
    {
        var table = new TextTable("end of", "km", "failed", "95 % interval");
        foreach (TripLegRisk leg in result.Legs)
        {
            table.Add(leg.Name, Figures.Exact(leg.EndKm), Figures.Probability(leg.Cumulative), Range(leg.Cumulative));
        }

        return table;
    }

    public static string LimitsHeading(double target) =>
        $"What keeps the trip at or under {RangeWords.Percent(target)}, each alone, all else as planned";

    /// <summary>Each thing that can be set, and where it keeps the target.</summary>
    public static IReadOnlyList<string> LimitSentences(TripResult result) =>
        [.. result.Limits.Select(l => $"{TripWords.Name(l.Lever)}: {TripWords.Limit(l)}")];

    public static TextTable RemedyTable(TripResult result)
    {
        var table = new TextTable("case", "fail", "times (95 %)", "<");
        table.Add("as planned", Figures.Probability(result.Probability), "", "");
        foreach (TripRemedy r in result.Remedies)
        {
            string note = double.IsNaN(r.Probability.Estimate)
                ? (r.Probability.High <= result.Target ? "not resolved, keeps target" : "not resolved") : !r.IsDistinct
                && !double.IsNaN(r.Ratio.Estimate) ? "no difference" : r.Probability.High <= result.Target ? "keeps target" : "";
            table.Add(Printable.Line(r.Remedy.Name), Figures.Probability(r.Probability), Ratio(r.Ratio), note);
        }

        return table;
    }

    /// <summary>
    /// The rare leg that fails most, which speaks for all; null where none is rare, or none brings a part of the failures that
    /// matters.
    /// </summary>
    public static RareLeg? Speaker(TripResult result) => result.Rare
        .Where(r => !(result.Legs.First(l => l.Name == r.Leg).Share.Estimate < WorthTelling)).MaxBy(r => r.Answer.Probability.Estimate);

    /// <summary>The heading of its design point.</summary>
    public static string DesignHeading(RareLeg leg) => $"The likeliest way to fail on {Printable.Line(leg.Leg)}";

    private static string RareReading(TripResult result) =>
        (result.Rare.IsEmpty ? "" : "Legs marked i are each answered by importance sampling, and what they add up to by their sum. ")
        + (result.Rare.IsEmpty && result.Remedies.All(r => !double.IsNaN(r.Probability.Estimate)) ? ""
            : "Remedies, limits and combinations go by the sampled vehicles alone: where few of those carry the risk, it is not resolved, its upper end is a bound, and no combinations are sought. ");

    private static string Ratio(Interval r) => double.IsNaN(r.Estimate) && double.IsFinite(r.High)
        ? $"< {r.High:0.000}" : double.IsNaN(r.Estimate) ? Figures.None : $"{r.Estimate:0.000} ({r.Low:0.000}..{r.High:0.000})";

    public static string Reading(TripResult result) =>
        (result.Seen is { } seen
            ? $"All figures are of vehicles that reach the start unbroken, each weighted by how likely it would have been seen as this one was: those drawn are worth {Figures.Count((long)seen.Effective)} equal ones. No combinations are sought then. The "
            : "All figures are of vehicles that reach the start unbroken. The ")
        + "damage before it is that of the usual use with the same vehicle, "
        + "Miner sum and scatter; a remedy changes the trip, not the past. The speed factor and the roughness factor of the usual use hold on the trip as well. "
        + (result.Limits.IsEmpty
            ? "" : "A speed or load set here is certain, but for the driver's speed factor; the load acts through the ride alone. Speeds are tried in steps of 10 %: a risk that peaks and "
            + "falls again within one step is not seen. The interval of a limit is where the ends of the risk's interval meet the target. ")
        + RareReading(result)
        + "Intervals are 95 % and cover the error of sampling only.";
}
