using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads the decision: what a failure costs, which failures count, and what is chosen together.</summary>
internal sealed class DecisionReader(ErrorLog errors, ValueReader values)
{
    private const string Between = " + ";

    /// <summary>Reads the table; null where there is none or, with the errors logged, where it is wrong.</summary>
    public Decision? Read(TableReader? table, ImmutableArray<Remedy> remedies)
    {
        if (table is null)
        {
            return null;
        }

        TomlEntry? cost = table.Find("failure_cost");
        Value? failureCost = cost is null ? null
            : values.Read(cost.Node, "decision.failure_cost", ((KeyKind.Uncertain)DecisionFormat.Decision.Find("failure_cost")!.Kind).Domain);
        bool underWarranty = table.Word("over", FormatWords.DecisionSpans) ?? false;
        long? vehicles = table.Whole("vehicles");
        double? km = table.Number("distance_km");
        if (underWarranty && table.Find("distance_km") is { } stated)
        {
            errors.Add(stated.KeyAt, "decision.distance_km belongs to over = \"distance\"; under the warranty its own limits count");
        }

        HashSet<string> names = [];
        Package[] packages = [.. (table.Inners("packages") ?? [])
            .Select(t => ReadPackage(new TableReader(t, "decision.packages", DecisionFormat.Package, errors), remedies, names)).OfType<Package>()];
        table.RejectUnknown();
        if (failureCost is Value.Uncertain { Distribution: var d } && !(double.IsFinite(d.Mean) && double.IsFinite(d.StandardDeviation)))
        {
            errors.Add(cost!.Node.At, "decision.failure_cost must have a finite mean and standard deviation; truncate it with max");
        }

        return new Decision
        { FailureCost = failureCost, Vehicles = vehicles, Km = km, UnderWarranty = underWarranty, Packages = [.. packages] };
    }

    private Package? ReadPackage(TableReader table, ImmutableArray<Remedy> remedies, HashSet<string> names)
    {
        string? name = table.Line("name");
        string? of = table.Line("remedies");
        double? cost = table.Number("cost");
        table.RejectUnknown();
        if (name is not null && !names.Add(name))
        {
            errors.Add(table.Find("name")!.Node.At, $"there are two packages with the name {MessageText.Quote(name)}");
            return null;
        }

        if (name is null || of is null)
        {
            return null;
        }

        // A remedy may have the sign in its own name.
        string[] parts = remedies.Any(r => r.Name == of) ? [of] : of.Split(Between);
        Remedy?[] found = [.. parts.Select(p => remedies.FirstOrDefault(r => r.Name == p.Trim()))];
        int missing = Array.IndexOf(found, null);
        if (missing < 0)
        {
            return new Package(name, [.. found.OfType<Remedy>()], cost);
        }

        string near = NearestName.Find(parts[missing], [.. remedies.Select(r => r.Name)]) is { } n ? $"; did you mean {MessageText.Quote(n)}?" : "";
        errors.Add(table.Find("remedies")!.Node.At, $"there is no remedy {MessageText.Quote(parts[missing].Trim())}{near}");
        return null;
    }
}
