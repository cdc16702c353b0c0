using System.Collections.Immutable;
using AxleRisk.Core.Distributions;

namespace AxleRisk.Core.Scenarios;

/// <summary>The weld detail of the checked section.</summary>
/// <param name="Catalogue">The catalogue's name as in a scenario file: <c>DNV-RP-C203</c>, <c>EN 1993-1-9</c>, <c>IIW</c>, or
/// <see cref="OwnCatalogue"/>.</param>
/// <param name="Categories">The possible categories, best first as the user listed them.</param>
/// <param name="Weights">Their probabilities, summing to 1; one weight of 1 where the category is certain.</param>
/// <param name="Knowledge">Whether an uncertain category varies between vehicles or is unknown.</param>
/// <param name="ThicknessExponent">Replaces the catalogue's thickness exponent where the user states one.</param>
public sealed record Detail(
    string Catalogue, ImmutableArray<string> Categories, ImmutableArray<double> Weights,
    Knowledge Knowledge = Knowledge.Unknown, double? ThicknessExponent = null)
{
    /// <summary>What stands for the catalogue where the scenario has an S-N curve of its own.</summary>
    public const string OwnCatalogue = "own";

    /// <summary>The one category of a scenario with a curve of its own.</summary>
    public const string OwnCategory = "own curve";

    /// <summary>What the weld lives in, one of the catalogue's environments; null where nothing is stated: air.</summary>
    public string? Environment { get; init; }

    /// <summary>The curve that the scenario states itself; null where it states none. It is in force if <see cref="IsOwn"/>.</summary>
    public OwnCurve? Own { get; init; }

    /// <summary>Whether the scenario's own curve is in force.</summary>
    public bool IsOwn => Catalogue == OwnCatalogue;

    /// <summary>
    /// The index of the category of the base case: the median, as of every other factor, that is the first with which the weights
    /// add up to half.
    /// </summary>
    public int NominalIndex => Spread is { } spread ? (int)spread.Median : 0;

    /// <summary>The choice among the indices of the categories; null where the category is certain.</summary>
    public NumberChoice? Spread => Categories.Length > 1 ? new([.. Categories.Select((_, i) => (double)i)], [.. Weights]) : null;
}
