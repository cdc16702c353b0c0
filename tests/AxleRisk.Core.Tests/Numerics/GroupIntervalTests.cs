using AxleRisk.Core.Numerics;
using Xunit;

namespace AxleRisk.Core.Tests.Numerics;

/// <summary>Student's interval of the values of groups (points of t from memory; any table has them).</summary>
public sealed class GroupIntervalTests
{
    // Of n values half the width is t(n - 1) s / sqrt(n): 12.7062 for two, 3.18245 for four.
    [Theory]
    [InlineData(12.7062, 1.0, 3.0)]
    [InlineData(3.18245, 1.0, 2.0, 4.0, 9.0)]
    public void It_is_as_wide_as_students(double t, params double[] values)
    {
        double mean = values.Average();
        double s = Math.Sqrt(values.Sum(v => (v - mean) * (v - mean)) / (values.Length - 1));
        double half = t * s / Math.Sqrt(values.Length);
        Interval told = GroupInterval.Around(5, values), ofLogs = GroupInterval.AroundExp(5, values);
        Assert.Equal(5, told.Estimate);
        Assert.Equal(5 - half, told.Low, 1e-5 * half);
        Assert.Equal(5 + half, told.High, 1e-5 * half);
        Assert.Equal(5 * Math.Exp(half), ofLogs.High, 1e-5 * ofLogs.High);
        Assert.Equal(5 * Math.Exp(-half), ofLogs.Low, 1e-5 * ofLogs.Low);
    }

    [Fact]
    public void One_value_has_none() => Assert.True(double.IsNaN(GroupInterval.Around(5, [5]).High));
}
