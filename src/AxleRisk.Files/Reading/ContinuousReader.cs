using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Distributions;
using AxleRisk.Files.Format;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads a continuous distribution: its parameters or two quantiles, and its truncation.</summary>
internal sealed class ContinuousReader(ErrorLog errors)
{
    private const string Quantiles = DistributionFormat.Quantiles;

    /// <summary>Reads the parameters of a known family; null, with the errors logged, where they are wrong.</summary>
    public Distribution? Read(TableReader table, string family, string name, Domain domain)
    {
        double? min = table.Number("min");
        double? max = table.Number("max");
        Dictionary<string, double> numbers = [];
        List<string> stated = [];
        bool sound = true;
        foreach (string key in DistributionForms.All.Where(f => f.Family == family).SelectMany(f => f.Required.Concat(f.Optional))
            .Distinct())
        {
            if (table.Find(key) is null)
            {
                continue;
            }

            stated.Add(key);
            if (table.Number(key) is double number)
            {
                numbers.Add(key, number);
            }
            else
            {
                sound = false;
            }
        }

        TomlEntry? quantiles = DistributionFormat.HasQuantiles(family) ? table.Find(Quantiles) : null;
        if (quantiles is not null)
        {
            stated.Add(Quantiles);
        }

        if (!table.RejectUnknown(key => Hint(key, family)) || !sound || Broken(table, "min", min) || Broken(table, "max", max))
        {
            return null;
        }

        Func<Distribution>? make = quantiles is not null && stated.Count == 1
            ? FromQuantiles(quantiles.Node, family, name)
            : FromParameters(table, family, stated, numbers, name);
        Distribution? made = make is null
            ? null
            : DistributionMaker.Make(() => min is null && max is null ? make() : new Truncated(make(), min, max), table, name, errors);
        if (made is null || DomainGuard.Problem(made, domain, name) is not string problem)
        {
            return made is null ? null : DomainGuard.Confine(made, domain);
        }

        errors.Add(table.Table.At, problem);
        return null;
    }

    private Func<Distribution>? FromParameters(
        TableReader table, string family, List<string> stated, Dictionary<string, double> numbers, string name)
    {
        if (DistributionForms.All.FirstOrDefault(f => f.Family == family && f.Fits(stated)) is DistributionForm form)
        {
            return () => form.Make(new Arguments(numbers));
        }

        string not = stated.Count == 1 ? $"{stated[0]} alone" : MessageText.List(stated);
        errors.Add(table.Table.At, $"{name}: {family} takes {DistributionForms.Describe(family)}, not {not}");
        return null;
    }

    private Func<Distribution>? FromQuantiles(TomlNode node, string family, string name)
    {
        if (node is TomlArray
            {
                Items: [TomlArray { Items: [TomlNumber p1, TomlNumber x1] }, TomlArray { Items: [TomlNumber p2, TomlNumber x2] }]
            })
        {
            return () => QuantileFit.Of(family, new StatedQuantile(p1.Number, x1.Number), new StatedQuantile(p2.Number, x2.Number));
        }

        errors.Add(node.At, $"{name}.{Quantiles} must be two pairs of probability and value, such as [[0.05, 3.0], [0.95, 5.2]]");
        return null;
    }

    private static string Hint(string key, string family)
    {
        string[] parameters = [.. DistributionForms.All.Where(f => f.Family == family).SelectMany(f => f.Required.Concat(f.Optional))];
        return NearestName.Find(key, [.. parameters, "knowledge", "nominal", "min", "max", Quantiles]) is string near
            ? $"; did you mean \"{near}\"?"
            : $"; {family} takes {DistributionForms.Describe(family)}";
    }

    private static bool Broken(TableReader table, string key, double? read) => read is null && table.Table.Find(key) is not null;
}
