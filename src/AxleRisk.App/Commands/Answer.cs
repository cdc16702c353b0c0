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
    IEnumerable<string> Lines, Func<JsonObject> Document, string[] Header, IEnumerable<string[]> Rows, bool IsPartial = false)
{
    /// <summary>Gives the answer in the form asked for. The CSV file comes first: a failure to write it leaves no answer half given.</summary>
    public int Give(ParseResult parsed, CommonOptions options, Terminal terminal)
    {
        if (parsed.GetValue(options.Csv) is { } path)
        {
            try
            {
                TableFile.Write(path, Header, Rows);
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
            {
                terminal.Error.WriteLine($"{Product.Name}: cannot write {Printable.Line(path)}: {e.Message}");
                return ExitCode.Failed;
            }
        }

        if (parsed.GetValue(options.Json))
        {
            terminal.Out.WriteLine(Json.Write(Document()));
        }
        else
        {
            foreach (string line in Lines)
            {
                terminal.Out.WriteLine(line);
            }
        }

        return IsPartial ? ExitCode.Interrupted : ExitCode.Done;
    }
}
