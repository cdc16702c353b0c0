using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads the trip: its legs, the distance before it and the risk to be kept.</summary>
/// <param name="errors">Where errors go.</param>
/// <param name="values">Reads the scalars.</param>
/// <param name="usual">The inputs of the usual use.</param>
/// <param name="legs">The legs of the usual use.</param>
internal sealed class TripReader(ErrorLog errors, ValueReader values, InputCollector usual, ImmutableArray<Leg> legs)
{
    private readonly InputCollector inputs = new();

    /// <summary>The inputs of the trip; empty before it was read.</summary>
    public InputCollector Inputs => inputs;

    /// <summary>Reads the table, its remedies and correlations left out; null where there is none or what it is made of is wrong.</summary>
    /// <param name="table">The table; null where there is none or it is wrong.</param>
    /// <param name="isStated">Whether there is anything of its name.</param>
    public Trip? Read(TableReader? table, bool isStated)
    {
        if (table is null)
        {
            if (isStated)
            {
                inputs.MarkWrong("trip");
            }

            return null;
        }

        QuantityReader quantities = new(errors, values, inputs);
        quantities.Read(table, TripQuantities.AlreadyDriven);
        double? target = table.Number("target_risk");
        TripCard? card = ReadCard(table.Inner("card"));
        ImmutableArray<TripLeg> read = ReadLegs(table, quantities);
        table.RejectUnknown();
        if (read.IsEmpty)
        {
            inputs.MarkWrong("trip");
        }

        return read.IsEmpty ? null : new Trip { Legs = read, Inputs = inputs.InOrder(), TargetRisk = target, Card = card };
    }

    private TripCard? ReadCard(TableReader? table)
    {
        if (table is null)
        {
            return null;
        }

        double? step = table.Number("speed_step_km_per_h");
        double? fastest = table.Number("fastest_km_per_h");
        string notes = table.Line("notes") ?? "";
        double[] loads = [];
        if (table.Find("payloads_kg") is { } entry)
        {
            loads = entry.Node is TomlArray { Items: { Count: > 0 and <= 6 } items }
                ? [.. items.OfType<TomlNumber>().Select(n => n.Number).Where(Domain.NonNegative.Contains)] : [];
            if (loads.Length == 0 || loads.Length != ((TomlArray)entry.Node).Items.Count)
            {
                errors.Add(entry.Node.At, "trip.card.payloads_kg must be up to six loads in brackets, such as [200, 350]");
            }
        }

        table.RejectUnknown();
        return new TripCard
        { StepKmPerHour = step ?? TripCard.UsualStep, FastestKmPerHour = fastest, PayloadsKg = [.. loads], Notes = notes };
    }

    private ImmutableArray<TripLeg> ReadLegs(TableReader table, QuantityReader quantities)
    {
        if (table.Find("legs") is null)
        {
            errors.Add(table.Table.At, "the trip has no legs: at least one [[trip.legs]] is needed");
            return [];
        }

        if (table.Inners("legs") is not { } tables)
        {
            return [];
        }

        HashSet<string> names = [];
        TripLeg?[] read = [.. tables.Select((leg, i) => ReadLeg(leg, i, names, quantities))];
        return Array.TrueForAll(read, l => l is not null) ? [.. read.OfType<TripLeg>()] : [];
    }

    private TripLeg? ReadLeg(TomlTable node, int place, HashSet<string> names, QuantityReader quantities)
    {
        string? name = LegName.Read(new TableReader(node, $"trip.legs[{place + 1}]", TripFormat.Leg, errors), names, errors);
        TableReader table = new(node, name is null ? $"trip.legs[{place + 1}]" : Trip.Prefix + name, TripFormat.Leg, errors);
        int index = legs.Length + place;
        quantities.Read(table, TripQuantities.Distance, index);
        if (table.Find(Quantities.Payload.Key) is not null)
        {
            quantities.Read(table, Quantities.Payload, index);
        }

        RoadReader roads = new(errors, quantities);
        bool isLike = table.Find("like") is not null;
        int? like = ReadLike(table);
        char? roadClass = null;
        bool isSound = isLike ? like is not null : roads.Read(table, index, out roadClass);
        if (isLike)
        {
            roads.ReadChanges(table, index, like is { } l ? legs[l] : null);
            RejectIdleCorrugation(table, like);
        }

        new EventsReader(errors, quantities).Read(
            table, index, ((KeyKind.Tables)TripFormat.Leg.Find("events")!.Kind).Of);
        table.RejectUnknown(key => key == "share" ? "; a leg of a trip has its distance, km" : QuantityReader.OtherSection(key));
        return name is null || !isSound ? null : new TripLeg(name, like is { } other ? legs[other].RoadClass : roadClass, like);
    }

    private int? ReadLike(TableReader table)
    {
        if (table.Text("like") is not string other)
        {
            return null;
        }

        string[] names = [.. legs.Select(l => l.Name)];
        if (Array.IndexOf(names, other) is >= 0 and int index)
        {
            return index;
        }

        if (names.Length > 0)
        {
            errors.Add(table.Find("like")!.Node.At,
                $"{table.NameOf("like")} must be a leg of the usual use: {MessageText.List([.. names.Select(MessageText.Quote)], "or")}, not {MessageText.Quote(other)}");
        }

        return null;
    }

    private void RejectIdleCorrugation(TableReader table, int? like)
    {
        bool isCorrugated = table.Table.Find(Quantities.CorrugatedShare.Key) is not null
            || usual.InOrder().Any(i => i.Quantity == Quantities.CorrugatedShare && i.Leg == like && i.Value is not Value.Certain(0));
        foreach (Quantity quantity in new[] { Quantities.CorrugationWavelength, Quantities.CorrugationRms })
        {
            if (like is not null && !isCorrugated && table.Find(quantity.Key) is TomlEntry entry)
            {
                errors.Add(entry.KeyAt, $"{table.NameOf(quantity.Key)} needs a corrugated_share");
            }
        }
    }
}
