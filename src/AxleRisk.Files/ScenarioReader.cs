using System.Text;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Distributions;
using AxleRisk.Files.Reading;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files;

/// <summary>Reads scenario files.</summary>
public static class ScenarioReader
{
    /// <summary>Reads a scenario file and the data files it refers to, which lie in its folder or below.</summary>
    /// <param name="path">The file's path; errors name it as it is given here.</param>
    /// <param name="dataFolders">Further folders that its data files may lie in.</param>
    /// <exception cref="ScenarioException">The file cannot be read or is no valid scenario; carries every error found.</exception>
    public static ScenarioDocument ReadFile(string path, IReadOnlyList<string>? dataFolders = null)
    {
        ErrorLog errors = new(path);
        byte[] bytes = [];
        try
        {
            bytes = FileBytes.Read(path);
        }
        catch (Exception e) when (FileBytes.IsFileTrouble(e))
        {
            errors.Add(FileBytes.Reason(e));
        }

        errors.ThrowIfAny();
        return Read(bytes, path, errors, new DataFolder(path, dataFolders ?? []).Read);
    }

    /// <summary>Reads a scenario from a text.</summary>
    /// <param name="text">The text of a scenario file.</param>
    /// <param name="fileName">The name that errors carry.</param>
    /// <param name="readCsv">
    /// Gives the text of a data file by its name in the scenario, or throws an <see cref="IOException"/>; without it no
    /// data file can be referred to.
    /// </param>
    /// <exception cref="ScenarioException">The text is no valid scenario; carries every error found.</exception>
    public static ScenarioDocument Parse(string text, string fileName, Func<string, string>? readCsv = null) =>
        Read(
            Encoding.UTF8.GetBytes(text),
            fileName,
            new ErrorLog(fileName),
            name => Encoding.UTF8.GetBytes(readCsv?.Invoke(name) ?? throw new IOException("data files are not available here")));

    /// <summary>Reads a scenario from a text that is to stand in a file; data files lie in its folder or below.</summary>
    /// <param name="text">The text.</param>
    /// <param name="path">The file's path; errors name it as it is given here.</param>
    /// <param name="dataFolders">Further folders that its data files may lie in.</param>
    /// <exception cref="ScenarioException">The text is no valid scenario; carries every error found.</exception>
    public static ScenarioDocument ParseFor(string text, string path, IReadOnlyList<string>? dataFolders = null) =>
        Read(Encoding.UTF8.GetBytes(text), path, new ErrorLog(path), new DataFolder(path, dataFolders ?? []).Read);

    /// <summary>Reads a scenario from the bytes of a file.</summary>
    internal static ScenarioDocument Parse(byte[] bytes, string fileName) =>
        Read(bytes, fileName, new ErrorLog(fileName), _ => throw new IOException("data files are not available here"));

    private static ScenarioDocument Read(byte[] bytes, string fileName, ErrorLog errors, Func<string, byte[]> readData)
    {
        if (bytes.Length > FileBytes.Largest)
        {
            errors.Add(FileBytes.TooLarge());
        }

        errors.ThrowIfAny();

        string? text = Utf8Text.Decode(bytes, out Position invalidAt);
        if (text is null)
        {
            errors.Add(invalidAt, "the text is not valid UTF-8");
        }

        errors.ThrowIfAny();

        DataFiles data = new(readData);
        Scenario? scenario = TomlTree.Parse(text!, errors) is TomlTable tree
            ? new ScenarioTreeReader(errors, new ValueReader(errors, data), EndOf(text!), data).Read(tree)
            : null;
        errors.ThrowIfAny();
        return new ScenarioDocument(
            scenario!, fileName, data.Digest(bytes), [new SourceFile(Path.GetFileName(fileName), bytes), .. data.Sources])
        {
            DataDigest = data.Digest([]),
            Text = text!,
        };
    }

    private static Position EndOf(string text)
    {
        int lastLine = text.LastIndexOf('\n') + 1;
        return new Position(1 + text.Count(c => c == '\n'), 1 + text[lastLine..].EnumerateRunes().Count());
    }
}
