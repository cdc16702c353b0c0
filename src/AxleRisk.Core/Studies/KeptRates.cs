namespace AxleRisk.Core.Studies;

/// <summary>The rates of many rows, kept for when they are asked about again: 8 bytes a mode and age, not their curves.</summary>
/// <param name="like">Rates of the same scenario.</param>
/// <param name="rows">The number of rows.</param>
internal sealed class KeptRates(LifeRates like, int rows)
{
    private readonly double[][] columns = Workspace.Columns(like.Columns.Length, rows);

    /// <summary>Keeps the first <paramref name="count"/> rows of rates.</summary>
    /// <param name="from">The rates.</param>
    /// <param name="at">The place of the first of them among the rows kept.</param>
    /// <param name="count">How many.</param>
    public void Keep(LifeRates from, int at, int count)
    {
        for (int c = 0; c < columns.Length; c++)
        {
            from.Columns[c].AsSpan(0, count).CopyTo(columns[c].AsSpan(at));
        }
    }

    /// <summary>Puts rows back, as the first ones, and their curves.</summary>
    public void Restore(LifeRates to, int at, int count)
    {
        for (int c = 0; c < columns.Length; c++)
        {
            columns[c].AsSpan(at, count).CopyTo(to.Columns[c]);
        }

        to.FillCurves(count);
    }

    /// <summary>The numbers of rows kept, column by column.</summary>
    public IEnumerable<double> NumbersOf(int at, int count) => columns.SelectMany(c => c.AsSpan(at, count).ToArray());

    /// <summary>Keeps rows by their numbers.</summary>
    public void Put(int at, int count, ReadOnlySpan<double> numbers)
    {
        for (int c = 0; c < columns.Length; c++)
        {
            numbers.Slice(c * count, count).CopyTo(columns[c].AsSpan(at));
        }
    }
}
