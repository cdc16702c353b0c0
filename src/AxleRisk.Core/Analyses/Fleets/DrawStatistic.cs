using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Analyses.Fleets;

/// <summary>What one number is made of the probabilities of all outer draws, with its interval from the replicates.</summary>
internal static class DrawStatistic
{
    private const double Ninety = 0.9;

    /// <summary>The statistic over all outer draws.</summary>
    public static double Of(DrawMeans byDraw, TargetBasis basis) =>
        Of(basis == TargetBasis.Average ? byDraw.AsDrawn : byDraw.Corrected, basis);

    /// <summary>The statistic within each replicate.</summary>
    public static double[] OfReplicates(DrawMeans byDraw, TargetBasis basis) =>
        OfReplicates(basis == TargetBasis.Average ? byDraw.AsDrawn : byDraw.CorrectedByReplicate, basis);

    /// <summary>The statistic over all outer draws of probabilities as they are.</summary>
    public static double Of(ReadOnlySpan<double> byDraw, TargetBasis basis)
    {
        if (basis == TargetBasis.Average)
        {
            return CompensatedSum.Of(byDraw) / byDraw.Length;
        }

        double[] sorted = byDraw.ToArray();
        Array.Sort(sorted);
        return OrderStatistics.Quantile(sorted, Ninety);
    }

    /// <summary>The statistic within each replicate, of probabilities as they are.</summary>
    public static double[] OfReplicates(double[] byDraw, TargetBasis basis) =>
        [.. byDraw.Chunk(byDraw.Length / NestedPlan.Replicates).Select(r => Of(r, basis))];

    /// <summary>The statistic of a probability with its 95 % interval, normal on the scale of the logarithm.</summary>
    public static Interval WithInterval(DrawMeans byDraw, TargetBasis basis)
    {
        double all = Of(byDraw, basis);
        return all > 0
            ? GroupInterval.AroundExp(all, OfReplicates(byDraw, basis).Select(p => p / all)).Within(0, 1)
            : new Interval(0, 0, 0);
    }
}
