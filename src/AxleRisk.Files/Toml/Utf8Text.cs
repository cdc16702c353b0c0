using System.Text;
using System.Text.Unicode;

namespace AxleRisk.Files.Toml;

/// <summary>Strict decoding of UTF-8.</summary>
internal static class Utf8Text
{
    /// <summary>Decodes <paramref name="bytes"/>, dropping a byte order mark.</summary>
    /// <returns>The text, or null with the place of the first invalid byte.</returns>
    public static string? Decode(ReadOnlySpan<byte> bytes, out Position invalidAt)
    {
        if (bytes.StartsWith(Encoding.UTF8.Preamble))
        {
            bytes = bytes[Encoding.UTF8.Preamble.Length..];
        }

        invalidAt = default;
        if (Utf8.IsValid(bytes))
        {
            return Encoding.UTF8.GetString(bytes);
        }

        int good = ValidLength(bytes);
        int line = 1 + bytes[..good].Count((byte)'\n');
        int lineStart = bytes[..good].LastIndexOf((byte)'\n') + 1;
        invalidAt = new Position(line, 1 + bytes[lineStart..good].ToArray().Count(IsLeading));
        return null;
    }

    private static int ValidLength(ReadOnlySpan<byte> bytes)
    {
        int good = 0;
        while (good < bytes.Length && Rune.DecodeFromUtf8(bytes[good..], out _, out int used) == System.Buffers.OperationStatus.Done)
        {
            good += used;
        }

        return good;
    }

    // A byte that begins a character, not one that continues it.
    private static bool IsLeading(byte b) => (b & 0xC0) != 0x80;
}
