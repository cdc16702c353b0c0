using AxleRisk.Core.Randomness;
using Xunit;

namespace AxleRisk.Core.Tests.Randomness;

public class StableHashTests
{
    // SplitMix64 of seed 1234567: the finaliser of the seed plus multiples of the golden step. Published with the generator
    // (Vigna's reference implementation; recomputed), exact.
    [Fact]
    public void The_finaliser_is_that_of_SplitMix64()
    {
        ulong[] expected = [6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431, 16408922859458223821];
        Assert.Equal(expected, Enumerable.Range(1, 5).Select(i => StableHash.Mix(1234567 + (ulong)i * StableHash.Golden)));
    }

    // FNV-1a 64 test vectors of Fowler, Noll and Vo (from memory), exact.
    [Theory]
    [InlineData("", 0xcbf29ce484222325)]
    [InlineData("a", 0xaf63dc4c8601ec8c)]
    [InlineData("foobar", 0x85944171f73967e8)]
    public void A_text_is_hashed_by_FNV_1a_before_the_finaliser(string text, ulong fnv) =>
        Assert.Equal(StableHash.Mix(fnv), StableHash.Of(text));

    [Fact]
    public void Names_of_other_scripts_are_hashed_as_UTF_8()
    {
        ulong fnv = 0xcbf29ce484222325;
        foreach (byte b in (byte[])[0xC3, 0xA4]) // a with diaeresis
        {
            fnv = (fnv ^ b) * 0x100000001B3;
        }

        Assert.Equal(StableHash.Mix(fnv), StableHash.Of("\u00e4"));
    }

    [Theory]
    [InlineData("wall thickness", "r12")]
    [InlineData("\u00e4\ud83d\ude9a", "\u0416")]
    public void A_name_in_parts_is_hashed_as_the_whole(string name, string part)
    {
        Assert.Equal(StableHash.Of($"{name}/{part}"), new StreamKey(1, name, part).Hash);
        Assert.Equal(StableHash.Of(name), new StreamKey(1, name).Hash);
    }
}
