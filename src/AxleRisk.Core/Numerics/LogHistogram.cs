namespace AxleRisk.Core.Numerics;

/// <summary>
/// Counts of positive values in bins of equal width in ln x: a summary of fixed size that is joined by adding, in any order,
/// to the same counts. A value read back from it is off by less than <see cref="RelativeError"/>.
/// </summary>
public sealed class LogHistogram
{
    /// <summary>Bins to a factor of e.</summary>
    public const int BinsPerUnit = 1024;

    /// <summary>The greatest relative error of a value read back: half a bin.</summary>
    public const double RelativeError = 0.5 / BinsPerUnit;

    /// <summary>The range is e to the power of plus or minus this, 1e-20 to 1e20.</summary>
    private const int Reach = 46;

    private readonly long[] counts = new long[2 * Reach * BinsPerUnit];

    /// <summary>The number of values.</summary>
    public long Count { get; private set; }

    /// <summary>Values below the range, zero among them.</summary>
    public long Below { get; private set; }

    /// <summary>Values above the range, infinity among them.</summary>
    public long Above { get; private set; }

    /// <summary>The number of bins.</summary>
    public int Bins => counts.Length;

    /// <summary>The count of a bin, 0 to <see cref="Bins"/> - 1.</summary>
    public long this[int bin] => counts[bin];

    /// <summary>The logarithm of the middle of a bin.</summary>
    public static double LnCentre(int bin) => ((bin + 0.5) / BinsPerUnit) - Reach;

    /// <summary>Adds a value by its logarithm; infinite ones are kept apart.</summary>
    public void AddLn(double ln)
    {
        Count++;
        double place = (ln + Reach) * BinsPerUnit;
        if (!(place >= 0))
        {
            Below++;
        }
        else if (place >= counts.Length)
        {
            Above++;
        }
        else
        {
            counts[(int)place]++;
        }
    }

    /// <summary>Adds the counts of another histogram.</summary>
    public void Add(LogHistogram other)
    {
        for (int i = 0; i < counts.Length; i++)
        {
            counts[i] += other.counts[i];
        }

        Count += other.Count;
        Below += other.Below;
        Above += other.Above;
    }

    /// <summary>Empties the histogram, to be filled again.</summary>
    public void Clear()
    {
        Array.Clear(counts);
        Count = Below = Above = 0;
    }

    /// <summary>Adds a whole bin's count, as read from a file.</summary>
    public void AddBin(int bin, long count)
    {
        counts[bin] += count;
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

        for (int bin = 0; bin < counts.Length; bin++)
        {
            if (left <= counts[bin])
            {
                double place = (left - 0.5) / counts[bin];
                return Math.Exp(((bin + place) / BinsPerUnit) - Reach);
            }

            left -= counts[bin];
        }

        return double.PositiveInfinity;
    }
}
