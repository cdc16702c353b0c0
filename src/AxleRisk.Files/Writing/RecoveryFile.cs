using System.Text;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Writing;

/// <summary>
/// The file beside a scenario that keeps changes not yet saved: the whole text, valid TOML under the scenario's name and
/// <c>.unsaved</c>, so that it can be looked at and used without this program.
/// </summary>
/// <param name="scenario">The scenario's path.</param>
/// <param name="place">Its own path; null for the usual one.</param>
public sealed class RecoveryFile(string scenario, string? place = null)
{
    /// <summary>The end of its name.</summary>
    public const string Suffix = ".unsaved";

    /// <summary>Its path.</summary>
    public string Path { get; } = place ?? scenario + Suffix;

    /// <summary>Whether it is there.</summary>
    public bool IsThere => File.Exists(Path);

    /// <summary>
    /// One under a name that is free, such as <c>NAME.unsaved-1.toml</c>: for changes that nobody is to run over, in an ordinary
    /// scenario that is listed like any other.
    /// </summary>
    public static RecoveryFile Aside(string scenario)
    {
        string stem = System.IO.Path.ChangeExtension(scenario, null) + Suffix;
        int number = 1;
        while (File.Exists($"{stem}-{number}.toml"))
        {
            number++;
        }

        return new RecoveryFile(scenario, $"{stem}-{number}.toml");
    }

    /// <summary>Gives it the place of another, which is not there.</summary>
    /// <returns>Null, or why it could not be moved; it is then where it was.</returns>
    public string? MoveTo(RecoveryFile other)
    {
        try
        {
            File.Move(Path, other.Path, overwrite: false);
            return null;
        }
        catch (Exception e) when (FileBytes.IsFileTrouble(e))
        {
            return $"{other.Path}: {FileBytes.WriteReason(e)}";
        }
    }

    /// <summary>Writes the text, whole or not at all.</summary>
    /// <returns>Null, or why it could not be written.</returns>
    public string? Write(string text)
    {
        try
        {
            WholeFile.Write(Path, Encoding.UTF8.GetBytes(text));
            return null;
        }
        catch (IOException e)
        {
            return $"{Path}: {e.Message}";
        }
    }

    /// <summary>
    /// The text it holds, and whether the scenario was written after it; null where there is none, or none that can be read.
    /// </summary>
    public (string Text, bool IsOlder)? Read()
    {
        try
        {
            return File.Exists(Path) && Utf8Text.Decode(FileBytes.Read(Path), out _) is string text
                ? (text, File.Exists(scenario) && File.GetLastWriteTimeUtc(scenario) > File.GetLastWriteTimeUtc(Path))
                : null;
        }
        catch (Exception e) when (FileBytes.IsFileTrouble(e))
        {
            return null;
        }
    }

    /// <summary>Removes the file if it is there; one that cannot be removed stays.</summary>
    public void Delete()
    {
        try
        {
            File.Delete(Path);
        }
        catch (Exception e) when (FileBytes.IsFileTrouble(e))
        {
            // It will be offered once more; nothing is lost.
        }
    }
}
