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

    private readonly Page?[] pages = new Page?[Bins / Page.Size];

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
            for (int page = 0; page < pages.Length; page++)
            {
                for (int i = 0; pages[page] is { } filled && i < Page.Size; i++)
                {
                    if (filled[i] is var count and > 0)
                    {
                        yield return ((page * Page.Size) + i, count);
                    }
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
            PageOf(bin).AddOne(bin & Page.Mask);
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
        for (int page = 0; page < pages.Length; page++)
        {
            if (other.pages[page] is { } filled)
            {
                PageOf(page * Page.Size).Add(filled);
            }
        }
    }

    /// <summary>Empties the histogram, to be filled again.</summary>
    public void Clear()
    {
        foreach (Page? page in pages)
        {
            page?.Clear();
        }

        Count = Below = Above = 0;
    }

    /// <summary>Adds a whole bin's count, as read from a file.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such bin.</exception>
    public void AddBin(int bin, long count)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(bin);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(bin, Bins);
        PageOf(bin).Add(bin & Page.Mask, count);
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

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Page PageOf(int bin) => pages[bin >> Page.Bits] ??= new Page();

    /// <summary>
    /// The counts of a run of bins, made when the first of them is met: none is ever moved, and many threads with many replicates need
    /// little memory.
    /// </summary>
    private sealed class Page
    {
        public const int Bits = 10;
        public const int Size = 1 << Bits;
        public const int Mask = Size - 1;

        // A bin's count is both: the small numbers of all replicates stay in a core's cache, and overflow into the large ones.
        private readonly ushort[] small = new ushort[Size];
        private long[]? large;

        public long this[int bin] => small[bin] + (large?[bin] ?? 0);

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public void AddOne(int bin)
        {
            if (++small[bin] == 0)
            {
                Add(bin, ushort.MaxValue + 1);
            }
        }

        public void Add(int bin, long count) => (large ??= new long[Size])[bin] += count;

        public void Add(Page other)
        {
            large ??= new long[Size];
            for (int i = 0; i < Size; i++)
            {
                large[i] += other[i];
            }
        }

        public void Clear()
        {
            Array.Clear(small);
            if (large is not null)
            {
                Array.Clear(large);
            }
        }
    }
}
