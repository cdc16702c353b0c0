using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Analyses.Risk;

/// <summary>Lives that were counted, laid out for asking how many lie below a distance.</summary>
internal sealed class LifeCounts
{
    private readonly int[] bins;
    private readonly long[] before;

    public LifeCounts(LogHistogram life)
    {
        (int Bin, long Count)[] filled = [.. life.Filled];
        bins = [.. filled.Select(f => f.Bin)];
        before = new long[bins.Length + 1];
        before[0] = life.Below;
        for (int i = 0; i < bins.Length; i++)
        {
            before[i + 1] = before[i] + filled[i].Count;
        }
    }

    /// <summary>The number of lives below a distance; the one bin that the distance divides counts in proportion, rounded.</summary>
    public long Below(double km)
    {
        double place = (Math.Log(km) - LogHistogram.LnCentre(0)) * LogHistogram.BinsPerUnit + 0.5;
        int whole = (int)Math.Clamp(Math.Floor(place), 0, LogHistogram.Bins);
        int at = Array.BinarySearch(bins, whole);
        return at < 0 ? before[~at]
            : before[at] + (long)Math.Round(Math.Max(0, (place - whole) * (before[at + 1] - before[at])));
    }
}
