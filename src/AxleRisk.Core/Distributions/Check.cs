namespace AxleRisk.Core.Distributions;

/// <summary>
/// Guards of the distributions' parameters: each returns the value or throws a <see cref="DistributionException"/>. NaN is always
/// rejected.
/// </summary>
internal static class Check
{
    private const double GreatestShape = 1e12;

    public static double Finite(double x, string name) =>
        double.IsFinite(x) ? x : throw new DistributionException($"{name} must be a finite number, not {x:G6}", name);

    public static double Positive(double x, string name) =>
        double.IsFinite(x) && x > 0 ? x : throw new DistributionException($"{name} must be above 0, not {x:G6}", name);

    /// <summary>
    /// A shape: above 0, and up to where the distribution is as good as one number and its quantile cannot be solved for any
    /// more.
    /// </summary>
    public static double Shape(double x, string name) =>
        Positive(x, name) <= GreatestShape
            ? x : throw new DistributionException($"{name} must be up to {GreatestShape:G6}, not {x:G6}: state a certain number instead",
            name);

    public static double Above(double x, double bound, string name, string boundName) =>
        double.IsFinite(x) && x > bound
            ? x
            : throw new DistributionException($"{name} must be above {boundName} ({bound:G6}), not {x:G6}", name);

    public static double Between(double x, double low, double high, string name) =>
        x >= low && x <= high
            ? x
            : throw new DistributionException($"{name} must lie between {low:G6} and {high:G6}, not {x:G6}", name);
}
