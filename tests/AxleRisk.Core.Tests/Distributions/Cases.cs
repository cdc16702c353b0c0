using AxleRisk.Core.Distributions;
using Xunit;

namespace AxleRisk.Core.Tests.Distributions;

/// <summary>The members that the contract tests run over: ordinary ones and the awkward ends of each family's parameters.</summary>
internal static class Cases
{
    private static readonly Distribution[] Continuous =
    [
        new Normal(6, 0.25), new Normal(-1e3, 40), new Normal(0, 1e-6),
        new Lognormal(1, 0.2), new Lognormal(3e5, 1.5), new Lognormal(2, 1e-3),
        new Uniform(-1, 3), new Uniform(1000, 1001),
        new LogUniform(0.5, 2), new LogUniform(1e-6, 1e6), new LogUniform(10, 10.01),
        new Triangular(10, 12, 20), new Triangular(0, 0, 1), new Triangular(-5, 2, 2),
        new Pert(10, 12, 20), new Pert(0, 0, 1), new Pert(-5, 2, 2, 20), new Pert(100, 101, 105, 0.5),
        new ScaledBeta(0.5, 0.5), new ScaledBeta(0.3, 0.4, -1, 2), new ScaledBeta(1, 1, 2, 3),
        new ScaledBeta(2, 300), new ScaledBeta(1000, 800, -10, 10), new ScaledBeta(0.05, 3),
        new Weibull(2, 1), new Weibull(0.5, 1e4), new Weibull(1, 3, 5), new Weibull(50, 300),
        new Gumbel(0, 1), new Gumbel(-40, 12),
        new Gamma(0.05, 1), new Gamma(0.5, 20), new Gamma(1, 1), new Gamma(2.5, 0.1), new Gamma(30, 1), new Gamma(1e4, 1e-3),
        new Exponential(1), new Exponential(7, 4),
        new Truncated(new Normal(0, 1), -1, 2), new Truncated(new Normal(0, 1), 6, null), new Truncated(new Normal(0, 1), null, -6),
        new Truncated(new Lognormal(1, 0.5), null, 1.2), new Truncated(new Weibull(2, 1), 0.1, 4),
        new Truncated(new Gamma(0.5, 1), 1e-3, null),
        new Truncated(new Pert(10, 12, 20), 11, 15), new Truncated(new Gumbel(0, 1), -2, null),
        new Truncated(new Gamma(30, 1), 40, null), new Truncated(new Pert(10, 12, 20), 16, null),
        Scaled.Of(new Triangular(10, 12, 20), 0.7), Scaled.Of(new Gumbel(-40, 12), 3),
        Scaled.Of(new Truncated(new Weibull(2, 1), 0.1, 4), 1.1),
    ];

    private static readonly Distribution[] Others =
    [
        new NumberChoice([3, 1, 2], [1, 1, 2]), new NumberChoice([-5, 100], [1e-9, 1]),
        new Empirical([4, 1, 3, 2, 10]), new Empirical([1, 1, 2, 2, 2, 5]), new Truncated(new Empirical([4, 1, 3, 2, 10]), 1.5, 8),
        Scaled.Of(new NumberChoice([3, 1, 2], [1, 1, 2]), 0.3), Scaled.Of(new Empirical([4, 1, 3, 2, 10]), 0.3),
    ];

    /// <summary>The names of the members with a density.</summary>
    public static TheoryData<string> ContinuousNames => [.. Continuous.Select(d => d.ToString())];

    /// <summary>The names of all members.</summary>
    public static TheoryData<string> AllNames => [.. All.Select(d => d.ToString())];

    public static IEnumerable<Distribution> All => Continuous.Concat(Others);

    public static Distribution Named(string name) => All.Single(d => d.ToString() == name);
}
