using System.Text;

namespace AxleRisk.Core.Randomness;

/// <summary>A 64-bit hash of a text that is the same on every machine and in every version (string.GetHashCode is not).</summary>
internal static class StableHash
{
    /// <summary>
    /// FNV-1a (Fowler, Noll, Vo) over the UTF-8 bytes, then the finaliser of SplitMix64 (Steele, Lea, Flood 2014), which
    /// spreads the last bytes over all bits. Never change it: every study's numbers depend on it.
    /// </summary>
    /// <param name="parts">The text, in one part or more; nothing is allocated, for every block of a study asks.</param>
    public static ulong Of(params ReadOnlySpan<string> parts)
    {
        ulong hash = 0xCBF29CE484222325;
        Span<byte> bytes = stackalloc byte[MostBytesOfRune];
        foreach (string part in parts)
        {
            foreach (Rune rune in part.EnumerateRunes())
            {
                foreach (byte b in bytes[..rune.EncodeToUtf8(bytes)])
                {
                    hash = (hash ^ b) * 0x100000001B3;
                }
            }
        }

        return Mix(hash);
    }

    private const int MostBytesOfRune = 4;

    /// <summary>The fractional part of the golden ratio as a 64-bit fraction: the step of SplitMix64.</summary>
    public const ulong Golden = 0x9E3779B97F4A7C15;

    /// <summary>The finaliser of SplitMix64: a bijection of 64 bits in which every input bit reaches every output bit.</summary>
    public static ulong Mix(ulong x)
    {
        x = (x ^ (x >> 30)) * 0xBF58476D1CE4E5B9;
        x = (x ^ (x >> 27)) * 0x94D049BB133111EB;
        return x ^ (x >> 31);
    }
}
