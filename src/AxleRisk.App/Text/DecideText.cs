using AxleRisk.Core.Analyses.Decisions;
using AxleRisk.Core.Numerics;

namespace AxleRisk.App.Text;

/// <summary>A decision as text: the choice, its price and its doubt.</summary>
internal static class DecideText
{
    public const string Heading = "The options by expected net cost, best first";
    public const string AgainstHeading = "Each option against the scenario as it is, and its break-even price";
    public const string Reading =
        "failures: what the failures of all vehicles are expected to cost. best: the probability, given what is unknown, that no other "
        + "option is expected to cost less. over as it is: its net cost less that of the scenario as it is. break-even: the price a vehicle at which an option would cost as much as the best of the "
        + "others. Differences are paired, of the same vehicles.";

    public const string People = "Costs alone are compared, and a failure costs what the file says. What it may do to people is no cost here.";

    /// <summary>The method in words.</summary>
    public static string Method(DecideResult result) =>
        $"{result.Options.Length} options, each evaluated with these same samples, "
        + (!HasUnknown(result) ? "one level of vehicles" : $"{Figures.Count(result.Draws)} outer draws of what is unknown, {Figures.Count(result.VehiclesOfDraw)} vehicles in each");

    private static bool HasUnknown(DecideResult result) =>
        result.Draws > 0 && !(result.Unknown.IsEmpty && result.PerfectInformation.Estimate == 0);

    /// <summary>The choice: the option and what it is expected to cost.</summary>
    public static string Choice(DecideResult result) => Printable.Line(result.Options[result.Best].Name);

    /// <summary>The choice in sentences: its cost, its lead, its doubt.</summary>
    public static IEnumerable<string> Sentences(DecideResult result)
    {
        DecidedOption best = result.Options[result.Best];
        DecidedOption next = result.Next;
        yield return $"Expected net cost of {Of(result)}: {Money(best.NetCost.Estimate, result)} ({Range(best.NetCost)}), of which {Money(best.FailureCost.Estimate, result)} for failures; "
            + $"one failure costs {Money(result.MeanFailureCost, result)} on average, {Counted(result)}";

        Interval lead = result.Lead;
        yield return lead.Low > 0
            ? $"Next: {Printable.Line(next.Name)}, which is expected to cost {Money(lead.Estimate, result)} more ({Range(lead)})"
            : $"This run cannot tell it from {Printable.Line(next.Name)}: {Money(lead.Estimate, result)} apart ({Range(lead)}); more --evaluations help";
        if (best.ProbabilityBest.Estimate < 1)
        {
            DecidedOption often = result.Options.MaxBy(o => o.ProbabilityBest.Estimate)!;
            string other = often.ProbabilityBest.Estimate > best.ProbabilityBest.Estimate
                ? $"; \"{Printable.Line(often.Name)}\" is more often ({Figures.Share(often.ProbabilityBest.Estimate)}), yet costs more on average" : "";
            yield return $"Given what is unknown it is the best with a probability of {Figures.Share(best.ProbabilityBest.Estimate)} "
                + $"({Figures.Share(best.ProbabilityBest.Low).Replace(" %", "")} to {Figures.Share(best.ProbabilityBest.High).Replace(" %", "")}){other}; knowing all of that would save {Money(result.PerfectInformation.Estimate, result)} "
                + $"on average ({Range(result.PerfectInformation)}), and no measurement is worth more";
        }
        else
        {
            yield return HasUnknown(result)
                ? "Of the draws of what is unknown there is none in which another option is better"
                : "Nothing is stated as unknown: how likely it is the best is not asked";
        }

        if (result.Headline is { } headline)
        {
            string p = $"As it is {Figures.Probability(headline.Probability)} of the vehicles fail by {Figures.Exact(headline.DistanceKm)} km ({Figures.ProbabilityRange(headline.Probability)})";
            yield return headline.Agrees(result.Own)
                ? $"{p}, {HeadlineText.Own(headline, result.Own).TrimEnd('.').Replace("As risk", "as risk")}; the others are told by how many times as many of it fail in that sample"
                : $"{p}, as risk gives it; this run's own sample, which the costs are of, says {Figures.Probability(result.Own)}";
        }

        yield return $"All other prices as stated, it stays the best up to a price of {Money(best.BreakEvenPrice.Estimate, result)} a vehicle ({Range(best.BreakEvenPrice)}); it costs {Money(best.Price, result)}";
    }

    public static TextTable Table(DecideResult result)
    {
        var table = new TextTable("option", "price", "fails", "failures", "net cost (95 %)", "best");
        foreach (DecidedOption o in InOrder(result))
        {
            table.Add(
                Printable.Line(o.Name), Money(o.Cost), Figures.Probability(o.Failed.Estimate), Money(o.FailureCost.Estimate),
                About(o.NetCost), Share(o.ProbabilityBest.Estimate));
        }

        return table;
    }

    public static TextTable AgainstTable(DecideResult result)
    {
        var table = new TextTable("option", "over as it is (95 %)", "break-even (95 %)");
        foreach (DecidedOption o in InOrder(result))
        {
            table.Add(Printable.Line(o.Name), o.Difference is { } d ? About(d) : "", About(o.BreakEvenPrice));
        }

        return table;
    }

    /// <summary>An amount: whole from 100 on.</summary>
    public static string Money(double x) => !double.IsFinite(x) ? Figures.None : Zero(x.ToString(Math.Abs(x) >= 100 ? "#,0" : "0.##"));

    /// <summary>The ends of an interval of amounts.</summary>
    public static string Range(Interval of) => $"{Money(of.Low)} to {Money(of.High)}";

    private static string Money(double x, DecideResult result) => Figures.Cost(Money(x), result.Currency);

    // These intervals are as wide to either side.
    private static string About(Interval of) => $"{Money(of.Estimate)} +- {Money((of.High - of.Low) / 2)}";

    private static string Zero(string text) => text == "-0" ? "0" : text;

    private static IEnumerable<DecidedOption> InOrder(DecideResult result) => result.Options.OrderBy(o => o.NetCost.Estimate);

    private static string Of(DecideResult result) => result.Vehicles == 1 ? "one vehicle" : $"{Figures.Count(result.Vehicles)} vehicles";

    private static string Counted(DecideResult result) => result.Fleet is { } fleet
        ? $"and those count that come within {fleet.WarrantyMonths} months and {Figures.Exact(fleet.WarrantyKm)} km"
        : $"and those by {Figures.Exact(result.Km!.Value)} km count";

    private static string Share(double p) => p is > 0 and < 0.001 ? "< 0.1 %" : Figures.Share(p);
}
