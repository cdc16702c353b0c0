using AxleRisk.Core.Scenarios;

namespace AxleRisk.Files.Format;

/// <summary>The table of a further checked section.</summary>
public static class SectionFormat
{
    /// <summary>The most of them.</summary>
    public const int Most = 8;

    private const string Shared = "that of `[axle]`";

    /// <summary>A further checked section: what <c>[axle]</c> and <c>[detail]</c> are of the first.</summary>
    public static TableFormat Section { get; } = new(
        CheckedSection.Table,
        "A further checked section of the same axle, such as the spring seat or the centre case; its fatigue is a mode of failure of its own.",
        [
            new("name", "name", "", new KeyKind.PlainName(), $"what it is called, unique, not `{CheckedSection.First}`")
            { IsRequired = true, Start = "seat" },
            AxleFormat.Shape,
            .. FormatParts.Of(CheckedSection.Table).Select(AxleFormat.OfShape).Select(Own),
            .. DetailFormat.Detail.Keys.Select(OfDetail),
        ]);

    private static TableFormat Curve => DetailFormat.Curve with
    { Path = "sections.curve", Meaning = "An S-N curve of this section's own, in force with `catalogue = \"own\"`." };

    private static KeyFormat OfDetail(KeyFormat key) => key.Kind switch
    {
        KeyKind.Table => key with { Kind = new KeyKind.Table(Curve), Meaning = Curve.Meaning },
        KeyKind.Category => key with { Start = "F" },
        KeyKind.Word => key with { Start = "DNV-RP-C203" },
        _ => key,
    };

    private static KeyFormat Own(KeyFormat key) =>
        key.Key == Quantities.LeverArm.Key ? key with
        {
            Start = "300",
            Meaning = "lateral distance from the tyre's contact centre to this section, with the standard wheel; inboard of the spring seat of a beam axle that to the seat",
        }
        : key.Key == Quantities.OutsideDiameter.Key ? key with { Start = "120" }
        : key.Key == Quantities.Wall.Key ? key with { Start = "8" }
        : key.Key == Quantities.CorrosionLoss.Key || key.Key == Quantities.CorrosionRate.Key ? key with { Otherwise = Shared }
        : key.Key == Quantities.SectionLifeScatter.Key
            ? key with { Otherwise = "Miner sum times 10 to the S-N scatter of `[fatigue]`, drawn anew; with a curve of its own that curve's scatter" }
        : key;
}
