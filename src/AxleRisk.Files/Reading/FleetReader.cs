using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads the fleet that is sold under one warranty.</summary>
internal sealed class FleetReader(ErrorLog errors, ValueReader values)
{
    /// <summary>A sum of shares that is off by more is an error; the rest is rounding.</summary>
    private const double Rounding = 1e-6;

    /// <summary>Reads the table; null where there is none or, with the errors logged, where it is wrong.</summary>
    public Fleet? Read(TableReader? table)
    {
        if (table is null)
        {
            return null;
        }

        long? vehicles = table.Whole("vehicles");
        Value? kmPerYear = ReadVarying(table, "distance_km_per_year", "one owner drives more than another");
        long? months = table.Whole("warranty_months");
        double? km = table.Number("warranty_km");
        ImmutableArray<double>? sales = ReadSales(table);
        TomlEntry? costEntry = table.Find("cost_per_claim");
        Value? cost = ReadVarying(table, "cost_per_claim", "one claim costs more than another");
        double? rate = table.Number("target_claim_rate");
        LifeTarget? life = ReadLife(table);
        bool sound = table.RejectUnknown() & RejectEndless(costEntry, cost);
        return sound && vehicles is long n && kmPerYear is not null && months is long m && km is double d
            && sales is ImmutableArray<double> shares
            ? new Fleet
            {
                Vehicles = n,
                KmPerYear = kmPerYear,
                WarrantyMonths = (int)m,
                WarrantyKm = d,
                SaleShares = shares,
                CostPerClaim = cost,
                TargetClaimRate = rate,
                TargetLife = life,
            }
            : null;
    }

    /// <summary>A value that can only vary: what all had in common would be something else.</summary>
    private Value? ReadVarying(TableReader table, string key, string reason)
    {
        if (table.Entry(key) is not TomlEntry entry)
        {
            return null;
        }

        string name = table.NameOf(key);
        Value? value = values.Read(entry.Node, name, ((KeyKind.Uncertain)FleetFormat.Fleet.Find(key)!.Kind).Domain);
        if (value is not Value.Uncertain { Knowledge: Knowledge.Unknown })
        {
            return value;
        }

        errors.Add(((TomlTable)entry.Node).Find("knowledge")!.Node.At, $"{name} can only vary: {reason}");
        return null;
    }

    private bool RejectEndless(TomlEntry? entry, Value? cost)
    {
        if (cost is not Value.Uncertain { Distribution: var d } || (double.IsFinite(d.Mean) && double.IsFinite(d.StandardDeviation)))
        {
            return true;
        }

        errors.Add(entry!.Node.At, "fleet.cost_per_claim must have a finite mean and standard deviation; truncate it with max");
        return false;
    }

    private ImmutableArray<double>? ReadSales(TableReader table)
    {
        TomlEntry? months = table.Find("sales_months");
        TomlEntry? shares = table.Find("sales_shares");
        if (months is not null && shares is not null)
        {
            errors.Add(shares.KeyAt, "only one of fleet.sales_months and fleet.sales_shares can be stated");
            return null;
        }

        if (shares is not null)
        {
            return ReadShares(shares);
        }

        long? count = months is null ? 1 : table.Whole("sales_months");
        return count is long n ? [.. Enumerable.Repeat(1.0 / n, (int)n)] : null;
    }

    private ImmutableArray<double>? ReadShares(TomlEntry entry)
    {
        if (entry.Node is not TomlArray { Items: { Count: > 0 and <= Fleet.MostMonths } items }
            || !items.TrueForAll(i => i is TomlNumber { Number: double x } && Domain.Fraction.Contains(x)))
        {
            errors.Add(entry.Node.At,
                $"fleet.sales_shares must be up to {Fleet.MostMonths} numbers from 0 to 1, one a month, such as [0.2, 0.5, 0.3]");
            return null;
        }

        double[] shares = [.. items.Cast<TomlNumber>().Select(i => i.Number)];
        double sum = shares.Sum();
        if (Math.Abs(sum - 1) <= Rounding)
        {
            return [.. shares.Select(s => s / sum)];
        }

        errors.Add(entry.Node.At, $"fleet.sales_shares must add up to 1, not to {sum:G6}");
        return null;
    }

    private LifeTarget? ReadLife(TableReader table)
    {
        double? fraction = table.Number("target_fraction");
        double? km = table.Number("target_km");
        TomlEntry? one = table.Find("target_fraction");
        TomlEntry? other = table.Find("target_km");
        if ((one is null) != (other is null))
        {
            errors.Add((one ?? other)!.KeyAt,
                "fleet.target_fraction and fleet.target_km belong together: the share that may have failed by a distance");
        }

        return fraction is double f && km is double d ? new LifeTarget(f, d) : null;
    }
}
