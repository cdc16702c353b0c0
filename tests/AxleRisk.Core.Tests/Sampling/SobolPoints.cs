using AxleRisk.Core.Randomness;
using AxleRisk.Core.Sampling;

namespace AxleRisk.Core.Tests.Sampling;

/// <summary>Points of the sequence for the tests.</summary>
internal static class SobolPoints
{
    public static double Plain(int dimension, long number)
    {
        ulong reversed = ScrambledSobol.ReversedPoint(SobolDirections.ReversedColumns(dimension), number);
        double x = 0;
        for (int i = 0; i < 64; i++)
        {
            x += ((reversed >> i) & 1) * Math.Pow(2, -1 - i);
        }

        return x;
    }

    public static double[] Scrambled(int dimension, int n, ulong seed)
    {
        double[] u = new double[n];
        new ScrambledSobol().Fill(new StreamKey(seed, $"x{dimension}"), dimension, 0, u);
        return u;
    }

    /// <summary>The largest number of points in an elementary interval 2^-k x 2^-(m-k), over all k; 1 is a (0, m, 2)-net.</summary>
    public static int MostInElementaryInterval(double[] x, double[] y, int m)
    {
        int most = 0;
        for (int k = 0; k <= m; k++)
        {
            int[] counts = new int[1 << m];
            for (int i = 0; i < x.Length; i++)
            {
                int column = (int)(x[i] * (1 << k)), row = (int)(y[i] * (1 << (m - k)));
                most = Math.Max(most, ++counts[(column << (m - k)) + row]);
            }
        }

        return most;
    }
}
