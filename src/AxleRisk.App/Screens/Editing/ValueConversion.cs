using System.Collections.Immutable;
using AxleRisk.Core.Distributions;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Editing;

/// <summary>The parameters that state a distribution in another way or another family.</summary>
internal static class ValueConversion
{
    /// <summary>The spread assumed where a certain number becomes uncertain: a start for the user's own (no source).</summary>
    public const double StartingCov = 0.05;

    // Three values that keep median and spread of most distributions (extended Pearson-Tukey approximation, Keefer and Bodily 1983).
    private static readonly double[] ChoiceAt = [0.05, 0.5, 0.95];
    private static readonly ImmutableArray<string> ChoiceWeights = ["0.185", "0.63", "0.185"];

    /// <summary>A distribution about a number, with <see cref="StartingCov"/>.</summary>
    public static Distribution About(double number) => new Normal(number, number == 0 ? 1 : StartingCov * Math.Abs(number));

    /// <summary>
    /// The texts of a form's parameters for a distribution like <paramref name="source"/>: the same one where the family is the
    /// same, else one with its median and spread. Null where the family has none.
    /// </summary>
    public static IReadOnlyDictionary<string, string>? Parameters(StatedForm form, Distribution source)
    {
        if (form.Family == "choice")
        {
            return source is NumberChoice choice
                ? new Dictionary<string, string>
                {
                    ["values"] = Join(choice.Values),
                    ["weights"] = string.Join(", ", Shares.Exactly(choice.Weights).Select(w => w.ToString("0.#########")))
                }
                : new Dictionary<string, string>
                { ["values"] = Join(ChoiceAt.Select(source.Quantile)), ["weights"] = string.Join(", ", ChoiceWeights) };
        }

        if (form.Family == "sample")
        {
            return new Dictionary<string, string>();
        }

        Distribution inner = source is Truncated cut && form.CanBeCut && !IsBounded(form.Family) ? cut.Inner : source;
        Distribution? like = inner.Family == form.Family ? inner : SpreadFit.Of(form.Family, inner);
        return like is null
            ? null
            : FieldBook.Of(form).Where(f => f.Name is not ("min" or "max" or "nominal" or "knowledge"))
                .ToDictionary(f => f.Name, f => FieldBook.Show(Parameter(like, f.Name)));
    }

    /// <summary>Whether a family ends by itself, so that cutting it is not needed.</summary>
    public static bool IsBounded(string family) =>
        family is "uniform" or "log-uniform" or "triangular" or "pert" or "beta" or "choice" or "sample";

    private static double Parameter(Distribution d, string name) => name switch
    {
        "p1" => SpreadFit.Low,
        "p2" => SpreadFit.High,
        "x1" => d.Quantile(SpreadFit.Low),
        "x2" => d.Quantile(SpreadFit.High),
        "median" => d.Median,
        "mean" => d.Mean,
        "sd" => d.StandardDeviation,
        "cov" => d.StandardDeviation / Math.Abs(d.Mean),
        _ => d.Parameters.FirstOrDefault(p => p.Name == name).Value,
    };

    private static string Join(IEnumerable<double> values) => string.Join(", ", values.Select(FieldBook.Show));
}
