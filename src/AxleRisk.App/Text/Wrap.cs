namespace AxleRisk.App.Text;

/// <summary>Breaks sentences into lines.</summary>
internal static class Wrap
{
    /// <summary>
    /// The lines of <paramref name="text"/>, none longer than <paramref name="width"/> where its words allow; all but the first
    /// are indented.
    /// </summary>
    public static IEnumerable<string> Lines(string text, int width, string indent = "  ")
    {
        string line = "";
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > width)
            {
                yield return line;
                line = indent + word;
            }
            else
            {
                line = line.Length == 0 ? word : $"{line} {word}";
            }
        }

        if (line.Length > 0)
        {
            yield return line;
        }
    }
}
