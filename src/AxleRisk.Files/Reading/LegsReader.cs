using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads the legs of use.</summary>
internal sealed class LegsReader(ErrorLog errors, QuantityReader quantities)
{
    /// <summary>The most legs a scenario may have.</summary>
    public const int Most = 64;

    private const double ShareTolerance = 1e-6;

    /// <summary>Reads the array of legs; what is wrong is logged.</summary>
    public ImmutableArray<Leg> Read(TomlEntry? entry, Position missingAt)
    {
        if (entry is null)
        {
            errors.Add(missingAt, "there are no legs of use: at least one [[use.legs]] is needed");
            return [];
        }

        if (entry.Node is not TomlArray { Items.Count: > 0 } array || array.Items.Find(i => i is not TomlTable) is not null)
        {
            errors.Add(entry.Node.At, "use.legs must be tables, each under [[use.legs]]");
            return [];
        }

        if (array.Items.Count > Most)
        {
            errors.Add(array.Items[Most].At, $"there are {array.Items.Count} legs of use; at most {Most} are possible");
            return [];
        }

        List<(Position At, Leg? Leg)> read = [];
        HashSet<string> names = [];
        LegReader leg = new(errors, quantities);
        foreach (TomlTable table in array.Items.Cast<TomlTable>())
        {
            read.Add((table.At, leg.Read(table, read.Count, names)));
        }

        return read.TrueForAll(r => r.Leg is not null) ? Normalise([.. read.Select(r => r.Leg!)], array.Items[0].At) : [];
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
