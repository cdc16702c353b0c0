using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads the measurements that could still be made.</summary>
internal sealed class MeasurementsReader(ErrorLog errors, EvidenceNames names)
{
    /// <summary>Reads the tables; what is wrong is logged.</summary>
    public ImmutableArray<PlannedMeasurement> Read(TableReader root)
    {
        HashSet<string> taken = [];
        return [.. (root.Inners("measurements") ?? [])
            .Select(t => ReadOne(new TableReader(t, "measurements", DecisionFormat.Measurement, errors), taken)).OfType<PlannedMeasurement>()];
    }

    private PlannedMeasurement? ReadOne(TableReader table, HashSet<string> taken)
    {
        string? name = table.Line("name");
        string? stated = table.Text("factor");
        double? deviation = table.Number("sd");
        long number = table.Whole("number") ?? 1;
        double cost = table.Number("cost") ?? 0;
        table.RejectUnknown();
        Position? at = table.Find("factor")?.Node.At;
        EvidenceNames.Target? target = stated is null ? null : names.Find(stated, at!.Value);
        if (name is not null && !taken.Add(name))
        {
            errors.Add(table.Find("name")!.Node.At, $"there are two measurements with the name {MessageText.Quote(name)}");
            return null;
        }

        if (target is { IsChoice: true })
        {
            errors.Add(at!.Value, $"{target.Name} is a choice, which is known or not and has no accuracy; what knowing it is worth is told without a measurement");
            return null;
        }

        if (target is { Quantity: null })
        {
            errors.Add(at!.Value, $"{target.Name} cannot be measured here");
            return null;
        }

        return target is not null && name is not null && deviation is double sd
            ? new PlannedMeasurement(name, target.Name, sd, (int)number, cost) : null;
    }
}
