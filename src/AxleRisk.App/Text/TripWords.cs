using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Numerics;

namespace AxleRisk.App.Text;

/// <summary>The answers of a trip as sentences a planner can act on.</summary>
internal static class TripWords
{
    /// <summary>The most remedies named in the advice.</summary>
    private const int MostNamed = 3;

    /// <summary>Will it last?</summary>
    public static string Verdict(TripResult result)
    {
        Interval p = result.Probability;
        if (!result.IsReached)
        {
            return result.Seen is null
                ? $"No vehicle of this scenario reaches the start: all break within the {Figures.Exact(result.AlreadyDrivenKm)} km before it."
                : $"No vehicle drawn is one like this ({LookWords.Seen(result.Seen.Evidence)}) and reaches the start: the scenario or what was seen is to be doubted.";
        }

        return (Figures.IsBound(p)
                ? $"As planned, less than {Figures.Probability(p.High)} of {Those(result)} {Break(result)} on this trip; how much less was not resolved."
                : $"As planned, {Figures.Probability(p.Estimate)} ({Figures.ProbabilityRange(p)}) of {Those(result)} {Break(result)} on this trip{Times(p.Estimate)}.")
            + Worst(result) + AgainstTarget(result);
    }

    private static string Those(TripResult result) =>
        result.Seen is null ? "the vehicles that set out" : "the vehicles like this one that set out";

    /// <summary>What was seen of the vehicle; empty where nothing was.</summary>
    public static string Given(TripResult result) => result.Seen is not { } seen || !result.IsReached ? ""
        : $"Given that {LookWords.Seen(seen.Evidence)}; had nothing been seen, {Figures.Probability(seen.Unseen)} ({Figures.ProbabilityRange(seen.Unseen)}).";

    /// <summary>Where to look, and what is left then; empty where there is no way of looking, or no need to.</summary>
    public static string Looking(TripResult result)
    {
        if (result.Target is not { } target || result.Looks.IsEmpty || result.Probability.High <= target)
        {
            return "";
        }

        return result.KeepingLook is { } look
            ? $"Go with {TripLookText.Looks(look)}, if a vehicle found cracked goes no further: {Figures.Probability(look.Trip)} ({Figures.ProbabilityRange(look.Trip)}) then still break; a crack is found in {Figures.Probability(look.Found)}."
            : $"No look before a leg, nor one before every leg, keeps it: {TripLookText.Looks(result.Looks.MinBy(l => l.Trip.High)!)} leaves {Figures.Probability(result.Looks.MinBy(l => l.Trip.High)!.Trip)}.";
    }

    private static string Break(TripResult result) => result.Modes.Length == 1
        ? "break the axle housing"
        : $"lose the axle to {string.Join(", ", result.Modes.SkipLast(1).Select(m => m.Words))} or {result.Modes[^1].Words}";

    /// <summary>What to do to keep the target; empty where none was stated or the plan keeps it.</summary>
    public static string Advice(TripResult result)
    {
        if (result.Target is not { } target || result.Limits.IsEmpty)
        {
            return "";
        }

        if (result.Probability.High <= target)
        {
            return $"There is room: {Room(result)}";
        }

        List<string> ways = [];
        if (result.Limit(TripLeverKind.AllSpeeds) is { HasUpperLimit: true, Windows: [{ To: { } speed }, ..] })
        {
            ways.Add($"drive every leg at {speed.Estimate:0.00} of the planned speed or slower");
        }

        ways.AddRange(result.Limits.Where(l => l.Lever.Kind == TripLeverKind.LegSpeed && l.HasUpperLimit)
            .Select(l => $"drive {Printable.Line(l.Lever.Leg!)} at {Short(l.Windows[0].To!.Value.Estimate)} km/h or slower"));
        if (result.Limit(TripLeverKind.Load) is { HasUpperLimit: true, Windows: [{ To: { } load }, ..] })
        {
            ways.Add($"carry {Short(load.Estimate)} kg or less");
        }

        ways.AddRange(result.Remedies.Where(r => r.IsDistinct && r.Probability.High <= target).Take(MostNamed)
            .Select(r => $"take the remedy \"{Printable.Line(r.Remedy.Name)}\""));
        return ways.Count == 0
            ? $"Nothing tried alone brings it to {RangeWords.Percent(target)}: neither a speed, nor a load, nor a remedy."
            : $"Any one of these brings it to {RangeWords.Percent(target)}: {string.Join("; or ", ways)}.";
    }

