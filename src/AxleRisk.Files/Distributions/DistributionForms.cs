using System.Collections.Immutable;
using AxleRisk.Core.Distributions;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Distributions;

/// <summary>Every way to state a continuous distribution by numbers. A new family or a new set of parameters is one row.</summary>
internal static class DistributionForms
{
    public static ImmutableArray<DistributionForm> All { get; } =
    [
        Form("normal", "mean sd", "", a => new Normal(a["mean"], a["sd"])),
        Form("normal", "mean cov", "", a => new Normal(a["mean"], SdOf(a["mean"], a["cov"]))),
        Form("lognormal", "median sd_ln", "", a => new Lognormal(a["median"], a["sd_ln"])),
        Form("lognormal", "median cov", "", a => Lognormal.FromMedianAndCov(a["median"], a["cov"])),
        Form("lognormal", "mean cov", "", a => Lognormal.FromMeanAndCov(a["mean"], a["cov"])),
        Form("uniform", "low high", "", a => new Uniform(a["low"], a["high"])),
        Form("log-uniform", "low high", "", a => new LogUniform(a["low"], a["high"])),
        Form("triangular", "low mode high", "", a => new Triangular(a["low"], a["mode"], a["high"])),
        Form("pert", "low mode high", "shape", a => new Pert(a["low"], a["mode"], a["high"], a.Or("shape", 4))),
        Form("beta", "alpha beta low high", "", a => new ScaledBeta(a["alpha"], a["beta"], a["low"], a["high"])),
        Form("weibull", "shape scale", "location", a => new Weibull(a["shape"], a["scale"], a.Or("location", 0))),
        Form("gumbel", "location scale", "", a => new Gumbel(a["location"], a["scale"])),
        Form("gumbel", "mean sd", "", a => Gumbel.FromMeanAndSd(a["mean"], a["sd"])),
        Form("gamma", "shape scale", "", a => new Gamma(GammaShape(a["shape"], "shape"), a["scale"])),
        Form("gamma", "mean cov", "", a => GammaOf(a["mean"], a["cov"])),
        Form("exponential", "mean", "location", a => new Exponential(a["mean"], a.Or("location", 0))),
    ];

    private const double GreatestGammaShape = 1e6;

    /// <summary>The names of all families, those that are not stated by numbers alone included.</summary>
    public static ImmutableArray<string> Families { get; } = [.. All.Select(f => f.Family).Distinct(), "choice", "sample"];

    /// <summary><c>mean and sd, or mean and cov, or quantiles</c>.</summary>
    public static string Describe(string family)
    {
        IEnumerable<string> forms = All.Where(f => f.Family == family).Select(f =>
            MessageText.List(f.Required) + (f.Optional.IsEmpty ? "" : $" ({MessageText.List(f.Optional)} optional)"));
        return string.Join(", or ", QuantileFit.Families.Contains(family) ? forms.Append("quantiles") : forms);
    }

    private static DistributionForm Form(string family, string required, string optional, Func<Arguments, Distribution> make) =>
        new(family, Split(required), Split(optional), make);

    private static Gamma GammaOf(double mean, double cov)
    {
        double sd = SdOf(mean, cov);
        GammaShape(1 / (cov * cov), "cov");
        return Gamma.FromMeanAndSd(mean, sd);
    }

    // The series of the gamma distribution need ever more terms as the shape rises; by then it is normal anyhow.
    private static double GammaShape(double shape, string parameter) => shape > GreatestGammaShape
        ? throw new DistributionException($"a gamma distribution of shape {shape:G6} is a normal one: state that", parameter)
        : shape;

    private static double SdOf(double mean, double cov)
    {
        if (mean == 0)
        {
            throw new DistributionException("mean must not be 0 where cov is stated", "mean");
        }

        return cov > 0 ? cov * Math.Abs(mean) : throw new DistributionException($"cov must be above 0, not {cov:G6}", "cov");
    }

    private static ImmutableArray<string> Split(string names) => [.. names.Split(' ', StringSplitOptions.RemoveEmptyEntries)];
}
