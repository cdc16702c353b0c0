using System.Collections.Immutable;

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

    /// <summary>What the weld lives in, of the catalogue's environments; null where nothing is stated: air.</summary>
    public WordChoice? Environment { get; init; }

    /// <summary>The curve that the scenario states itself; null where it states none. It is in force if <see cref="IsOwn"/>.</summary>
    public OwnCurve? Own { get; init; }

    /// <summary>Whether the scenario's own curve is in force.</summary>
    public bool IsOwn => Catalogue == OwnCatalogue;

    /// <summary>The category, or several.</summary>
    public WordChoice Category => new(Categories, Weights, Knowledge);

    /// <summary>What is chosen among words under a name, <see cref="Change.CategoryName"/> or
    /// <see cref="Change.EnvironmentName"/>; null for any other, and where nothing is stated.</summary>
    public WordChoice? Find(string name) => name switch
    {
        Change.CategoryName => Category,
        Change.EnvironmentName => Environment,
        _ => null,
    };

    /// <summary>The same with another choice under a name.</summary>
    public Detail With(string name, WordChoice choice) => name == Change.EnvironmentName
        ? this with { Environment = choice }
        : this with { Categories = choice.Words, Weights = choice.Weights, Knowledge = choice.Knowledge };
}
