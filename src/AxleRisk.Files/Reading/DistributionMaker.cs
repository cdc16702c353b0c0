using AxleRisk.Core.Distributions;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Turns what a distribution has against its parameters into errors at their places.</summary>
internal static class DistributionMaker
{
    /// <summary>Makes a distribution of the parameters in a table; null, with the error logged, where they make none.</summary>
    public static Distribution? Make(Func<Distribution> make, TableReader table, string name, ErrorLog errors)
    {
        try
        {
            return make();
        }
        catch (DistributionException e)
        {
            errors.Add(PlaceOf(e.Parameter, table.Table), $"{name}: {e.Message}");
            return null;
        }
    }

    private static Position PlaceOf(string? parameter, TomlTable table)
    {
        // The numbers of two quantiles are named by their place in [[p1, x1], [p2, x2]].
        TomlNode? quantile = table.Find("quantiles")?.Node is TomlArray { Items: [TomlArray first, TomlArray second] }
            ? parameter switch
            {
                "p1" => first.Items[0],
                "x1" => first.Items[1],
                "p2" => second.Items[0],
                "x2" => second.Items[1],
                _ => null,
            }
            : null;
        return (quantile ?? (parameter is null ? null : table.Find(parameter)?.Node) ?? table).At;
    }
}
