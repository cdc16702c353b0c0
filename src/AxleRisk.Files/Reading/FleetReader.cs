using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads the fleet that is sold under one warranty.</summary>
internal sealed class FleetReader(ErrorLog errors, ValueReader values)
{
    private const string Section = "fleet";

    /// <summary>A sum of shares that is off by more is an error; the rest is rounding.</summary>
    private const double Rounding = 1e-6;

    /// <summary>Reads the table; null where there is none or, with the errors logged, where it is wrong.</summary>
    public Fleet? Read(TomlEntry? entry)
    {
        switch (entry?.Node)
        {
            case null:
                return null;
            case TomlTable table:
                return ReadTable(new TableReader(table, Section, errors));
            case TomlNode other:
                errors.Add(other.At, "fleet must be one table under [fleet]");
                return null;
        }
    }

    private Fleet? ReadTable(TableReader table)
    {
        long? vehicles = WholeNumber(table, table.Require("vehicles"), Fleet.MostVehicles);
        Value? kmPerYear = ReadVarying(table, table.Require("distance_km_per_year"), Domain.Positive, "one owner drives more than another");
        long? months = WholeNumber(table, table.Require("warranty_months"), Fleet.MostMonths);
        double? km = table.RequiredNumber("warranty_km", Domain.Positive);
        ImmutableArray<double>? sales = ReadSales(table);
        TomlEntry? costEntry = table.Find("cost_per_claim");
        Value? cost = ReadVarying(table, costEntry, Domain.NonNegative, "one claim costs more than another");
        double? rate = ReadShare(table, "target_claim_rate");
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

    private long? WholeNumber(TableReader table, TomlEntry? entry, long most)
    {
        if (entry is null)
        {
            return null;
        }

        if (entry.Node is TomlNumber { Number: double number } && number >= 1 && number <= most && number == Math.Floor(number))
        {
            return (long)number;
        }

        errors.Add(entry.Node.At, $"{table.NameOf(entry.Key)} must be a whole number from 1 to {most}, not {entry.Node.Shown}");
        return null;
    }

    /// <summary>A value that can only vary: what all had in common would be something else.</summary>
    private Value? ReadVarying(TableReader table, TomlEntry? entry, Domain domain, string reason)
    {
        if (entry is null)
        {
            return null;
        }

        string name = table.NameOf(entry.Key);
        Value? value = values.Read(entry.Node, name, domain);
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

        long? count = months is null ? 1 : WholeNumber(table, months, Fleet.MostMonths);
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

    private double? ReadShare(TableReader table, string key)
    {
        TomlEntry? entry = table.Find(key);
        if (entry is null || entry.Node is TomlNumber { Number: > 0 and < 1 })
        {
            return (entry?.Node as TomlNumber)?.Number;
        }

        errors.Add(entry.Node.At, $"{table.NameOf(key)} must be a number above 0 and below 1, not {entry.Node.Shown}");
        return null;
    }

    private LifeTarget? ReadLife(TableReader table)
    {
        double? fraction = ReadShare(table, "target_fraction");
        double? km = table.Number("target_km", Domain.Positive);
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
