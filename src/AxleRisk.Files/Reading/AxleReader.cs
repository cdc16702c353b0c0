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

    /// <summary>Reads the table and returns the shape; a tube unless stated.</summary>
    public SectionShape Read(TableReader table)
    {
        SectionShape? stated = table.Word("shape", FormatWords.Shapes);
        bool shapeIsWrong = stated is null && table.Table.Find("shape") is not null;
        SectionShape shape = stated ?? SectionShape.Tube;
        if (shapeIsWrong)
        {
            inputs.MarkWrong("axle");
        }

        foreach (KeyFormat key in ScenarioFormat.Axle.Keys.Where(k => k.Quantity is not null))
        {
            Quantity quantity = key.Quantity!;
            // Without a shape nothing is missing and nothing in the wrong place, but what is there can be checked.
            TomlEntry? entry = table.Find(quantity.Key);
            if (shapeIsWrong ? entry is not null : key.BelongsTo?.Words.Contains(Word(shape)) != false)
            {
                quantities.Read(table, quantity, otherwise: Otherwise(quantity, shape));
            }
            else if (!shapeIsWrong && entry is not null)
            {
                errors.Add(entry.KeyAt, $"{table.NameOf(quantity.Key)} does not belong to shape \"{Word(shape)}\", only to {Owners(key)}");
            }
        }

        table.RejectUnknown(QuantityReader.OtherSection);
        RejectSolid(table, shape);
        return shape;
    }

    // A wall of more than half of the outside is no wall; the formulas would compute on.
    private void RejectSolid(TableReader table, SectionShape shape)
    {
        foreach (Quantity outside in OutsidesOf(shape))
        {
            if (inputs.Find(Quantities.Wall)?.Value.Nominal is double wall && inputs.Find(outside)?.Value.Nominal is double size
                && wall > size / 2)
            {
                errors.Add(table.Table.Find(Quantities.Wall.Key)!.Node.At,
                    $"axle.wall_mm ({wall:G6}) must not be above half of {outside.Key} ({size:G6})");
            }
        }
    }

    /// <summary>The outside of a read scenario's section that its wall is above half of; null where there is a hollow.</summary>
    public static Input? SolidSize(Scenario scenario) =>
        OutsidesOf(scenario.Shape).Select(q => scenario.Find(q))
            .FirstOrDefault(outside => scenario.Find(Quantities.Wall)?.Value.Nominal > outside?.Value.Nominal / 2);

    private static Quantity[] OutsidesOf(SectionShape shape) => shape switch
    {
        SectionShape.Tube => [Quantities.OutsideDiameter],
        SectionShape.Box => [Quantities.BoxWidth, Quantities.BoxHeight],
        _ => [],
    };

    private static Value.Certain? Otherwise(Quantity quantity, SectionShape shape) =>
        quantity == Quantities.Wall && shape == SectionShape.Given ? new Value.Certain(WallOfGivenModulus) : null;

    private static string Owners(KeyFormat key) => string.Join(" or ", key.BelongsTo!.Words.Select(MessageText.Quote));

    private static string Word(SectionShape shape) => FormatWords.Shapes.First(s => s.Value == shape).Key;
}
