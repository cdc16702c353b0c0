using System.CommandLine;
using System.Text.Json.Nodes;
using AxleRisk.App.Documents;
using AxleRisk.App.Text;
using AxleRisk.Files;

namespace AxleRisk.App.Commands;

/// <summary>One answer in the three forms it can be given in.</summary>
/// <param name="Lines">The text.</param>
/// <param name="Document">The JSON document.</param>
/// <param name="Header">The header of the CSV file.</param>
/// <param name="Rows">Its rows.</param>
/// <param name="IsPartial">Whether the run behind it was ended early.</param>
internal sealed record Answer(
    IEnumerable<TextLine> Lines, Func<JsonObject> Document, string[] Header, IEnumerable<string[]> Rows, bool IsPartial = false)
{
    /// <summary>Gives the answer in the form asked for, whatever becomes of the files that it is kept in beside.</summary>
    /// <param name="parsed">The arguments.</param>
    /// <param name="options">The options.</param>
    /// <param name="terminal">Where it goes.</param>
    /// <param name="trouble">Why another file could not be written; null where there was none or it was.</param>
    public int Give(ParseResult parsed, CommonOptions options, Terminal terminal, string? trouble = null)
    {
        if (parsed.GetValue(options.Json))
        {
            terminal.Out.WriteLine(Json.Write(Document()));
        }
        else
        {
            foreach (TextLine line in Lines)
            {
                terminal.Out.WriteLine(Style.Print(line));
            }
        }

        string?[] troubles = [trouble, parsed.GetValue(options.Csv) is
            { } csv ? OutputFile.Trouble(csv, path => TableFile.Write(path, Header, Rows)) : null];
        foreach (string? told in troubles.Where(t => t is not null))
        {
            terminal.Error.WriteLine($"{Product.Name}: {told}");
        }

        return troubles.Any(t => t is not null) ? ExitCode.Failed
            : IsPartial ? ExitCode.Interrupted : ExitCode.Done;
    }
}
