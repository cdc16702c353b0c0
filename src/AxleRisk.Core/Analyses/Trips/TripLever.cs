using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.Trips;

/// <summary>What of a trip is varied to find its limit.</summary>
public enum TripLeverKind
{
    /// <summary>The speed of all legs, by a factor on the planned speeds.</summary>
    AllSpeeds,

    /// <summary>The load, the same on every leg.</summary>
    Load,

    /// <summary>The speed of one leg.</summary>
    LegSpeed,
}

/// <summary>One thing a planner can set on a trip, and the range in which its limit is sought.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Leg">The leg's name, for the speed of one leg.</param>
/// <param name="Unit">Its unit; empty for a factor.</param>
/// <param name="Planned">Its value in the plan; NaN where the plan has no single one.</param>
/// <param name="Low">The least value tried.</param>
/// <param name="High">The greatest value tried.</param>
public sealed record TripLever(TripLeverKind Kind, string? Leg, string Unit, double Planned, double Low, double High)
{
    /// <summary>Values tried, from the least to the greatest; between them the risk is taken to have no peak.</summary>
    private const int Steps = 24;

    /// <summary>The least and the greatest speed tried, as parts of the planned one.</summary>
    private const double Slowest = 0.2, Fastest = 2;

    /// <summary>The greatest load tried where none is planned, kg.</summary>
    private const double LoadOfNone = 1000;

    /// <summary>The values tried first: speeds in equal ratios, loads in equal steps.</summary>
    public ImmutableArray<double> Grid => [.. Enumerable.Range(0, Steps + 1).Select(i => (double)i / Steps)
        .Select(t => Kind == TripLeverKind.Load ? Low + (t * (High - Low)) : t == 1 ? High : Low * Math.Pow(High / Low, t))];

    /// <summary>The input whose factor column is scaled with the lever, where it is uncertain.</summary>
    internal string? ScaledInput => Kind == TripLeverKind.AllSpeeds ? NameOf(Quantities.SpeedFactor) : null;

    /// <summary>What can be set on a trip: all speeds, the load and each leg's speed; nothing where there are no legs.</summary>
    internal static ImmutableArray<TripLever> Of(Scenario whole)
    {
        ImmutableArray<TripLeg> legs = whole.Trip!.Legs;
        if (legs.IsEmpty)
        {
            return [];
        }

        int[] all = [.. Enumerable.Range(0, legs.Length)];
        double[] loads = [.. all.Select(l => TripLegScenario.LoadOf(whole, l)?.Value.Nominal ?? 0).Distinct()];
        IEnumerable<TripLever> speeds = all.Select(l =>
        {
            double planned = TripLegScenario.InputOf(whole, Quantities.Speed, l)!.Value.Nominal;
            return new TripLever(TripLeverKind.LegSpeed, legs[l].Name, Quantities.Speed.Unit, planned, Slowest * planned,
                Fastest * planned);
        });
        return
        [
            new TripLever(TripLeverKind.AllSpeeds, null, "", 1, Slowest, Fastest),
            new TripLever(
                TripLeverKind.Load, null, Quantities.Payload.Unit, loads.Length == 1 ? loads[0] : double.NaN,
                0, loads.Max() > 0 ? Fastest * loads.Max() : LoadOfNone),
            .. speeds,
        ];
    }

    /// <summary>The legs whose damage depends on it.</summary>
    internal ImmutableArray<int> LegsOf(Scenario whole) =>
        [.. Enumerable.Range(0, whole.Trip!.Legs.Length).Where(l => Kind != TripLeverKind.LegSpeed || whole.Trip.Legs[l].Name == Leg)];

    /// <summary>The whole scenario with it set to <paramref name="x"/> on the trip; the usual use of the result means nothing.</summary>
    internal Scenario Apply(Scenario whole, double x) => Kind switch
    {
        TripLeverKind.AllSpeeds => Set(whole, Quantities.SpeedFactor, null, v => Change.Times.Scale(v, x)),
        TripLeverKind.Load => LegsOf(whole)
            .Aggregate(whole, (s, l) => Set(s, Quantities.Payload, whole.Legs.Length + l, _ => new Value.Certain(x))),
        _ => Set(whole, Quantities.Speed, whole.Legs.Length + LegsOf(whole)[0], _ => new Value.Certain(x)),
    };

    private static string NameOf(Quantity quantity) => $"{quantity.Section}.{quantity.Key}";

    private static Scenario Set(Scenario whole, Quantity quantity, int? leg, Func<Value, Value> change)
    {
        Input? found = whole.Find(quantity, leg);
        Value before = found?.Value ?? quantity.Default ?? new Value.Certain(0);
        var set = new Input(found?.Name ?? NameOf(quantity), quantity, leg, change(before), false);
        return whole with { Inputs = [.. whole.Inputs.Where(i => i != found), set] };
    }
}
