using System.Collections.Immutable;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Modes;

/// <summary>The S-N curves of a weld detail: of a catalogue, or the scenario's own.</summary>
public static class DetailCurves
{
    /// <summary>The curves of all categories, each in all environments, as published or stated.</summary>
    public static ImmutableArray<SnCurve> All(Detail detail) =>
        [.. detail.Categories.SelectMany(c => (detail.Environment?.Words ?? [Surroundings.Air]).Select(e => Of(detail, c, e)))];

    /// <summary>The curve of the base case, as published or stated.</summary>
    public static SnCurve Nominal(Detail detail) =>
        Of(detail, detail.Category.Nominal, detail.Environment?.Nominal ?? Surroundings.Air);

    /// <summary>A curve that a scenario states itself, as it is stated.</summary>
    public static SnCurve Of(OwnCurve own) => new()
    {
        Catalogue = Detail.OwnCatalogue,
        Category = Detail.OwnCategory,
        Lines = [.. own.Slopes.Zip(own.Log10A, (slope, log10A) => new SnLine(slope, log10A))],
        CutOffMPa = own.CutOffMPa,
        ThicknessReferenceMm = own.ThicknessReferenceMm,
        DesignToMeanLog10 = own.DeviationsBelowMean * own.StandardDeviation,
        Source = own.Source,
    };

    // With the scenario's own thickness exponent where it states one.
    private static SnCurve Of(Detail detail, string category, string environment)
    {
        SnCurve curve = detail is { IsOwn: true, Own: { } own }
            ? Of(own)
            : SnCatalogue.Find(detail.Catalogue, category, environment)
                ?? throw new ArgumentException($"no category {category} in {detail.Catalogue}, {environment}", nameof(category));
        return detail.ThicknessExponent is { } exponent ? curve with { ThicknessExponent = exponent } : curve;
    }
}
