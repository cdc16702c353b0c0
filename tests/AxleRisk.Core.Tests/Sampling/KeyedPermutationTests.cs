using AxleRisk.Core.Randomness;
using AxleRisk.Core.Sampling;
using FsCheck.Xunit;
using Xunit;

namespace AxleRisk.Core.Tests.Sampling;

public class KeyedPermutationTests
{
    [Property(MaxTest = 200)]
    public void Every_number_has_one_image_for_any_count_and_key(ushort n, ulong seed) => AssertBijective(1 + n % 5000, seed);

    [Fact]
    public void Small_counts_and_powers_of_two_are_bijective_too()
    {
        foreach (int n in Enumerable.Range(1, 40).Concat([255, 256, 257, 1023, 1024, 1025, 100_000]))
        {
            AssertBijective(n, 5);
        }
    }

    [Fact]
    public void Images_stay_in_range_for_counts_beyond_32_bits()
    {
        const long N = (1L << 52) - 3;
        KeyedPermutation permutation = Of(N, 1);
        Assert.All(Enumerable.Range(0, 1000), i => Assert.InRange(permutation.Of(N - 1 - i), 0, N - 1));
    }

    // 24 permutations, 48 000 keys: chi-square of 23 degrees of freedom, 1 - 1e-4 quantile 56.0 (R qchisq).
    [Fact]
    public void All_permutations_of_four_are_equally_frequent()
    {
        const int Keys = 48_000;
        Dictionary<(long, long, long), int> counts = [];
        for (int key = 0; key < Keys; key++)
        {
            KeyedPermutation p = Of(4, (ulong)key);
            (long, long, long) image = (p.Of(0), p.Of(1), p.Of(2));
            counts[image] = counts.GetValueOrDefault(image) + 1;
        }

        Assert.Equal(24, counts.Count);
        Assert.InRange(counts.Values.Sum(c => Math.Pow(c - Keys / 24.0, 2) / (Keys / 24.0)), 0, 56.0);
    }

    // Images of two neighbours in ten classes, N = 1000, 50 000 keys: 100 classes of probability 0.1 x 100/999 (99/999 on
    // the diagonal); chi-square of 99 degrees of freedom, 1 - 1e-4 quantile 158 (R qchisq).
    [Fact]
    public void Images_of_neighbours_are_independent()
    {
        const int Keys = 50_000;
        int[,] counts = new int[10, 10];
        for (int key = 0; key < Keys; key++)
        {
            KeyedPermutation p = Of(1000, (ulong)key);
            counts[p.Of(500) / 100, p.Of(501) / 100]++;
        }

        double chiSquare = 0;
        for (int a = 0; a < 10; a++)
        {
            for (int b = 0; b < 10; b++)
            {
                double expected = Keys * 0.1 * (a == b ? 99 : 100) / 999.0;
                chiSquare += Math.Pow(counts[a, b] - expected, 2) / expected;
            }
        }

        Assert.InRange(chiSquare, 0, 158);
    }

    private static void AssertBijective(int n, ulong seed)
    {
        KeyedPermutation permutation = Of(n, seed);
        bool[] seen = new bool[n];
        for (int i = 0; i < n; i++)
        {
            long image = permutation.Of(i);
            Assert.False(seen[image], $"{image} of {n} has two sources");
            seen[image] = true;
        }
    }

    private static KeyedPermutation Of(long n, ulong seed) => new(n, new RandomStream(new StreamKey(seed, "p")), Lanes.Permutation);
}
