using System.Security.Cryptography;
using System.Text;
using AxleRisk.Files;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace AxleRisk.App.Tests.Files;

/// <summary>Digests against the standard's examples and .NET's own.</summary>
public sealed class Sha256Tests
{
    // NIST, examples with intermediate values of FIPS 180-4 and its test vectors of a million times "a".
    [Theory]
    [InlineData("", 1, "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855")]
    [InlineData("abc", 1, "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad")]
    [InlineData("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq", 1, "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1")]
    [InlineData("a", 1_000_000, "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0")]
    public void The_standards_examples_come_out(string text, int times, string digest)
    {
        byte[] bytes = Encoding.ASCII.GetBytes(string.Concat(Enumerable.Repeat(text, times)));
        Assert.Equal(digest, Sha256.HexOf(bytes));
    }

    [Fact]
    public void Every_length_has_the_digest_that_NET_gives()
    {
        byte[] bytes = [.. Enumerable.Range(0, 260).Select(i => (byte)(i * 37))];
        Assert.All(Enumerable.Range(0, bytes.Length + 1), n =>
            Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(bytes.AsSpan(0, n))), Sha256.HexOf(bytes.AsSpan(0, n))));
    }

    [Property]
    public Property Pieces_have_the_digest_of_the_whole(byte[][] pieces)
    {
        var hash = new Sha256();
        foreach (byte[] piece in pieces)
        {
            hash.Append(piece);
        }

        return (hash.ToHex() == Sha256.HexOf(pieces.SelectMany(p => p).ToArray())).ToProperty();
    }
}
