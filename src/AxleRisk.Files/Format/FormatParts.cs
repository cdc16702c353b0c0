using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Files.Format;

/// <summary>What tables are made of.</summary>
internal static class FormatParts
{
    /// <summary>The keys of the quantities of a section.</summary>
    public static ImmutableArray<KeyFormat> Of(string section) =>
        [.. Quantities.All.Where(q => q.Section == section).Select(KeyFormat.Of)];

    /// <summary>A table of its own as a key.</summary>
    public static KeyFormat OneOf(TableFormat table) =>
        new(table.Path, table.Path, "", new KeyKind.Table(table), table.Meaning);

    /// <summary>Tables of one form as a key.</summary>
    public static KeyFormat Many(TableFormat table, int most, string called) => new(
        table.Path[(table.Path.LastIndexOf('.') + 1)..], called, "", new KeyKind.Tables(table, 0, most, called), table.Meaning);
}
