using System.Runtime.CompilerServices;

namespace AxleRisk.Core.Numerics;

/// <summary>
/// Counts of positive values in bins of equal width in ln x, kept over the range met: a summary that is joined by adding, in
/// any order, to the same counts. A value read back from it is off by less than <see cref="RelativeError"/>.
/// </summary>
public sealed class LogHistogram
{
    /// <summary>Bins to a factor of e.</summary>
    public const int BinsPerUnit = 1024;

    /// <summary>The greatest relative error of a value read back: half a bin.</summary>
    public const double RelativeError = 0.5 / BinsPerUnit;

    /// <summary>The number of bins there are.</summary>
    public const int Bins = 2 * Reach * BinsPerUnit;

    /// <summary>The range is e to the power of plus or minus this, 1e-20 to 1e20.</summary>
    private const int Reach = 46;

    /// <summary>Room is made for this many bins at a time.</summary>
    private const int Step = 1024;

    // A bin's count is counts + recent: the small numbers of all replicates stay in a core's cache, and overflow into the large ones.
    private long[] counts = [];
    private ushort[] recent = [];
    private int offset;

    /// <summary>The number of values.</summary>
    public long Count { get; private set; }

    /// <summary>Values below the range, zero among them.</summary>
    public long Below { get; private set; }

    /// <summary>Values above the range, infinity among them.</summary>
    public long Above { get; private set; }

    /// <summary>The bins that hold anything, rising.</summary>
    public IEnumerable<(int Bin, long Count)> Filled
    {
        get
        {
            for (int i = 0; i < counts.Length; i++)
            {
                if (CountAt(i) is var count and > 0)
                {
                    yield return (offset + i, count);
                }
            }
        }
    }

    /// <summary>The logarithm of the middle of a bin.</summary>
    public static double LnCentre(int bin) => ((bin + 0.5) / BinsPerUnit) - Reach;

    /// <summary>Adds a value by its logarithm; infinite ones are kept apart.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void AddLn(double ln)
    {
        Count++;
        double place = (ln + Reach) * BinsPerUnit;
        if (place >= 0 && place < Bins)
        {
            int bin = double.ConvertToIntegerNative<int>(place);
            if ((uint)(bin - offset) >= (uint)recent.Length)
            {
                MakeRoom(bin, bin);
            }

            if (++recent[bin - offset] == 0)
            {
                counts[bin - offset] += ushort.MaxValue + 1;
            }
        }
        else if (place >= Bins)
        {
            Above++;
        }
        else
        {
            Below++;
        }
    }

    /// <summary>Adds the counts of another histogram.</summary>
    public void Add(LogHistogram other)
    {
        AddOutside(other.Below, other.Above);
        Count += other.Count - other.Below - other.Above;
        if (other.counts.Length > 0)
        {
            MakeRoom(other.offset, other.offset + other.counts.Length - 1);
            for (int i = 0; i < other.counts.Length; i++)
            {
                counts[other.offset - offset + i] += other.CountAt(i);
            }
        }
    }

    /// <summary>Empties the histogram, to be filled again.</summary>
    public void Clear()
    {
        Array.Clear(counts);
        Array.Clear(recent);
        Count = Below = Above = 0;
    }

    /// <summary>Adds a whole bin's count, as read from a file.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such bin.</exception>
    public void AddBin(int bin, long count)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(bin);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(bin, Bins);
        MakeRoom(bin, bin);
        counts[bin - offset] += count;
        Count += count;
    }

    /// <summary>Adds values outside the range, as read from a file.</summary>
    public void AddOutside(long below, long above)
    {
        Below += below;
        Above += above;
        Count += below + above;
    }

    /// <summary>
    /// The value of a rank, from 1 for the least: the values of a bin are spread evenly over it in ln x. 0 or infinity for a
    /// rank outside the range; NaN for a rank that there is not.
    /// </summary>
    public double ValueOfRank(double rank)
    {
        if (!(rank >= 1 && rank <= Count))
        {
            return double.NaN;
        }

        double left = rank - Below;
        if (left <= 0)
        {
            return 0;
        }

        foreach ((int bin, long count) in Filled)
        {
            if (left <= count)
            {
                return Math.Exp(((bin + ((left - 0.5) / count)) / BinsPerUnit) - Reach);
            }

            left -= count;
        }

        return double.PositiveInfinity;
    }

    private long CountAt(int index) => counts[index] + recent[index];

    private void MakeRoom(int first, int last)
    {
        if (first >= offset && last < offset + counts.Length)
        {
            return;
        }

        // A range that grows does so by half at least: step by step it would be copied as often as it has steps.
        bool isEmpty = counts.Length == 0;
        int more = counts.Length / 2;
        int low = isEmpty ? first : first < offset ? Math.Max(0, Math.Min(first, offset - more)) : offset;
        int end = offset + counts.Length;
        int high = isEmpty ? last : last >= end ? Math.Min(Bins - 1, Math.Max(last, end + more)) : end - 1;
        low = low / Step * Step;
        high = ((high / Step) + 1) * Step;
        var wider = new long[high - low];
        var widerRecent = new ushort[high - low];
        counts.CopyTo(wider, isEmpty ? 0 : offset - low);
        recent.CopyTo(widerRecent, isEmpty ? 0 : offset - low);
        (counts, recent, offset) = (wider, widerRecent, low);
    }
}
