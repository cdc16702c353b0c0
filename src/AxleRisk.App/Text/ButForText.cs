using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Text;

/// <summary>
/// How far the evidence bears on each explanation, and what would have become of the axle without it: sentences fit for a report.
/// Each says what was computed and no more; none says what brought the failure about.
/// </summary>
internal static class ButForText
{
    public const string OddsHeading = "Odds multiplied by the evidence, and what a prior of your own becomes, %";
    public const string Heading = "But for: the same axle with one thing otherwise";

    // Within a quarter of 1 the odds are as good as unmoved; a prior of 50 % becomes 44 to 56 %. Common practice, no source.
    private const double Little = 1.25;

    // One decimal of a percent would show it as 0.
    private const double Nothing = 0.0005;

    /// <summary>By how much the odds of each explanation were multiplied, and the posterior over other priors.</summary>
    public static TextTable OddsTable(CausesResult result)
    {
        string[] priors = [.. ExplanationShift.OtherPriors.Select(p => Percent(p).Replace(" %", ""))];
        var table = new TextTable(["explanation", "odds x", "95 % interval", "|" + priors[0], .. priors[1..]]);
        foreach (ExplanationShift e in Weighed(result))
        {
            Interval odds = e.OddsMultiplied!.Value;
            table.Add([
                CausesText.NameOf(result, e), Times(odds.Estimate), $"{Times(odds.Low)} to {Times(odds.High)}",
                .. e.OverPriors.Select(p => Percent(p.Posterior.Estimate).Replace(" %", "")),
            ]);
        }

        return table;
    }

    /// <summary>How to read the table; names the explanations of which the evidence says next to nothing.</summary>
    public static IEnumerable<string> OddsReading(CausesResult result)
    {
        yield return "odds x: how likely the evidence is with the explanation over how likely it is without it; to the right, what a prior "
            + "of that much becomes with it, all else as the scenario has it.";
        string what = result.Evidence.Measured.IsEmpty && result.Evidence.Known.IsEmpty ? "distance" : "evidence";
        foreach (ExplanationShift e in Weighed(result).Where(e => e.OddsMultiplied is { Low: > 1 / Little, High: < Little }))
        {
            yield return $"\"{CausesText.NameOf(result, e)}\": the {what} says next to nothing of it.";
        }
    }

    /// <summary>What would have become of the axle without each explanation that states an instead.</summary>
    public static IEnumerable<string> Sentences(CausesResult result) =>
        result.Explanations.Where(e => e.ButFor is not null).Select(e => Sentence(result, e, e.ButFor!));

    /// <summary>What the sentences rest on; why there are none where an instead is stated; empty where none is.</summary>
    public static string Reading(CausesResult result) =>
        result.Explanations.Any(e => e.ButFor is not null)
            ? "The same axle: its other inputs, its Miner sum and its scatter as the evidence leaves them, evaluated anew with the one thing "
                + "otherwise. This is computed from the scenario's distributions. It is no finding that an explanation held, and it leaves "
                + "open what the scenario does not state."
        : !result.Evidence.Explanations.Any(e => !e.Instead.IsEmpty) ? ""
        : result.Evidence.Life?.FailedByKm is { } km
            ? $"But for is not asked: the distance it asks of is not beyond the {Figures.Exact(km)} km that the axle reached as it was; state evidence.would_have_passed_km."
        : "But for is not asked: the evidence tells of no failure.";

    private static string Sentence(CausesResult result, ExplanationShift e, ButFor b)
    {
        string passed = Figures.Exact(b.WouldHavePassedKm), failed = Figures.Exact(b.FailedByKm);
        string first = e.Settled == true
            ? $"\"{CausesText.NameOf(result, e)}\", which is known to hold. "
            : $"\"{CausesText.NameOf(result, e)}\", which given the evidence holds with a probability of {Figures.Share(e.Posterior.Estimate)}. If it held: ";
        string both = e.Settled == true ? ""
            : $" That it held, and that the axle would otherwise have passed {passed} km, has a probability {WithRange(b.HeldAndPasses)}.";
        string had = string.Join(" and ", b.Instead.Select(c => Otherwise(result, c)));
        return $"{first}{(e.Settled == true ? "Had" : "had")} {had}, this axle would have passed {passed} km with a probability {WithRange(b.Passes)}, "
            + $"and would still have failed by {failed} km with a probability {WithRange(b.StillFails)}.{both}";
    }

    /// <summary>What an input would have been, behind "had".</summary>
    public static string Otherwise(CausesResult result, Change change)
    {
        Factor factor = result.Causes.First(c => c.Name == change.Input).Factor;
        string unit = factor.Unit.Length > 0 ? " " + factor.Unit : "";
        return $"the {Printable.Line(factor.Label)} been " + change switch
        {
            Change.ToValue { Value: Value.Uncertain value } => $"drawn from {DistributionText.Of(value)}{unit}",
            Change.ToValue { Value: var value } => Figures.Exact(value.Nominal) + unit,
            Change.Times times => $"{Figures.Number(times.Factor)} times what it was",
            Change.ToWord { Choice: var words } => Printable.Line(DistributionText.Choice(words)),
            _ => change.Description,
        };
    }

    private static IEnumerable<ExplanationShift> Weighed(CausesResult result) =>
        result.Explanations.Where(e => e.OddsMultiplied is not null && e.Names.Length < 2);

    // Behind "with a probability"; next to nothing and next to certain are told by the end of the interval.
    private static string WithRange(Interval p) => p.Estimate switch
    {
        < Nothing => $"below {100 * Math.Max(p.High, Nothing):0.##} %",
        > 1 - Nothing => $"above {Figures.Share(Math.Floor(1000 * Math.Min(p.Low, 1 - Nothing)) / 1000)}",
        _ => $"of {Figures.Share(p.Estimate)} ({Figures.Share(p.Low).Replace(" %", "")} to {Figures.Share(p.High).Replace(" %", "")})",
    };

    private static string Percent(double p) => (100 * p).ToString(p is > 0 and < 0.01 ? "0.0" : "0") + " %";

    private static string Times(double odds) => odds >= 1000 && double.IsFinite(odds) ? Figures.Count((long)odds) : Figures.Ratio(odds);
}
