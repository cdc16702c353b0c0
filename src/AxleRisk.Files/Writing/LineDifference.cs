namespace AxleRisk.Files.Writing;

/// <summary>A line that one of two texts has and the other has not.</summary>
/// <param name="IsSecond">Whether it is the second that has it.</param>
/// <param name="Line">Its number there, from 1.</param>
/// <param name="Text">The line.</param>
public readonly record struct DifferentLine(bool IsSecond, int Line, string Text);

/// <summary>What differs between two texts, line by line.</summary>
public static class LineDifference
{
    /// <summary>Beyond this many pairs of lines the middle parts are told as wholly different: more than two scenarios hold.</summary>
    private const long MostPairs = 4_000_000;

    /// <summary>The lines that are not common to both, in their order; those of the first before those of the second.</summary>
    /// <remarks>By a longest common subsequence of the lines between the common beginning and the common end.</remarks>
    public static IReadOnlyList<DifferentLine> Of(string first, string second)
    {
        (string[] a, string[] b) = (Lines(first), Lines(second));
        int from = 0;
        while (from < Math.Min(a.Length, b.Length) && a[from] == b[from])
        {
            from++;
        }

        (int endA, int endB) = (a.Length, b.Length);
        while (endA > from && endB > from && a[endA - 1] == b[endB - 1])
        {
            endA--;
            endB--;
        }

        (int n, int m) = (endA - from, endB - from);
        int[,] common = (long)n * m <= MostPairs ? Common(a.AsSpan(from, n), b.AsSpan(from, m)) : new int[n + 1, m + 1];
        var lines = new List<DifferentLine>();
        for (int i = 0, j = 0; i < n || j < m;)
        {
            if (i < n && j < m && a[from + i] == b[from + j])
            {
                i++;
                j++;
            }
            else if (j == m || (i < n && common[i + 1, j] >= common[i, j + 1]))
            {
                lines.Add(new DifferentLine(false, from + i + 1, a[from + i++]));
            }
            else
            {
                lines.Add(new DifferentLine(true, from + j + 1, b[from + j++]));
            }
        }

        return lines;
    }

    private static string[] Lines(string text) => text.ReplaceLineEndings("\n").Split('\n');

    /// <summary>At each pair of places the number of lines common to the rests behind them.</summary>
    private static int[,] Common(ReadOnlySpan<string> a, ReadOnlySpan<string> b)
    {
        int[,] common = new int[a.Length + 1, b.Length + 1];
        for (int i = a.Length - 1; i >= 0; i--)
        {
            for (int j = b.Length - 1; j >= 0; j--)
            {
                common[i, j] = a[i] == b[j] ? 1 + common[i + 1, j + 1] : Math.Max(common[i + 1, j], common[i, j + 1]);
            }
        }

        return common;
    }
}
