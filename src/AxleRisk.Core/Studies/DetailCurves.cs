using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Studies;

/// <summary>The S-N curves of a weld detail: of a catalogue, or the scenario's own.</summary>
public static class DetailCurves
{
    /// <summary>The curve of a category as published or stated, with the scenario's own thickness exponent where it states one.</summary>
    /// <exception cref="ArgumentException">The catalogue has no such category.</exception>
    public static SnCurve Of(Detail detail, string category)
    {
        SnCurve curve = detail is { IsOwn: true, Own: { } own }
            ? Of(own)
            : SnCatalogue.Find(detail.Catalogue, category, detail.Environment ?? Surroundings.Air)
                ?? throw new ArgumentException($"no category {category} in {detail.Catalogue}, {detail.Environment}", nameof(category));
        return detail.ThicknessExponent is { } exponent ? curve with { ThicknessExponent = exponent } : curve;
    }

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
}
