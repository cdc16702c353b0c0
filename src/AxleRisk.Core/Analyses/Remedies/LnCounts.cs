using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Analyses.Remedies;

/// <summary>
/// Counts in the bins of <see cref="LogHistogram"/>, kept only over the range met: many scenarios times many groups have one each.
/// Adding is of whole numbers, so that the order leaves no trace.
/// </summary>
internal sealed class LnCounts
{
    /// <summary>Bins are added this many at a time.</summary>
    private const int Step = 1024;

    private static readonly double LnLowest = LogHistogram.LnCentre(0) - (0.5 / LogHistogram.BinsPerUnit);

    private static readonly int Bins = 2 * (int)Math.Round(-LnLowest) * LogHistogram.BinsPerUnit;

    private long[] counts = [];
    private int offset;

    /// <summary>The number of values.</summary>
    public long Count { get; private set; }

    /// <summary>Values below the range, zero among them.</summary>
    public long Below { get; private set; }

    /// <summary>Values above the range, infinity among them.</summary>
    public long Above { get; private set; }

    /// <summary>The bins that hold anything, rising: the logarithm of the middle and the count.</summary>
    public IEnumerable<(double LnCentre, long Count)> Filled
    {
        get
        {
            for (int i = 0; i < counts.Length; i++)
            {
                if (counts[i] > 0)
                {
                    yield return (LogHistogram.LnCentre(offset + i), counts[i]);
                }
            }
        }
    }

    /// <summary>Adds a value by its logarithm; infinite ones are kept apart.</summary>
    public void AddLn(double ln)
    {
        Count++;
        double place = (ln - LnLowest) * LogHistogram.BinsPerUnit;
        if (!(place >= 0))
        {
            Below++;
        }
        else if (place >= Bins)
        {
            Above++;
        }
        else
        {
            Reach((int)place, (int)place);
            counts[(int)place - offset]++;
        }
    }

    /// <summary>Adds other counts.</summary>
    public void Add(LnCounts other)
    {
        Count += other.Count;
        Below += other.Below;
        Above += other.Above;
        if (other.counts.Length > 0)
        {
            Reach(other.offset, other.offset + other.counts.Length - 1);
            for (int i = 0; i < other.counts.Length; i++)
            {
                counts[other.offset - offset + i] += other.counts[i];
            }
        }
    }

    private void Reach(int first, int last)
    {
        if (counts.Length > 0 && first >= offset && last < offset + counts.Length)
        {
            return;
        }

        int low = Math.Min(first, counts.Length > 0 ? offset : first) / Step * Step;
        int high = ((Math.Max(last, offset + counts.Length - 1) / Step) + 1) * Step;
        var wider = new long[high - low];
        counts.CopyTo(wider, counts.Length > 0 ? offset - low : 0);
        (counts, offset) = (wider, low);
    }
}
