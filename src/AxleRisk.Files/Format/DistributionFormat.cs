using System.Collections.Immutable;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Distributions;

namespace AxleRisk.Files.Format;

/// <summary>The keys of a distribution, by its family.</summary>
public static class DistributionFormat
{
    /// <summary>The key of two quantiles in place of the parameters.</summary>
    public const string Quantiles = "quantiles";

    /// <summary>The names of all families.</summary>
    public static ImmutableArray<string> Families => DistributionForms.Families;

    /// <summary>The keys of every distribution.</summary>
    public static TableFormat Common { get; } = new(
        "", "A number that differs from vehicle to vehicle or is not known.",
        new("distribution", "distribution", "", new KeyKind.Word(Families), "the family") { IsRequired = true },
        new("knowledge", "knowledge", "", FormatWords.Of(FormatWords.KnowledgeKinds),
            "it differs from vehicle to vehicle, or it is one value for all that is not known")
        { Otherwise = "`\"varies\"`" },
        new("nominal", "nominal value", "", new KeyKind.Number(Domain.Any), "the value of the base case; in the range of the quantity")
        { Otherwise = "the median; of a choice the first value, in rising order, with which the weights add up to half" });

    /// <summary>The keys that truncate a continuous distribution.</summary>
    public static ImmutableArray<KeyFormat> Limits { get; } = [Parameter("min"), Parameter("max")];

    private static ImmutableDictionary<string, TableFormat> ByFamily { get; } = Families.ToImmutableDictionary(f => f, Made);

    /// <summary>The keys of a family, those of every distribution first.</summary>
    public static TableFormat Of(string family) => ByFamily[family];

    /// <summary>The sets of keys of a family of which one must be stated: what each needs, and what it may have besides.</summary>
    public static IEnumerable<(ImmutableArray<string> Required, ImmutableArray<string> Optional)> FormsOf(string family) => family switch
    {
        "choice" => [(["values", "weights"], [])],
        "sample" => [(["file", "column"], [])],
        _ =>
        [
            .. DistributionForms.All.Where(f => f.Family == family).Select(f => (f.Required, f.Optional)),
            .. HasQuantiles(family) ? [([Quantiles], [])] : Array.Empty<(ImmutableArray<string>, ImmutableArray<string>)>(),
        ],
    };

    /// <summary>Whether a family may be stated by two quantiles.</summary>
    public static bool HasQuantiles(string family) => QuantileFit.Families.Contains(family);

    private static TableFormat Made(string family) => Common.With(
    [
        .. FormsOf(family).SelectMany(f => f.Required.Concat(f.Optional)).Distinct().Select(Parameter),
        .. family is "choice" or "sample" ? [] : Limits,
    ]);

    private static KeyFormat Parameter(string key) => key switch
    {
        Quantiles => new(key, "two quantiles", "", new KeyKind.QuantilePairs(), "two shares, each with the value that it lies at or below"),
        "values" => new(key, "values", "", new KeyKind.Values(OfWords: false), "the values"),
        "weights" => new(key, "weights", "", new KeyKind.Numbers(Domain.Fraction, 1, int.MaxValue, "numbers from 0 to 1 that add up to 1"),
            "the weight of each value; they add up to 1"),
        "file" => new(key, "file", "", new KeyKind.Text(), "a CSV file in the folder of the scenario or below"),
        "column" => new(key, "column", "", new KeyKind.Text(), "the header of its column"),
        _ => new(key, key, "", new KeyKind.Number(Domain.Any), MeaningOf(key)),
    };

    /// <summary>When to choose a family, in a sentence.</summary>
    public static string WhenOf(string family) => family switch
    {
        "normal" => "Many small causes add up, as in a measured dimension or mass; may go below zero unless cut.",
        "lognormal" => "Causes multiply and nothing lies below zero: stiffness, roughness, strength, distance.",
        "uniform" => "Only two ends are known and nothing speaks for the middle.",
        "log-uniform" => "Only two ends are known, and they differ by a factor of several.",
        "triangular" => "Two ends and a likeliest value, as people estimate them.",
        "pert" => "Like triangular, with more about the likeliest value and less at the ends.",
        "beta" => "A share or condition between two ends, of a shape that is known.",
        "weibull" => "Lives, losses and sizes that are never negative; its shape is known or fitted.",
        "gumbel" => "The greatest of many, such as the heaviest load in a year.",
        "gamma" => "A sum of positive parts: never negative, with a long upper end.",
        "exponential" => "A positive amount, the smaller the likelier; only its mean is known.",
        "choice" => "One of a few states, each with a weight: an option fitted or not.",
        "sample" => "You have measurements in a CSV file: they are drawn as they are.",
        _ => throw new InvalidOperationException($"no advice on {family}"),
    };

    /// <summary>What a parameter that is a number means.</summary>
    public static string MeaningOf(string parameter) => parameter switch
    {
        "mean" => "the mean",
        "sd" => "standard deviation",
        "cov" => "standard deviation over the mean",
        "median" => "half lie below",
        "sd_ln" => "standard deviation of the natural logarithm",
        "low" => "nothing lies below",
        "high" => "nothing lies above",
        "mode" => "the likeliest value",
        "min" => "cut off below",
        "max" => "cut off above",
        "shape" => "the shape: the larger, the less scatter",
        "scale" => "the scale, in the unit of the quantity",
        "location" => "where it begins or is centred, in the unit of the quantity",
        "alpha" => "the first exponent: the larger, the further up",
        "beta" => "the second exponent: the larger, the further down",
        _ => throw new InvalidOperationException($"no meaning of {parameter}"),
    };
}
