using System.Collections.Immutable;
using AxleRisk.Core.Distributions;

namespace AxleRisk.Core.Analyses.Fits;

/// <summary>
/// Every continuous family of the scenario format, with its free parameters: logarithms of what must be above 0, ends as
/// distances beyond the outermost values.
/// </summary>
internal static class FitFamilies
{
    // sqrt(6) / pi and Euler's constant: standard deviation and mean of the Gumbel distribution.
    private const double GumbelScaleOfSd = 0.779696801233676;
    private const double Euler = 0.577215664901533;

    // A shape beyond this is a normal distribution, as the scenario's reader says.
    private const double GreatestGammaShape = 1e6;

    // A beta density with a shape below 1 has no bound at the end, and its likelihood no maximum.
    private const double LeastBetaShape = 1;

    public static ImmutableArray<FitFamily> All { get; } =
    [
        new("normal", ["mean", "sd"], d => new(
            [0, Math.Log(d.Deviation)], f => [Mean(d, f[0]), Math.Exp(f[1])], p => new Normal(p[0], p[1]))
        { IsSolved = d.IsExact, Free = p => [FromMean(d, p[0]), Math.Log(p[1])] }),
        new("lognormal", ["median", "sd_ln"], d => !(d.Least > 0) ? null : new(
            [0, Math.Log(d.DeviationOfLn)], f => [Median(d, f[0]), Math.Exp(f[1])], p => new Lognormal(p[0], p[1]))
        { IsSolved = d.IsExact, Free = p => [FromMedian(d, p[0]), Math.Log(p[1])] }),
        new("weibull", ["shape", "scale"], d => !(d.Least > 0) ? null : new(
            [-Math.Log(GumbelScaleOfSd * d.DeviationOfLn), Euler * GumbelScaleOfSd],
            f => [Math.Exp(f[0]), Median(d, f[1])], p => new Weibull(p[0], p[1]))
        { Free = p => [Math.Log(p[0]), FromMedian(d, p[1])] }),
        new("gamma", ["shape", "scale"], d => !(d.Least > 0) ? null : new(
            [2 * Math.Log(d.Mean / d.Deviation), 0], f => GammaOf(d, f), p => new Gamma(p[0], p[1]))
        { Free = p => [Math.Log(p[0]), Math.Log(p[0] * p[1] / d.Mean) * d.Mean / d.Deviation] }),
        new("gumbel", ["location", "scale"], d => new(
            [-Euler * GumbelScaleOfSd, Math.Log(GumbelScaleOfSd * d.Deviation)],
            f => [Mean(d, f[0]), Math.Exp(f[1])], p => new Gumbel(p[0], p[1]))
        { Free = p => [FromMean(d, p[0]), Math.Log(p[1])] }),
        new("exponential", ["mean"], d => !(d.Least >= 0) || !(d.Mean > 0) ? null : new(
            [Math.Log(d.Mean)], f => [Math.Exp(f[0])], p => new Exponential(p[0], 0))
        { IsSolved = d.IsExact, Free = p => [Math.Log(p[0])] }),
        new("uniform", ["low", "high"], d => HasNoRange(d) ? null : new(
            [d.Least, d.Greatest], f => [f[0], f[1]], p => new Uniform(p[0], p[1])) { IsSolved = true }) { HasEnds = true },
        new("log-uniform", ["low", "high"], d => HasNoRange(d) || !(d.Least > 0) ? null : new(
            [d.Least, d.Greatest], f => [f[0], f[1]], p => new LogUniform(p[0], p[1])) { IsSolved = true }) { HasEnds = true },
        new("triangular", ["low", "mode", "high"], d => HasNoRange(d) ? null : new(
            [-2, Logit(d), -2], f => Modal(d, f), p => new Triangular(p[0], p[1], p[2]))) { HasEnds = true },
        new("pert", ["low", "mode", "high"], d => HasNoRange(d) ? null : new(
            [-1, Logit(d), -1], f => Modal(d, f), p => new Pert(p[0], p[1], p[2], 4))) { HasEnds = true },
        new("beta", ["alpha", "beta", "low", "high"], d => HasNoRange(d) ? null : new(
            [0, 0, -2, -2],
            f => [LeastBetaShape + Math.Exp(f[0]), LeastBetaShape + Math.Exp(f[1]), Below(d, f[2]), Above(d, f[3])],
            p => new ScaledBeta(p[0], p[1], p[2], p[3]))) { HasEnds = true },
    ];

    /// <summary>The family of a name.</summary>
    public static FitFamily Of(string name) => All.Single(f => f.Name == name);

    // Free parameters of a place count in the data's own deviation, so that one step fits all data.
    private static double Mean(FitData d, double free) => d.Mean + (free * d.Deviation);

    private static double Median(FitData d, double free) => Math.Exp(d.MeanOfLn + (free * d.DeviationOfLn));

    private static double FromMean(FitData d, double mean) => (mean - d.Mean) / d.Deviation;

    private static double FromMedian(FitData d, double median) => (Math.Log(median) - d.MeanOfLn) / d.DeviationOfLn;

    private static double[] GammaOf(FitData d, IReadOnlyList<double> f)
    {
        double shape = Math.Min(GreatestGammaShape, Math.Exp(f[0]));
        return [shape, d.Mean * Math.Exp(f[1] * d.Deviation / d.Mean) / shape];
    }

    private static bool HasNoRange(FitData d) => !d.IsExact || !(d.Greatest > d.Least);

    private static double Below(FitData d, double free) => d.Least - ((d.Greatest - d.Least) * Math.Exp(free));

    private static double Above(FitData d, double free) => d.Greatest + ((d.Greatest - d.Least) * Math.Exp(free));

    private static double[] Modal(FitData d, IReadOnlyList<double> f)
    {
        (double low, double high) = (Below(d, f[0]), Above(d, f[2]));
        return [low, low + ((high - low) / (1 + Math.Exp(-f[1]))), high];
    }

    private static double Logit(FitData d)
    {
        double share = Math.Clamp((d.Mean - d.Least) / (d.Greatest - d.Least), 0.1, 0.9);
        return Math.Log(share / (1 - share));
    }
}
