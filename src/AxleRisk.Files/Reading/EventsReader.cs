using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads the events of a leg: each with how often it comes, and its size as a load of the wheel or as a moment.</summary>
internal sealed class EventsReader(ErrorLog errors, QuantityReader quantities)
{
    /// <summary>Reads them into the inputs; what is wrong is logged.</summary>
    /// <param name="leg">The leg's table.</param>
    /// <param name="index">The leg's index in the inputs.</param>
    /// <param name="format">What they are described as.</param>
    public void Read(TableReader leg, int index, TableFormat format)
    {
        HashSet<string> names = [];
        int place = 0;
        foreach (TomlTable node in leg.Inners("events") ?? [])
        {
            place++;
            string unnamed = leg.NameOf($"events[{place}]");
            string? name = LegName.Read(new TableReader(node, unnamed, format, errors), names, errors, "an event", "events of one leg");
            TableReader table = new(node, name is null ? unnamed : leg.NameOf($"events.{name}"), format, errors);
            Quantity[] stated =
                [.. new[] { Quantities.EventWheelLoad, Quantities.EventMoment }.Where(q => table.Find(q.Key) is not null)];
            quantities.Read(table, Quantities.EventsPerKm, index, happening: name);
            if (stated.Length == 1)
            {
                quantities.Read(table, stated[0], index, happening: name);
            }
            else
            {
                errors.Add(
                    stated.Length == 0 ? node.At : table.Find(Quantities.EventMoment.Key)!.KeyAt,
                    $"{table.NameOf(Quantities.EventWheelLoad.Key)} or {Quantities.EventMoment.Key} must be stated, "
                    + (stated.Length == 0 ? "there is neither" : "not both"));
            }

            table.RejectUnknown();
        }
    }
}
