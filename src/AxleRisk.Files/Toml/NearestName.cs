namespace AxleRisk.Files.Toml;

/// <summary>The known name that a mistyped one was probably meant to be.</summary>
internal static class NearestName
{
    // A longer text is no slip of the finger, and the distance costs the product of the lengths.
    private const int LongestCompared = 60;

    /// <summary><c>; did you mean "X"?</c>, or the names to choose from where they are few, or nothing.</summary>
    public static string Hint(string name, IReadOnlyCollection<string> known)
    {
        if (Find(name, known) is string near)
        {
            return $"; did you mean {MessageText.Quote(near)}?";
        }

        return known.Count is > 0 and <= 16 ? $"; possible: {string.Join(", ", known.Select(k => MessageText.OneLine(k)))}" : "";
    }

    /// <summary>The nearest of <paramref name="known"/> by edit distance, if it is near enough to be meant.</summary>
    public static string? Find(string name, IReadOnlyCollection<string> known)
    {
        if (name.Length > LongestCompared)
        {
            return null;
        }

        (string? best, int bestDistance) = (null, int.MaxValue);
        foreach (string candidate in known)
        {
            int distance = Distance(name, candidate);
            if (distance < bestDistance && distance <= Math.Max(1, Math.Max(name.Length, candidate.Length) / 3))
            {
                (best, bestDistance) = (candidate, distance);
            }
        }

        return best;
    }

    /// <summary>Levenshtein's distance without regard to case: the least number of insertions, deletions and replacements.</summary>
    public static int Distance(string a, string b)
    {
        int[] previous = [.. Enumerable.Range(0, b.Length + 1)];
        int[] row = new int[b.Length + 1];
        for (int i = 1; i <= a.Length; i++)
        {
            row[0] = i;
            for (int j = 1; j <= b.Length; j++)
            {
                int replace = previous[j - 1] + (char.ToLowerInvariant(a[i - 1]) == char.ToLowerInvariant(b[j - 1]) ? 0 : 1);
                row[j] = Math.Min(replace, 1 + Math.Min(previous[j], row[j - 1]));
            }

            (previous, row) = (row, previous);
        }

        return previous[b.Length];
    }
}
