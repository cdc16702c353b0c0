using System.Text.RegularExpressions;
using Xunit;

namespace AxleRisk.App.Tests.Files;

/// <summary>
/// A page of the documents with parts that are made by the program: what stands between <c>&lt;!-- keys: NAME --&gt;</c> and
/// <c>&lt;!-- end of keys --&gt;</c>. With the variable AXLERISK_NEW_TABLES the parts are written anew.
/// </summary>
/// <param name="path">The page's path.</param>
internal sealed partial class MarkedPage(params string[] path)
{
    private readonly string file = Repository.PathTo(path);

    /// <summary>The names of its parts, in order.</summary>
    public string[] Names => [.. Part().Matches(File.ReadAllText(file)).Select(m => m.Groups[1].Value)];

    /// <summary>Checks that each part is what is made for its name, or makes it so.</summary>
    public void Check(Func<string, string> make)
    {
        string text = File.ReadAllText(file);
        string made = Part().Replace(text, m => $"<!-- keys: {m.Groups[1].Value} -->\n{make(m.Groups[1].Value)}<!-- end of keys -->");
        if (Environment.GetEnvironmentVariable("AXLERISK_NEW_TABLES") is { Length: > 0 })
        {
            File.WriteAllText(file, made);
        }
        else
        {
            Assert.Equal(made.Split('\n'), text.Split('\n'));
        }
    }

    /// <summary>A table of Markdown; a column without anything in it is left out.</summary>
    public static string Table(string[] header, IEnumerable<string[]> rows)
    {
        string[][] cells = [.. rows];
        int[] columns = [.. Enumerable.Range(0, header.Length).Where(c => Array.Exists(cells, r => r[c] != "-"))];
        string Line(string[] row) => $"| {string.Join(" | ", columns.Select(c => row[c]))} |\n";
        return Line(header) + $"|{string.Concat(columns.Select(_ => "---|"))}\n" + string.Concat(cells.Select(Line));
    }

    [GeneratedRegex("<!-- keys: (.*?) -->\n.*?<!-- end of keys -->", RegexOptions.Singleline)]
    private static partial Regex Part();
}
