using AxleRisk.Core.Scenarios;

namespace AxleRisk.Files.Format;

/// <summary>What the tables of checked sections have in common.</summary>
internal static class AxleFormat
{
    /// <summary>The shape of a section.</summary>
    public static KeyFormat Shape { get; } = new(
        "shape", "shape", "", FormatWords.Of(FormatWords.Shapes), "shape of the section")
    { Otherwise = "`\"tube\"`" };

    /// <summary>
    /// A key of a section with the shapes that it belongs to: a given section modulus cannot say what corrosion makes of it, and needs no
    /// wall.
    /// </summary>
    public static KeyFormat OfShape(KeyFormat key) =>
        key.Key == Quantities.OutsideDiameter.Key ? key with { BelongsTo = new("shape", "tube") }
        : key.Key == Quantities.BoxWidth.Key || key.Key == Quantities.BoxHeight.Key ? key with { BelongsTo = new("shape", "box") }
        : key.Key == Quantities.SectionModulus.Key ? key with { BelongsTo = new("shape", "given") }
        : key.Key == Quantities.CorrosionLoss.Key || key.Key == Quantities.CorrosionRate.Key
            ? key with { BelongsTo = new("shape", "tube", "box") }
        : key.Key == Quantities.Wall.Key ? key with { Unless = Quantities.SectionModulus.Key }
        : key;
}
