using AxleRisk.Core.Numerics;
using AxleRisk.Core.Randomness;
using FsCheck.Xunit;
using Xunit;

namespace AxleRisk.Core.Tests.Randomness;

public class RandomStreamTests
{
    private static readonly RandomStream Stream = new(new StreamKey(20240607, "wall_mm"));

    // This program's own numbers, recorded when the stream was defined. If this fails, every study's numbers have changed.
    [Fact]
    public void The_numbers_of_a_stream_never_change()
    {
        double[] u = new double[3];
        Stream.FillUnit(1_000_000, u);
        Assert.Equal([0.299830286278319, 0.01742011979791014, 0.25531161772070965], u);
        Assert.Equal(12612796613790366018ul, Stream.Word(7, 3));
    }

    // 0, 1, the batch's 16, and around it; bitwise, as a number depends on its place in the stream alone.
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(15)]
    [InlineData(16)]
    [InlineData(17)]
    [InlineData(100)]
    public void A_fill_equals_the_words_one_by_one(int length)
    {
        for (long first = 0; first < 33; first++)
        {
            double[] u = new double[length];
            Stream.FillUnit(first, u);
            Assert.Equal(Enumerable.Range(0, length).Select(i => UnitInterval.FromWord(Stream.Word(first + i, 0))), u);
        }
    }

    [Property(MaxTest = 200)]
    public void Any_split_of_a_range_gives_the_same_numbers(ulong seed, uint first, byte length, byte split)
    {
        RandomStream stream = new(new StreamKey(seed, "x"));
        double[] whole = new double[length];
        stream.FillUnit(first, whole);
        double[] parts = new double[length];
        int cut = Math.Min(split, length);
        stream.FillUnit(first + cut, parts.AsSpan(cut));
        stream.FillUnit(first, parts.AsSpan(0, cut));
        Assert.Equal(whole, parts);
    }

    [Fact]
    public void Seed_name_and_lane_each_give_other_numbers()
    {
        ulong[] words =
        [
            new RandomStream(new StreamKey(1, "a")).Word(0, 0), new RandomStream(new StreamKey(2, "a")).Word(0, 0),
            new RandomStream(new StreamKey(1, "b")).Word(0, 0), new RandomStream(new StreamKey(1, "a")).Word(0, 1),
            new RandomStream(new StreamKey(1, "a")).Word(0, 2), new RandomStream(new StreamKey(1, "a")).Word(8, 0),
        ];
        Assert.Equal(words.Length, words.Distinct().Count());
    }

    // n = 1e6: sd of the mean 0.2887e-3; of the mean square (1/3) sd(u^2) = 0.298, 0.298e-3; of the lag-1 and of the
    // cross product sd about 0.0833e-3. Four standard errors each.
    [Fact]
    public void Numbers_are_uniform_and_uncorrelated()
    {
        const int N = 1_000_000;
        double[] u = new double[N], v = new double[N];
        Stream.FillUnit(0, u);
        new RandomStream(new StreamKey(20240607, "wall_mn")).FillUnit(0, v);
        double mean = CompensatedSum.Of(u) / N;
        double square = u.Sum(x => x * x) / N;
        double lag = Enumerable.Range(0, N - 1).Sum(i => (u[i] - 0.5) * (u[i + 1] - 0.5)) / N;
        double half = Enumerable.Range(0, N - 8).Sum(i => (u[i] - 0.5) * (u[i + 8] - 0.5)) / N; // the same block's other word
        double cross = Enumerable.Range(0, N).Sum(i => (u[i] - 0.5) * (v[i] - 0.5)) / N;
        Assert.Equal(0.5, mean, 4 * 0.2887e-3);
        Assert.Equal(1 / 3.0, square, 4 * 0.298e-3);
        Assert.Equal(0, lag, 4 * 0.0833e-3);
        Assert.Equal(0, half, 4 * 0.0833e-3);
        Assert.Equal(0, cross, 4 * 0.0833e-3);
    }

    [Fact]
    public void A_negative_sample_number_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Stream.FillUnit(-1, new double[1]));
}
