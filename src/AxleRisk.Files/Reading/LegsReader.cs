using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads the legs of use.</summary>
internal sealed class LegsReader(ErrorLog errors, QuantityReader quantities)
{
    private const double ShareTolerance = 1e-6;

    /// <summary>Reads the legs in the table of the use; what is wrong is logged.</summary>
    public ImmutableArray<Leg> Read(TableReader use, Position missingAt)
    {
        if (use.Find("legs") is null)
        {
            errors.Add(missingAt, "there are no legs of use: at least one [[use.legs]] is needed");
            return [];
        }

        if (use.Inners("legs") is not { } tables)
        {
            return [];
        }

        List<(Position At, Leg? Leg)> read = [];
        HashSet<string> names = [];
        LegReader leg = new(errors, quantities);
        foreach (TomlTable table in tables)
        {
            read.Add((table.At, leg.Read(table, read.Count, names)));
        }

        return read.TrueForAll(r => r.Leg is not null) ? Normalise([.. read.Select(r => r.Leg!)], tables[0].At) : [];
    }

    private ImmutableArray<Leg> Normalise(ImmutableArray<Leg> legs, Position at)
    {
        double sum = legs.Sum(l => l.Share);
        if (!(Math.Abs(sum - 1) <= ShareTolerance))
        {
            errors.Add(at, $"the shares of the legs must add up to 1, not {sum:G6}");
        }

        return [.. legs.Select(l => l with { Share = l.Share / sum })];
    }
}
