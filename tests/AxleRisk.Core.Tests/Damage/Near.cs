using Xunit;

namespace AxleRisk.Core.Tests.Damage;

/// <summary>Comparison by relative error.</summary>
internal static class Near
{
    public static void Relative(double expected, double actual, double tolerance) =>
        Assert.True(
            Math.Abs(actual - expected) <= tolerance * Math.Abs(expected),
            $"expected {expected:R} within {tolerance:G2}, got {actual:R} (off by {actual / expected - 1:G3})");
}
