using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Studies;

/// <summary>
/// The chances of a vehicle that was seen, row by row: each is that of a vehicle and of what was seen of it, so that ratios are of the
/// vehicles like this one. A thread's own.
/// </summary>
internal sealed class SeenChances
{
    private readonly ImmutableArray<CrackLook> looks;
    private readonly int known;
    private readonly double[] used;
    private readonly FailureChances? chances;
    private Modes.CrackDepth depth;
    private double weight;

    /// <summary>Prepares what was seen, and further looks that may follow.</summary>
    /// <param name="seen">What was seen.</param>
    /// <param name="isCounted">Whether limits are drawn and not averaged.</param>
    /// <param name="further">The looks that follow; their distances mean nothing.</param>
    public SeenChances(SeenVehicle seen, bool isCounted, params IEnumerable<CrackLook> further)
    {
        known = seen.Looks.Length;
        looks = [.. seen.Looks, .. further];
        used = new double[looks.Length];
        if (!isCounted)
        {
            Fatigue = looks.IsEmpty ? null : new LookedChance(seen.Model.Scale, looks);
            chances = Fatigue is null ? seen.Model.Chances : seen.Model.Chances.With(Fatigue);
        }
    }

    /// <summary>Fatigue given the looks; null where there are none, or limits are drawn.</summary>
    public LookedChance? Fatigue { get; }

    /// <summary>Takes over a row.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="row">Which.</param>
    /// <param name="further">What fatigue has used up by each look that follows.</param>
    public void Take(SeenRows rows, int row, params ReadOnlySpan<double> further)
    {
        rows.UsedOf(row)[..known].CopyTo(used);
        further.CopyTo(used.AsSpan(known));
        (weight, depth) = (rows.Weights[row], rows.Depths[row]);
        Fatigue?.Take(used, depth);
    }

    /// <summary>The probability that it was seen so and survives what each mode has used up.</summary>
    /// <param name="used">What each has used up; not before what was seen.</param>
    /// <param name="limits">What each can, as drawn.</param>
    public double At(ReadOnlySpan<double> used, ReadOnlySpan<double> limits) => !(weight > 0) ? 0
        : weight * (chances?.Survival(used) ?? (FailureChances.Exceeds(used, limits) ? 0 : Drawn(limits)));

    /// <summary>That it was seen so, and survives what each mode has used up before and not what it has after.</summary>
    public double Fails(ReadOnlySpan<double> before, ReadOnlySpan<double> after, ReadOnlySpan<double> limits) => !(weight > 0) ? 0
        : weight * (chances?.Fails(before, after)
            ?? (!FailureChances.Exceeds(before, limits) && FailureChances.Exceeds(after, limits) ? Drawn(limits) : 0));

    /// <summary>
    /// The probability of what was seen that a chain of looks does not have itself: all but fatigue's looks where they are averaged.
    /// </summary>
    public double Weight(ReadOnlySpan<double> limits) => weight * (chances is null ? Drawn(limits) : 1);

    private double Drawn(ReadOnlySpan<double> limits) => LookedChance.Likelihood(used, limits[0], looks, depth);
}