    /// <summary>What a lever sets, as a name.</summary>
    public static string Name(TripLever lever) => lever.Kind switch
    {
        TripLeverKind.AllSpeeds => "all speeds, times the plan",
        TripLeverKind.Load => $"load on every leg ({(double.IsNaN(lever.Planned) ? "planned leg by leg" : $"planned {Figures.Number(lever.Planned)} kg")})",
        _ => $"speed on {Printable.Line(lever.Leg!)} (planned {Figures.Number(lever.Planned)} km/h)",
    };

    /// <summary>Where a lever keeps the target.</summary>
    public static string Limit(TripLimit limit)
    {
        TripLever lever = limit.Lever;
        string unit = Unit(lever);
        if (limit.Windows.IsEmpty)
        {
            return $"none from {Short(lever.Low)} to {Short(lever.High)}{unit} keeps it; the best tried, {Short(limit.BestAt)}{unit}, leaves {Figures.Probability(limit.Least)}";
        }

        if (limit.IsAlwaysKept)
        {
            return $"any up to {Short(lever.High)}{unit}, the greatest tried, keeps it";
        }

        IEnumerable<string> ranges = limit.Windows.Select(w => (w.From, w.To) switch
        {
            (null, { } to) => $"any up to {Short(to.Estimate)}{unit} ({Bounds(to)})",
            ({ } from, null) => $"any from {Short(from.Estimate)}{unit} ({Bounds(from)}) to {Short(lever.High)}{unit}, the greatest tried",
            ({ } from, { } to) => $"any from {Short(from.Estimate)} ({Bounds(from)}) to {Short(to.Estimate)}{unit} ({Bounds(to)})",
            _ => "any",
        });
        string text = string.Join("; also ", ranges);
        return limit.Windows.Length > 1 ? text + "; between them the risk is above it" : limit.HasUpperLimit
            ? text : text + "; less is no remedy, for there the risk is above it";
    }

    private static string Times(double p) =>
        p >= 0.5 || !(p > 0) ? ""
        : Figures.IsBeyondWords(p) ? $", fewer than 1 in {Figures.OneIn(p)}"
        : $", about 1 in {Figures.OneIn(p)}";

    private static string Worst(TripResult result)
    {
        TripLegRisk? worst = result.Legs.Where(l => !double.IsNaN(l.Share.Estimate)).MaxBy(l => l.Share.Estimate);
        return result.Legs.Length < 2 || worst is null
            ? "" : $" {100 * worst.Share.Estimate:0} % of these failures happen on {Printable.Line(worst.Name)}.";
    }

    private static string AgainstTarget(TripResult result) => result.Target is not { } target ? ""
        : result.Probability.High <= target ? $" That keeps the target of {RangeWords.Percent(target)}: go."
        : result.Probability.Low > target ? $" That is above the target of {RangeWords.Percent(target)}: no go as planned."
        : $" Whether that keeps the target of {RangeWords.Percent(target)} this run cannot tell: no go yet.";

    private static string Room(TripResult result)
    {
        IEnumerable<string> room = new[] { TripLeverKind.AllSpeeds, TripLeverKind.Load }.Select(k => result.Limit(k)).OfType<TripLimit>()
            .Select(l => (l.Lever.Kind, l) switch
        {
            (TripLeverKind.AllSpeeds, { IsAlwaysKept: true }) => $"every speed up to {Short(l.Lever.High)} times the plan keeps it",
            (TripLeverKind.AllSpeeds, { HasUpperLimit: true }) =>
                $"speeds up to {l.Windows[0].To!.Value.Estimate:0.00} times the plan keep it",
            (TripLeverKind.Load, { IsAlwaysKept: true }) => $"every load up to {Short(l.Lever.High)} kg keeps it",
            (TripLeverKind.Load, { HasUpperLimit: true }) => $"loads up to {Short(l.Windows[0].To!.Value.Estimate)} kg keep it",
            _ => $"for {Name(l.Lever)}, {Limit(l)}",
        });
        return string.Join("; ", room) + ".";
    }

    private static string Unit(TripLever lever) => lever.Unit.Length == 0 ? "" : $" {lever.Unit}";

    private static string Bounds(Interval x) => $"{Short(x.Low)} to {Short(x.High)}";

    /// <summary>Three figures are enough to act on.</summary>
    private static string Short(double x) => Figures.Number(x == 0 ? 0 : double.Parse(x.ToString("G3")));
}
