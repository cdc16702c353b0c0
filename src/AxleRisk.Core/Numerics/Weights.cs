namespace AxleRisk.Core.Numerics;

/// <summary>Weights of points that stand for a distribution.</summary>
internal static class Weights
{
    /// <summary>The same, to a sum of 1.</summary>
    public static double[] Normalised(double[] weights)
    {
        double sum = Sum(weights);
        return [.. weights.Select(w => w / sum)];
    }

    /// <summary>Their sum.</summary>
    public static double Sum(ReadOnlySpan<double> weights)
    {
        double sum = 0;
        foreach (double w in weights)
        {
            sum += w;
        }

        return sum;
    }

    /// <summary>The sum of values, each times its weight.</summary>
    public static double Sum(ReadOnlySpan<double> weights, ReadOnlySpan<double> values)
    {
        double sum = 0;
        for (int i = 0; i < values.Length; i++)
        {
            sum += weights[i] * values[i];
        }

        return sum;
    }
}
