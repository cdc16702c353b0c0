namespace AxleRisk.App.Commands;

/// <summary>Which known word a mistyped one was meant to be.</summary>
internal static class Spelling
{
    /// <summary>
    /// The known word that takes the fewest changes (a letter left out, put in, replaced, or two neighbours exchanged), if those are at
    /// most a third of its letters, rounded up.
    /// </summary>
    /// <returns>That word, the first of several; null where none is that near.</returns>
    public static string? Nearest(string word, IEnumerable<string> known) =>
        known.Select(k => (Word: k, Changes: Changes(word, k))).Where(k => k.Changes <= (k.Word.Length + 2) / 3)
            .OrderBy(k => k.Changes).Select(k => k.Word).FirstOrDefault();

    /// <summary>The fewest changes that make one word of the other (optimal string alignment: no letter is changed twice).</summary>
    public static int Changes(string from, string to)
    {
        var least = new int[from.Length + 1, to.Length + 1];
        for (int i = 0; i <= from.Length; i++)
        {
            for (int j = 0; j <= to.Length; j++)
            {
                if (i == 0 || j == 0)
                {
                    least[i, j] = i + j;
                    continue;
                }

                int other = from[i - 1] == to[j - 1] ? 0 : 1;
                least[i, j] = Math.Min(Math.Min(least[i - 1, j], least[i, j - 1]) + 1, least[i - 1, j - 1] + other);
                if (i > 1 && j > 1 && from[i - 1] == to[j - 2] && from[i - 2] == to[j - 1])
                {
                    least[i, j] = Math.Min(least[i, j], least[i - 2, j - 2] + 1);
                }
            }
        }

        return least[from.Length, to.Length];
    }
}
