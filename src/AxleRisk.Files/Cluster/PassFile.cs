using System.Runtime.InteropServices;
using System.Text;

namespace AxleRisk.Files.Cluster;

/// <summary>
/// One part's share of one pass as a file: a line of text that says whose it is, with the SHA-256 of what follows, which are the lengths
/// of the rows (4 bytes each, least first) and their numbers (8 bytes each, as in memory).
/// </summary>
internal static class PassFile
{
    // A gigabyte of numbers: of a fleet of 20 million vehicles in one part, a third of it.
    private const int Largest = 1 << 30;

    /// <summary>Writes a share, whole or not at all.</summary>
    /// <exception cref="IOException">It cannot be written.</exception>
    public static void Write(string path, string whose, IReadOnlyList<double[]> rows)
    {
        int[] lengths = [.. rows.Select(r => r.Length)];
        using var body = new MemoryStream();
        body.Write(MemoryMarshal.AsBytes(lengths.AsSpan()));
        foreach (double[] row in rows)
        {
            body.Write(MemoryMarshal.AsBytes(row.AsSpan()));
        }

        byte[] numbers = body.ToArray();
        byte[] line = Encoding.UTF8.GetBytes(Line(whose, rows.Count, numbers));
        WholeFile.Write(path, [.. line, .. numbers]);
    }

    /// <summary>Reads a share.</summary>
    /// <returns>Its rows; null where the file is not what was written there, or is another study's or pass's.</returns>
    /// <exception cref="IOException">It is there, and cannot be read.</exception>
    public static double[][]? Read(string path, string whose)
    {
        byte[] bytes = FileBytes.Read(path, Largest);
        int end = Array.IndexOf(bytes, (byte)'\n') + 1;
        byte[] numbers = bytes[end..];
        string line = Encoding.UTF8.GetString(bytes.AsSpan(0, end));
        if (!line.StartsWith(whose + " rows ", StringComparison.Ordinal)
            || !int.TryParse(line[(whose.Length + " rows ".Length)..].Split(' ')[0], out int count) || count < 0
            || line != Line(whose, count, numbers) || numbers.Length < (long)count * sizeof(int))
        {
            return null;
        }

        ReadOnlySpan<byte> left = numbers;
        int[] lengths = MemoryMarshal.Cast<byte, int>(left[..(count * sizeof(int))]).ToArray();
        left = left[(count * sizeof(int))..];
        var rows = new double[count][];
        for (int row = 0; row < count; row++)
        {
            // The hash has agreed: the lengths are those that were written.
            rows[row] = MemoryMarshal.Cast<byte, double>(left[..(lengths[row] * sizeof(double))]).ToArray();
            left = left[(lengths[row] * sizeof(double))..];
        }

        return rows;
    }

    private static string Line(string whose, int rows, byte[] numbers) =>
        $"{whose} rows {rows} sha256 {Sha256.HexOf(numbers)}\n";
}
