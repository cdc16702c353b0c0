using System.Collections.Immutable;
using AxleRisk.Core.Distributions;
using AxleRisk.Files.Distributions;

namespace AxleRisk.Files.Writing;

/// <summary>One way to state a distribution in a scenario file.</summary>
/// <param name="Family">The family's name.</param>
/// <param name="Required">The parameters that must be stated.</param>
/// <param name="Optional">The parameters that may be stated.</param>
public sealed record StatedForm(string Family, ImmutableArray<string> Required, ImmutableArray<string> Optional)
{
    /// <summary>Whether it may be cut by <c>min</c> and <c>max</c>.</summary>
    public bool CanBeCut => Family is not "choice" and not "sample";

    /// <summary>Whether exactly these parameters are a statement in this form.</summary>
    public bool Fits(IReadOnlyCollection<string> stated) =>
        Required.All(stated.Contains) && stated.All(s => Required.Contains(s) || Optional.Contains(s));
}

/// <summary>Every way to state a distribution, as the reader knows them.</summary>
public static class StatedForms
{
    /// <summary>The forms in the order of the format's reference; those by numbers first of each family.</summary>
    public static ImmutableArray<StatedForm> All { get; } =
    [
        .. DistributionForms.All.Select(f => f.Family).Distinct().SelectMany(OfNumbers),
        new StatedForm("choice", ["values", "weights"], []),
        new StatedForm("sample", ["file", "column"], []),
    ];

    /// <summary>The families' names, once each.</summary>
    public static ImmutableArray<string> Families { get; } = [.. All.Select(f => f.Family).Distinct()];

    /// <summary>The forms of a family.</summary>
    public static ImmutableArray<StatedForm> Of(string family) => [.. All.Where(f => f.Family == family)];

    private static IEnumerable<StatedForm> OfNumbers(string family)
    {
        foreach (DistributionForm form in DistributionForms.All.Where(f => f.Family == family))
        {
            yield return new StatedForm(family, form.Required, form.Optional);
        }

        if (QuantileFit.Families.Contains(family))
        {
            yield return new StatedForm(family, ["quantiles"], []);
        }
    }
}
