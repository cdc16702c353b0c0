using System.Text.RegularExpressions;
using AxleRisk.Files.Format;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads the name of a leg of use or of a trip.</summary>
internal static partial class LegName
{
    /// <summary>The name, which must not be among <paramref name="names"/> and is so from now on; null where it is wrong.</summary>
    public static string? Read(
        TableReader table, HashSet<string> names, ErrorLog errors, string what = "a leg", string several = "legs")
    {
        if (table.Text("name") is not string name)
        {
            return null;
        }

        Position at = table.Table.Find("name")!.Node.At;
        if (!Form().IsMatch(name))
        {
            errors.Add(at, $"the name of {what} is up to 40 letters, digits, - and _, not {MessageText.Quote(name)}");
        }
        else if (!names.Add(name))
        {
            errors.Add(at, $"there are two {several} with the name {MessageText.Quote(name)}");
        }
        else
        {
            return name;
        }

        return null;
    }

    [GeneratedRegex(@"\A" + KeyKind.PlainName.Form + @"\z")]
    private static partial Regex Form();
}
