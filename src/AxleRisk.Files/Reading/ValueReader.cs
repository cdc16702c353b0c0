using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Distributions;
using AxleRisk.Files.Format;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads what a scenario says of one scalar: a number or a distribution.</summary>
internal sealed class ValueReader(ErrorLog errors, DataFiles data)
{
    /// <summary>Reads a value; null, with the errors logged, where it is wrong.</summary>
    public Value? Read(TomlNode node, string name, Domain domain)
    {
        switch (node)
        {
            case TomlTable table:
                return ReadDistribution(table, name, domain);
            case TomlNumber { Number: double number } when domain.Contains(number):
                return new Value.Certain(number);
            default:
                errors.Add(node.At, $"{name} must be {domain.Describe()}, not {node.Shown}");
                return null;
        }
    }

    private Value.Uncertain? ReadDistribution(TomlTable node, string name, Domain domain)
    {
        TableReader table = new(node, name, DistributionFormat.Common, errors);
        string? family = table.Text("distribution");
        Knowledge knowledge = table.Word("knowledge", FormatWords.KnowledgeKinds) ?? Knowledge.Varies;
        double? nominal = table.Number("nominal", domain);
        if (family is null)
        {
            return null;
        }

        if (!DistributionForms.Families.Contains(family))
        {
            string hint = NearestName.Find(family, DistributionForms.Families) is string near
                ? $"; did you mean \"{near}\"?"
                : $"; possible: {string.Join(", ", DistributionForms.Families)}";
            errors.Add(table.Find("distribution")!.Node.At, $"{name}: unknown distribution {MessageText.Quote(family)}{hint}");
            return null;
        }

        table = new TableReader(node, name, DistributionFormat.Of(family), errors);
        Core.Distributions.Distribution? distribution = family switch
        {
            "choice" => new DiscreteReader(errors).ReadChoice(table, name, domain),
            "sample" => new DiscreteReader(errors).ReadSample(table, name, domain, data),
            _ => new ContinuousReader(errors).Read(table, family, name, domain),
        };
        return distribution is null ? null : new Value.Uncertain(distribution, knowledge, nominal) { Stated = StatedWords.Of(table.Table) };
    }
}
