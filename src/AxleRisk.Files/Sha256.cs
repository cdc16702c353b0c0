using System.Buffers.Binary;
using System.Numerics;

namespace AxleRisk.Files;

/// <summary>
/// SHA-256 (FIPS 180-4). The one of .NET needs OpenSSL on the user's machine, and ends the program where there is none, as in a small
/// container.
/// </summary>
internal sealed class Sha256
{
    private const int BlockBytes = 64;

    // The first 32 bits of the fractional parts of the cube roots of the first 64 primes.
    private static readonly uint[] K =
    [
        0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5,
        0xd807aa98, 0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174,
        0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da,
        0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967,
        0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85,
        0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070,
        0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f, 0x682e6ff3,
        0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2,
    ];

    // The same of the square roots of the first eight.
    private readonly uint[] state =
        [0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a, 0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19];

    private readonly uint[] w = new uint[BlockBytes];
    private readonly byte[] rest = new byte[BlockBytes];
    private long length;

    /// <summary>The digest of bytes, as 64 hexadecimal digits.</summary>
    public static string HexOf(ReadOnlySpan<byte> bytes)
    {
        var hash = new Sha256();
        hash.Append(bytes);
        return hash.ToHex();
    }

    /// <summary>Goes on with further bytes.</summary>
    public void Append(ReadOnlySpan<byte> bytes)
    {
        int kept = (int)(length % BlockBytes);
        length += bytes.Length;
        if (kept > 0)
        {
            int more = Math.Min(BlockBytes - kept, bytes.Length);
            bytes[..more].CopyTo(rest.AsSpan(kept));
            bytes = bytes[more..];
            if (kept + more < BlockBytes)
            {
                return;
            }

            Take(rest);
        }

        for (; bytes.Length >= BlockBytes; bytes = bytes[BlockBytes..])
        {
            Take(bytes);
        }

        bytes.CopyTo(rest);
    }

    /// <summary>The digest of what was appended, as 64 hexadecimal digits; nothing can be appended after it.</summary>
    public string ToHex()
    {
        // A one, zeros, and the length in bits as the last eight bytes of a block.
        Span<byte> end = stackalloc byte[2 * BlockBytes];
        int kept = (int)(length % BlockBytes);
        end = end[..((kept < BlockBytes - sizeof(long) ? BlockBytes : 2 * BlockBytes) - kept)];
        end.Clear();
        end[0] = 0x80;
        BinaryPrimitives.WriteInt64BigEndian(end[^sizeof(long)..], 8 * length);
        Append(end);
        Span<byte> digest = stackalloc byte[sizeof(uint) * 8];
        for (int i = 0; i < state.Length; i++)
        {
            BinaryPrimitives.WriteUInt32BigEndian(digest[(sizeof(uint) * i)..], state[i]);
        }

        return Convert.ToHexStringLower(digest);
    }

    private void Take(ReadOnlySpan<byte> block)
    {
        for (int t = 0; t < 16; t++)
        {
            w[t] = BinaryPrimitives.ReadUInt32BigEndian(block[(sizeof(uint) * t)..]);
        }

        for (int t = 16; t < w.Length; t++)
        {
            uint near = w[t - 2], far = w[t - 15];
            w[t] = w[t - 16] + w[t - 7]
                + (BitOperations.RotateRight(far, 7) ^ BitOperations.RotateRight(far, 18) ^ (far >> 3))
                + (BitOperations.RotateRight(near, 17) ^ BitOperations.RotateRight(near, 19) ^ (near >> 10));
        }

        (uint a, uint b, uint c, uint d) = (state[0], state[1], state[2], state[3]);
        (uint e, uint f, uint g, uint h) = (state[4], state[5], state[6], state[7]);
        for (int t = 0; t < w.Length; t++)
        {
            uint one = h + K[t] + w[t] + ((e & f) ^ (~e & g))
                + (BitOperations.RotateRight(e, 6) ^ BitOperations.RotateRight(e, 11) ^ BitOperations.RotateRight(e, 25));
            uint two = ((a & b) ^ (a & c) ^ (b & c))
                + (BitOperations.RotateRight(a, 2) ^ BitOperations.RotateRight(a, 13) ^ BitOperations.RotateRight(a, 22));
            (h, g, f, e, d, c, b, a) = (g, f, e, d + one, c, b, a, one + two);
        }

        uint[] more = [a, b, c, d, e, f, g, h];
        for (int i = 0; i < state.Length; i++)
        {
            state[i] += more[i];
        }
    }
}
