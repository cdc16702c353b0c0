namespace AxleRisk.Core.Analyses.Trips;

/// <summary>
/// How a housing put in before the trip survives: its Miner sum and scatter are not those of the one taken out. Where they are
/// averaged exactly, by their distribution; otherwise by those drawn for the other vehicles of the block.
/// </summary>
internal sealed class OtherHousing
{
    private readonly TripSurvival survival;
    private readonly double[] drawn;

    public OtherHousing(TripSurvival survival, ReadOnlySpan<double> drawn)
    {
        this.survival = survival;
        this.drawn = survival.IsConditional ? [] : drawn.ToArray();
        Array.Sort(this.drawn);
    }

    /// <summary>P(survives not <paramref name="after"/> | survived <paramref name="before"/>); 1 where no housing survives that.</summary>
    public double Fails(double before, double after)
    {
        if (survival.IsConditional)
        {
            double left = survival.At(before, double.NaN);
            return left > 0 ? survival.Fails(before, after, double.NaN) / left : 1;
        }

        // A housing fails where the damage is greater than what was drawn for it.
        int failedBefore = Below(before), failedAfter = Below(after);
        return failedBefore < drawn.Length ? (double)(failedAfter - failedBefore) / (drawn.Length - failedBefore) : 1;
    }

    private int Below(double damage)
    {
        (int low, int high) = (0, drawn.Length);
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = drawn[middle] < damage ? (middle + 1, high) : (low, middle);
        }

        return low;
    }
}
