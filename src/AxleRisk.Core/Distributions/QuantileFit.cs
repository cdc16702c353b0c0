using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Distributions;

/// <summary>A statement of a user: a share <paramref name="P"/> of the values lies at or below <paramref name="X"/>.</summary>
/// <param name="P">The probability, between 0 and 1.</param>
/// <param name="X">The value, in the unit of the quantity.</param>
public readonly record struct StatedQuantile(double P, double X);

/// <summary>
/// The member of a two-parameter family that has two stated quantiles. Every method throws <see cref="DistributionException"/>,
/// naming <c>p1</c>, <c>x1</c>, <c>p2</c> or <c>x2</c>, where no member has them.
/// </summary>
public static class QuantileFit
{
    /// <summary>The families that two quantiles determine, under their names in a scenario file.</summary>
    public static IReadOnlyList<string> Families { get; } =
        ["normal", "lognormal", "uniform", "log-uniform", "weibull", "gumbel", "gamma", "exponential"];

    /// <summary>The member of the named family with these two quantiles.</summary>
    public static Distribution Of(string family, StatedQuantile first, StatedQuantile second) => family switch
    {
        "normal" => ToNormal(first, second),
        "lognormal" => ToLognormal(first, second),
        "uniform" => ToUniform(first, second),
        "log-uniform" => ToLogUniform(first, second),
        "weibull" => ToWeibull(first, second),
        "gumbel" => ToGumbel(first, second),
        "gamma" => ToGamma(first, second),
        "exponential" => ToExponential(first, second),
        _ => throw new DistributionException(
            $"two quantiles do not determine the family '{family}'; they do {string.Join(", ", Families)}", "family"),
    };

    /// <summary>The normal distribution with these two quantiles.</summary>
    public static Normal ToNormal(StatedQuantile first, StatedQuantile second)
    {
        Line line = Through(Ordered(first, second), x => x, StandardNormal.Quantile);
        return new Normal(line.Offset, line.Slope);
    }

    /// <summary>The lognormal distribution with these two quantiles, both above 0.</summary>
    public static Lognormal ToLognormal(StatedQuantile first, StatedQuantile second)
    {
        Line line = Through(Positive(first, second), Math.Log, StandardNormal.Quantile);
        return new Lognormal(Math.Exp(line.Offset), line.Slope);
    }

    /// <summary>The uniform distribution with these two quantiles.</summary>
    public static Uniform ToUniform(StatedQuantile first, StatedQuantile second)
    {
        Line line = Through(Ordered(first, second), x => x, p => p);
        return new Uniform(line.Offset, line.Offset + line.Slope);
    }

    /// <summary>The log-uniform distribution with these two quantiles, both above 0.</summary>
    public static LogUniform ToLogUniform(StatedQuantile first, StatedQuantile second)
    {
        Line line = Through(Positive(first, second), Math.Log, p => p);
        return new LogUniform(Math.Exp(line.Offset), Math.Exp(line.Offset + line.Slope));
    }

    /// <summary>The Weibull distribution of location 0 with these two quantiles, both above 0.</summary>
    public static Weibull ToWeibull(StatedQuantile first, StatedQuantile second)
    {
        Line line = Through(Positive(first, second), Math.Log, p => Math.Log(Hazard(p)));
        return new Weibull(1 / line.Slope, Math.Exp(line.Offset));
    }

    /// <summary>The Gumbel distribution of maxima with these two quantiles.</summary>
    public static Gumbel ToGumbel(StatedQuantile first, StatedQuantile second)
    {
        Line line = Through(Ordered(first, second), x => x, p => -Math.Log(-Math.Log(p)));
        return new Gumbel(line.Offset, line.Slope);
    }

    /// <summary>The exponential distribution with location that has these two quantiles.</summary>
    public static Exponential ToExponential(StatedQuantile first, StatedQuantile second)
    {
        Line line = Through(Ordered(first, second), x => x, Hazard);
        return new Exponential(line.Offset + line.Slope, line.Offset);
    }

    /// <summary>The gamma distribution with these two quantiles, both above 0; the shape is sought between 0.001 and 1e6.</summary>
    public static Gamma ToGamma(StatedQuantile first, StatedQuantile second)
    {
        (StatedQuantile low, StatedQuantile high) = Positive(first, second);
        double stated = Math.Log(high.X / low.X);
        double Excess(double logShape) =>
            LogGammaQuantile(Math.Exp(logShape), high.P) - LogGammaQuantile(Math.Exp(logShape), low.P) - stated;

        // The ratio of two quantiles falls as the shape rises.
        double least = Math.Log(1e-3);
        double most = Math.Log(1e6);
        if (!(Excess(least) >= 0 && Excess(most) <= 0))
        {
            throw new DistributionException(
                $"no gamma distribution has both quantiles: x2 ({high.X:G6}) is too {(Excess(most) > 0 ? "near to" : "far from")} x1 ({low.X:G6})", "x2");
        }

        double shape = Math.Exp(MathNet.Numerics.RootFinding.Brent.FindRoot(Excess, least, most, 1e-14, 500));
        return new Gamma(shape, low.X * Math.Exp(-LogGammaQuantile(shape, low.P)));
    }

    private static double LogGammaQuantile(double shape, double p) => IncompleteGamma.LogQuantile(shape, p, 1 - p);

    private static double Hazard(double p) => -LogExp.LogP1(-p);

    private static (StatedQuantile Low, StatedQuantile High) Positive(StatedQuantile first, StatedQuantile second)
    {
        Check.Positive(first.X, "x1");
        return Ordered(first, second);
    }

    private static (StatedQuantile Low, StatedQuantile High) Ordered(StatedQuantile first, StatedQuantile second)
    {
        if (!(first.P is > 0 and < 1))
        {
            throw new DistributionException($"p1 must lie between 0 and 1, not {first.P:G6}", "p1");
        }

        if (!(second.P > first.P && second.P < 1))
        {
            throw new DistributionException($"p2 must lie between p1 ({first.P:G6}) and 1, not {second.P:G6}", "p2");
        }

        Check.Above(second.X, Check.Finite(first.X, "x1"), "x2", "x1");
        return (first, second);
    }

    /// <summary>The line x' = offset + slope p' through both statements on the paper where the family is straight.</summary>
    private static Line Through((StatedQuantile Low, StatedQuantile High) pair, Func<double, double> ofX, Func<double, double> ofP)
    {
        double p1 = ofP(pair.Low.P);
        double slope = (ofX(pair.High.X) - ofX(pair.Low.X)) / (ofP(pair.High.P) - p1);
        return new Line(ofX(pair.Low.X) - (slope * p1), slope);
    }

    private readonly record struct Line(double Offset, double Slope);
}
