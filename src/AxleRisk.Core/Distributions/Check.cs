namespace AxleRisk.Core.Distributions;

/// <summary>Guards of the distributions' parameters: each returns the value or throws a <see cref="DistributionException"/>. NaN is always rejected.</summary>
internal static class Check
{
    public static double Finite(double x, string name) =>
        double.IsFinite(x) ? x : throw new DistributionException($"{name} must be a finite number, not {x:G6}", name);

    public static double Positive(double x, string name) =>
        double.IsFinite(x) && x > 0 ? x : throw new DistributionException($"{name} must be above 0, not {x:G6}", name);

    public static double Above(double x, double bound, string name, string boundName) =>
        double.IsFinite(x) && x > bound
            ? x
            : throw new DistributionException($"{name} must be above {boundName} ({bound:G6}), not {x:G6}", name);

    public static double Between(double x, double low, double high, string name) =>
        x >= low && x <= high
            ? x
            : throw new DistributionException($"{name} must lie between {low:G6} and {high:G6}, not {x:G6}", name);
}
