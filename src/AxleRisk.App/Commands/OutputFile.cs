using System.CommandLine;
using AxleRisk.App.Text;
using AxleRisk.Files;

namespace AxleRisk.App.Commands;

/// <summary>An option that names a file to write. It is tried before any work is done.</summary>
internal sealed class OutputFile(string name) : Option<string?>(name)
{
    /// <summary>Tries the files that a command line names.</summary>
    /// <returns>Why one of them cannot be written, as a sentence; null where all can.</returns>
    public static string? Trouble(ParseResult parsed) =>
        parsed.CommandResult.Command.Options.OfType<OutputFile>()
            .Select(option => parsed.GetValue(option) is { } path ? Trouble(path, WholeFile.Test) : null)
            .FirstOrDefault(trouble => trouble is not null);

    /// <summary>Does something to a file.</summary>
    /// <returns>Why it could not be done, as a sentence; null where it was.</returns>
    public static string? Trouble(string path, Action<string> act)
    {
        try
        {
            act(path);
            return null;
        }
        catch (IOException e)
        {
            return $"cannot write {Printable.Line(path)}: {e.Message}";
        }
    }
}
