using System.Buffers.Binary;

namespace AxleRisk.Files.Distributions;

/// <summary>The data files a scenario refers to: each read once and counted into the scenario's digest.</summary>
/// <param name="read">Gives the bytes of a file named as in the scenario; throws what reading a file throws.</param>
internal sealed class DataFiles(Func<string, byte[]> read)
{
    private readonly List<(string Name, byte[] Bytes)> files = [];

    /// <summary>The bytes of a file; null with the reason where it cannot be read.</summary>
    public byte[]? Read(string name, out string reason)
    {
        reason = "";
        if (files.Find(f => f.Name == name).Bytes is byte[] known)
        {
            return known;
        }

        try
        {
            byte[] bytes = read(name);
            files.Add((name, bytes));
            return bytes;
        }
        catch (Exception e) when (FileBytes.IsFileTrouble(e))
        {
            reason = FileBytes.Reason(e);
            return null;
        }
    }

    /// <summary>The files read so far, each with its place in a copy; one that goes by two names once.</summary>
    public IEnumerable<SourceFile> Sources =>
        files.Select(f => new SourceFile(DataFolder.PlaceInCopy(f.Name), f.Bytes)).DistinctBy(f => f.Name);

    /// <summary>The digest of a <see cref="ScenarioDocument"/>.</summary>
    public string Digest(ReadOnlySpan<byte> scenario)
    {
        var hash = new Sha256();
        hash.Append(scenario);
        Span<byte> length = stackalloc byte[sizeof(long)];
        foreach ((_, byte[] bytes) in files)
        {
            BinaryPrimitives.WriteInt64LittleEndian(length, bytes.Length);
            hash.Append(length);
            hash.Append(bytes);
        }

        return hash.ToHex();
    }
}
