namespace AxleRisk.Core.Analyses.Trips;

/// <summary>
/// How an axle put in before the trip survives: its Miner sum and scatters are not those of the one taken out. Where they are
/// averaged exactly, by their distribution; otherwise by those drawn for the other vehicles of the block.
/// </summary>
/// <param name="survival">How survival follows.</param>
/// <param name="limits">The limits drawn, by row and mode.</param>
internal sealed class OtherHousing(TripSurvival survival, double[] limits)
{
    private readonly TripSurvival survival = survival.Unseen; // what was seen is of the axle taken out

    /// <summary>P(survives not <paramref name="after"/> | survived <paramref name="before"/>); 1 where no axle survives that.</summary>
    public double Fails(ReadOnlySpan<double> before, ReadOnlySpan<double> after)
    {
        (double left, double fails) = (0, 0);
        int draws = survival.IsConditional ? before.Length : limits.Length;
        for (int at = 0; at < draws; at += before.Length)
        {
            ReadOnlySpan<double> drawn = survival.IsConditional ? [] : limits.AsSpan(at, before.Length);
            left += survival.At(before, drawn);
            fails += survival.Fails(before, after, drawn);
        }

        return left > 0 ? fails / left : 1;
    }
}
