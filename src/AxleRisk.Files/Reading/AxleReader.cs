using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads the checked section: its shape and the quantities that belong to the shape.</summary>
internal sealed class AxleReader(ErrorLog errors, QuantityReader quantities, InputCollector inputs)
{
    /// <summary>The wall where a section modulus is given without one: so thin that no standard corrects for it, mm.</summary>
    public const double WallOfGivenModulus = 1;

    /// <summary>Reads the table of the first section and returns its shape; a tube unless stated.</summary>
    public SectionShape Read(TableReader table)
    {
        SectionShape shape = Read(table, ScenarioFormat.Axle, null);
        table.RejectUnknown(QuantityReader.OtherSection);
        return shape;
    }

    /// <summary>Reads what a table says of a section's shape and sizes; its other keys are left to the caller.</summary>
    /// <param name="table">The table.</param>
    /// <param name="format">Its keys.</param>
    /// <param name="section">The name of a further section; null for the first.</param>
    public SectionShape Read(TableReader table, TableFormat format, string? section)
    {
        SectionShape? stated = table.Word("shape", FormatWords.Shapes);
        bool shapeIsWrong = stated is null && table.Table.Find("shape") is not null;
        SectionShape shape = stated ?? SectionShape.Tube;
        if (shapeIsWrong)
        {
            inputs.MarkWrong(section is null ? "axle" : $"{CheckedSection.Table}.{section}");
        }

        foreach (KeyFormat key in format.Keys.Where(k => k.Quantity is { } q && q != Quantities.SectionLifeScatter))
        {
            Quantity quantity = key.Quantity!;
            // Without a shape nothing is missing and nothing in the wrong place, but what is there can be checked.
            TomlEntry? entry = table.Find(quantity.Key);
            if (shapeIsWrong ? entry is not null : key.BelongsTo?.Words.Contains(Word(shape)) != false)
            {
                quantities.Read(table, quantity, otherwise: Otherwise(quantity, shape), section: section);
            }
            else if (!shapeIsWrong && entry is not null)
            {
                errors.Add(entry.KeyAt, $"{table.NameOf(quantity.Key)} does not belong to shape \"{Word(shape)}\", only to {Owners(key)}");
            }
        }

        RejectSolid(table, shape);
        return shape;
    }

    // A wall of more than half of the outside is no wall; the formulas would compute on.
    private void RejectSolid(TableReader table, SectionShape shape)
    {
        foreach (Quantity outside in OutsidesOf(shape))
        {
            if (inputs.Find(table.NameOf(Quantities.Wall.Key))?.Value.Nominal is double wall
                && inputs.Find(table.NameOf(outside.Key))?.Value.Nominal is double size && wall > size / 2)
            {
                errors.Add(table.Table.Find(Quantities.Wall.Key)!.Node.At,
                    $"{table.NameOf(Quantities.Wall.Key)} ({wall:G6}) must not be above half of {outside.Key} ({size:G6})");
            }
        }
    }

    /// <summary>A section of a read scenario whose wall is above half of its outside: both inputs; null where each is hollow.</summary>
    public static (Input Wall, Input Outside)? Solid(Scenario scenario)
    {
        foreach (CheckedSection? section in scenario.Sections.Prepend(null))
        {
            Input? Of(Quantity quantity) => section is null ? scenario.Find(quantity)
                : scenario.Find(Quantities.OfSection(quantity.Key)!, section);
            Input? wall = Of(Quantities.Wall);
            if (OutsidesOf(section?.Shape ?? scenario.Shape).Select(Of).FirstOrDefault(o => wall?.Value.Nominal > o?.Value.Nominal / 2)
                is { } outside)
            {
                return (wall!, outside);
            }
        }

        return null;
    }

    private static Quantity[] OutsidesOf(SectionShape shape) => shape switch
    {
        SectionShape.Tube => [Quantities.OutsideDiameter],
        SectionShape.Box => [Quantities.BoxWidth, Quantities.BoxHeight],
        _ => [],
    };

    private static Value.Certain? Otherwise(Quantity quantity, SectionShape shape) =>
        quantity.Key == Quantities.Wall.Key && shape == SectionShape.Given ? new Value.Certain(WallOfGivenModulus) : null;

    private static string Owners(KeyFormat key) => string.Join(" or ", key.BelongsTo!.Words.Select(MessageText.Quote));

    private static string Word(SectionShape shape) => FormatWords.Shapes.First(s => s.Value == shape).Key;
}
