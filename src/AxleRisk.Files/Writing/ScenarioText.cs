using System.Text;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Writing;

/// <summary>The text of a scenario file as it was read or saved last, and what the file held then.</summary>
/// <param name="Path">The file's path.</param>
/// <param name="Text">Its text, without a byte order mark.</param>
/// <param name="HasMark">Whether a byte order mark stands before the text.</param>
/// <param name="Digest">SHA-256 of the file's bytes; null where there is no file yet.</param>
public sealed record ScenarioText(string Path, string Text, bool HasMark, string? Digest)
{
    /// <summary>A text for a file that is not there yet.</summary>
    public static ScenarioText New(string path, string text) => new(path, text, false, null);

    /// <summary>Reads a file's text, whether or not it is a valid scenario.</summary>
    /// <exception cref="ScenarioException">It cannot be read or is not UTF-8.</exception>
    public static ScenarioText Open(string path)
    {
        ErrorLog errors = new(path);
        try
        {
            byte[] bytes = FileBytes.Read(path);
            if (Utf8Text.Decode(bytes, out Position invalidAt) is string text)
            {
                return new ScenarioText(path, text, bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble), DigestOf(bytes));
            }

            errors.Add(invalidAt, "the text is not valid UTF-8");
        }
        catch (Exception e) when (FileBytes.IsFileTrouble(e))
        {
            errors.Add(FileBytes.Reason(e));
        }

        errors.ThrowIfAny();
        throw new InvalidOperationException();
    }

    /// <summary>Whether the file is marked as not to be written.</summary>
    public bool IsProtected => FileKind.IsProtected(Path);

    /// <summary>What the file holds now, against what it held when it was read or saved.</summary>
    public DiskState OnDisk()
    {
        try
        {
            return DigestOf(FileBytes.Read(Path)) == Digest ? DiskState.Same : DiskState.Changed;
        }
        catch (DirectoryNotFoundException)
        {
            return DiskState.FolderGone;
        }
        catch (FileNotFoundException)
        {
            return Digest is null ? DiskState.Same : DiskState.Gone;
        }
        catch (Exception e) when (FileBytes.IsFileTrouble(e))
        {
            return DiskState.Changed;
        }
    }

    /// <summary>
    /// Writes another text to the file (<see cref="WholeFile"/>).
    /// </summary>
    /// <returns>What the file now holds.</returns>
    /// <exception cref="ScenarioException">The file cannot be written; it is then as it was.</exception>
    public ScenarioText Save(string text)
    {
        byte[] bytes = [.. HasMark ? Encoding.UTF8.Preamble : [], .. Encoding.UTF8.GetBytes(text)];
        try
        {
            WholeFile.Write(Path, bytes);
            return this with { Text = text, Digest = DigestOf(bytes) };
        }
        catch (IOException e)
        {
            throw new ScenarioException([new ScenarioError(Path, 0, 0, $"not saved: {e.Message}")]);
        }
    }

    private static string DigestOf(byte[] bytes) => Sha256.HexOf(bytes);
}
