using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Files.Distributions;

/// <summary>Sees to it that a continuous distribution stays in the domain of its quantity.</summary>
internal static class DomainGuard
{
    /// <summary>The largest probability outside the domain that is cut off without a word.</summary>
    public const double Negligible = 1e-9;

    /// <summary>What is wrong with a distribution for a quantity, or null where it does.</summary>
    public static string? Problem(Distribution distribution, Domain domain, string name)
    {
        double below = Below(distribution, domain);
        double above = Above(distribution, domain);

        // Written so that a NaN is a problem, too.
        if (below + above <= Negligible)
        {
            return double.IsFinite(distribution.Median) ? null : $"{name}: {distribution} has no finite median";
        }

        string limits = (below > Negligible, above > Negligible) switch
        {
            (true, true) => "min and max",
            (false, true) => "max",
            _ => "min",
        };
        return $"{name} must be {domain.Describe()}, but {distribution} is not with probability {below + above:G3}; truncate it with {limits}";
    }

    /// <summary>The distribution, cut at the ends of the domain where a negligible part lies outside.</summary>
    public static Distribution Confine(Distribution distribution, Domain domain)
    {
        if (Below(distribution, domain) + Above(distribution, domain) == 0)
        {
            return distribution;
        }

        // What is cut already is cut once, to what both cuts leave.
        Distribution inner = distribution is Truncated cut ? cut.Inner : distribution;
        return new Truncated(
            inner,
            Bound(Math.Max(distribution.Minimum, domain.Low)),
            Bound(Math.Min(distribution.Maximum, domain.High)));
    }

    private static double Below(Distribution d, Domain domain) => double.IsInfinity(domain.Low) ? 0 : d.Cumulative(domain.Low);

    private static double Above(Distribution d, Domain domain) => double.IsInfinity(domain.High) ? 0 : d.Upper(domain.High);

    private static double? Bound(double end) => double.IsInfinity(end) ? null : end;
}
