using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Analyses.Learning;

/// <summary>A weighted sample of what is unknown.</summary>
/// <param name="Combination">By row: the combination of states.</param>
/// <param name="Z">The coordinates, by coordinate and row.</param>
/// <param name="LogWeight">ln weight by row.</param>
/// <param name="Failed">The failure probability at the distances asked for, by distance and row.</param>
/// <param name="Group">By row: the replicate it belongs to.</param>
internal sealed record PosteriorSample(int[] Combination, double[][] Z, double[] LogWeight, double[][] Failed, int[] Group)
{
    private double[]? weights;

    /// <summary>The weights, summing to 1.</summary>
    public double[] Weights => weights ??= Normalised();

    /// <summary>The effective sample size, (sum of weights)^2 / sum of squares (Kong 1992).</summary>
    public double EffectiveSize => 1 / Weights.Sum(w => w * w);

    /// <summary>The mean of something by row.</summary>
    public double Mean(Func<int, double> of)
    {
        CompensatedSum sum = default;
        for (int row = 0; row < Weights.Length; row++)
        {
            sum.Add(Weights[row] * of(row));
        }

        return sum.Value;
    }

    /// <summary>Quantiles of something by row: by the weights below and half of its own, straight between.</summary>
    public double[] Quantiles(double[] values, params ReadOnlySpan<double> at)
    {
        double[] keys = [.. values], sorted = [.. Weights];
        Array.Sort(keys, sorted);
        var place = new double[keys.Length];
        double below = 0;
        for (int i = 0; i < keys.Length; i++)
        {
            place[i] = below + (0.5 * sorted[i]);
            below += sorted[i];
        }

        var result = new double[at.Length];
        for (int q = 0; q < at.Length; q++)
        {
            int right = Array.BinarySearch(place, at[q]);
            right = right < 0 ? ~right : right;
            result[q] = right == 0 ? keys[0] : right >= keys.Length ? keys[^1]
                : keys[right - 1] + ((keys[right] - keys[right - 1]) * (at[q] - place[right - 1]) / Math.Max(1e-300,
                    place[right] - place[right - 1]));
        }

        return result;
    }

    /// <summary>Rows drawn by weight, evenly spread (systematic resampling, Kitagawa 1996).</summary>
    /// <param name="count">How many.</param>
    /// <param name="start">A number from 0 to 1 that shifts the spread.</param>
    public int[] Draw(int count, double start)
    {
        var rows = new int[count];
        double below = 0;
        int row = -1;
        for (int i = 0; i < count; i++)
        {
            double wanted = (i + start) / count;
            while (row < Weights.Length - 1 && below < wanted)
            {
                below += Weights[++row];
            }

            rows[i] = Math.Max(0, row);
        }

        return rows;
    }

    private double[] Normalised()
    {
        double greatest = LogWeight.Max();
        double[] all = [.. LogWeight.Select(w => double.IsNaN(w) ? 0 : Math.Exp(w - greatest))];
        double sum = all.Sum();
        return [.. all.Select(w => w / sum)];
    }
}
