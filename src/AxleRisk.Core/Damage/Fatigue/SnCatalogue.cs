using System.Collections.Immutable;

namespace AxleRisk.Core.Damage.Fatigue;

/// <summary>The published S-N curves, as design curves, by catalogue, category and environment.</summary>
public static class SnCatalogue
{
    private static readonly ImmutableArray<ImmutableArray<SnCurve>> Families = [DnvCurves.All, EnCurves.All, IiwCurves.All];

    /// <summary>The catalogues' names as in a scenario file.</summary>
    public static ImmutableArray<string> Catalogues { get; } = [.. Families.Select(f => f[0].Catalogue)];

    /// <summary>The categories of a catalogue, best first; empty if there is no such catalogue.</summary>
    public static ImmutableArray<string> Categories(string catalogue) => [.. Family(catalogue).Select(c => c.Category).Distinct()];

    /// <summary>The environments that a catalogue has curves of, air first; empty if there is no such catalogue.</summary>
    public static ImmutableArray<string> Environments(string catalogue) => [.. Family(catalogue).Select(c => c.Environment).Distinct()];

    /// <summary>
    /// The design curve of a category; null if catalogue, category or environment is unknown. IIW classes may be named without "FAT".
    /// </summary>
    public static SnCurve? Find(string catalogue, string category, string environment = Surroundings.Air) =>
        Family(catalogue).FirstOrDefault(c => c.Category == category && c.Environment == environment)
        ?? (catalogue == IiwCurves.Catalogue && !category.StartsWith(IiwCurves.Prefix, StringComparison.Ordinal)
            ? Find(catalogue, IiwCurves.Prefix + category, environment) : null);

    private static ImmutableArray<SnCurve> Family(string catalogue) => Families.FirstOrDefault(f => f[0].Catalogue == catalogue, []);
}
