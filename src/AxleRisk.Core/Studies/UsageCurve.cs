namespace AxleRisk.Core.Studies;

/// <summary>What a mode of failure has used up over distance, of a block of rows.</summary>
internal abstract class UsageCurve
{
    /// <summary>What a row has used up by a distance, km.</summary>
    public abstract double Used(int row, double km);

    /// <summary><see cref="Used(int, double)"/> of the first rows.</summary>
    public abstract void FillUsed(int count, double km, Span<double> to);

    /// <summary><see cref="Used(int, double)"/> of the first rows, by a distance of each.</summary>
    public void FillUsed(ReadOnlySpan<double> km, Span<double> to)
    {
        for (int row = 0; row < km.Length; row++)
        {
            to[row] = Used(row, km[row]);
        }
    }

    /// <summary>The distances at which the first rows have used up a target above 0; infinite where they never do.</summary>
    /// <param name="count">Rows.</param>
    /// <param name="targets">The targets; padded to whole registers.</param>
    /// <param name="km">Takes the distances; likewise.</param>
    public abstract void FillInverse(int count, double[] targets, double[] km);
}
