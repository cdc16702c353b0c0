using System.Collections.Immutable;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads the further checked sections; axle, detail and fatigue are read before them.</summary>
internal sealed class SectionsReader(ErrorLog errors, QuantityReader quantities, InputCollector inputs)
{
    private static readonly double Ln10 = Math.Log(10);

    /// <summary>Reads the sections at the top of the file; what is wrong is logged.</summary>
    public ImmutableArray<CheckedSection> Read(TableReader root)
    {
        List<CheckedSection> read = [];
        HashSet<string> names = [];
        int place = 0;
        foreach (TomlTable node in root.Inners(CheckedSection.Table) ?? [])
        {
            string unnamed = $"{CheckedSection.Table}[{++place}]";
            string? name = LegName.Read(
                new TableReader(node, unnamed, SectionFormat.Section, errors), names, errors, "a section", "sections");
            if (name == CheckedSection.First)
            {
                errors.Add(node.Find("name")!.Node.At, $"\"{CheckedSection.First}\" is the first checked section, of [axle]; give this one another name");
            }

            if (ReadOne(new TableReader(node, name is null ? unnamed : $"{CheckedSection.Table}.{name}", SectionFormat.Section, errors), name)
                is { } section)
            {
                read.Add(section);
            }
            else if (name is not null)
            {
                inputs.MarkWrong($"{CheckedSection.Table}.{name}");
            }
        }

        return [.. read];
    }

    private CheckedSection? ReadOne(TableReader table, string? name)
    {
        SectionShape shape = new AxleReader(errors, quantities, inputs).Read(table, SectionFormat.Section, name ?? "");
        Detail? detail = new DetailReader(errors).Read(table, isWhole: false);
        OwnCurve? own = detail is { IsOwn: true } ? detail.Own : null;
        Value? scatter = ScatterOfFirst(own);
        bool isStated = table.Find(Quantities.SectionLifeScatter.Key) is not null;
        if (scatter is null && !isStated)
        {
            errors.Add(table.Table.At,
                $"{table.NameOf(Quantities.SectionLifeScatter.Key)} must be stated: it follows from fatigue.miner_sum and fatigue.log10_life_scatter only where the first is certain or lognormal and the second certain or normal");
        }
        else
        {
            quantities.Read(
                table, Quantities.SectionLifeScatter, otherwise: scatter, section: name,
                source: own is null ? "Miner sum and S-N scatter of [fatigue], drawn anew" : "Miner sum of [fatigue] and scatter of the section's own curve, drawn anew");
        }

        table.RejectUnknown(QuantityReader.OtherSection);
        return name is null || detail is null ? null : new CheckedSection(name, shape, detail);
    }

    /// <summary>Miner sum times 10 to the scatter as one value; null where the two together are not lognormal.</summary>
    private Value? ScatterOfFirst(OwnCurve? own)
    {
        Input? miner = inputs.Find(Quantities.MinerSum), stated = inputs.Find(Quantities.LifeScatter);
        if (miner is null || stated is null)
        {
            return new Value.Certain(1); // wrong, and reported already
        }

        // The scatter of the first section's own curve is that curve's alone.
        Value scatter = own is not null ? new Value.Uncertain(new Normal(0, own.StandardDeviation), Knowledge.Varies)
            : stated is { IsDefault: true } ? Quantities.LifeScatter.Default! : stated.Value;
        (double Median, double Sd)? sum = miner.Value switch
        {
            Value.Certain certain => (certain.Number, 0),
            Value.Uncertain { Distribution: Lognormal l } => (l.Median, l.StandardDeviationOfLn),
            _ => null,
        };
        (double Mean, double Sd)? log10 = scatter switch
        {
            Value.Certain certain => (certain.Number, 0),
            Value.Uncertain { Distribution: Normal n } => (n.Mean, n.StandardDeviation),
            _ => null,
        };
        if (sum is not var (median, sdLn) || log10 is not var (mean, sdLog10))
        {
            return null;
        }

        double middle = median * Math.Exp(Ln10 * mean), sd = Math.Sqrt((sdLn * sdLn) + (Ln10 * sdLog10 * Ln10 * sdLog10));
        return sd > 0 ? new Value.Uncertain(new Lognormal(middle, sd), Knowledge.Varies) : new Value.Certain(middle);
    }
}
