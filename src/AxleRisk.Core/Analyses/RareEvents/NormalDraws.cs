using AxleRisk.Core.Numerics;
using AxleRisk.Core.Randomness;

namespace AxleRisk.Core.Analyses.RareEvents;

/// <summary>Standard normals that depend on seed, stream, coordinate and sample number alone.</summary>
internal static class NormalDraws
{
    /// <summary>
    /// Fills the first <paramref name="count"/> rows of every coordinate with the samples from <paramref name="first"/> on.
    /// </summary>
    public static void Fill(ulong seed, string stream, long first, int count, double[][] u)
    {
        for (int i = 0; i < u.Length; i++)
        {
            Span<double> column = u[i].AsSpan(0, count);
            new RandomStream(new StreamKey(seed, $"{stream}/{i}")).FillUnit(first, column);
            StandardNormal.Quantiles(column, column);
        }
    }
}
