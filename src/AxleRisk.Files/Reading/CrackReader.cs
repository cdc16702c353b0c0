using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads the crack, the ways of looking for it and what a plan is judged by.</summary>
internal sealed class CrackReader(ErrorLog errors, QuantityReader quantities, InputCollector inputs)
{
    private const string Section = Quantities.CrackSection;

    /// <summary>Reads the crack; null where there is none or, with the errors logged, where it is wrong.</summary>
    public Crack? Read(TableReader root)
    {
        if (root.Inner(Section) is not TableReader table)
        {
            if (root.Find(Section) is not null)
            {
                inputs.MarkWrong(Section);
            }

            return null;
        }

        quantities.ReadSection(table, Section);
        double[]? fractions = table.Numbers("fractions"), depths = table.Numbers("depths_mm");
        string source = table.Line("source") ?? "";
        table.RejectUnknown(QuantityReader.OtherSection);
        TomlEntry? initial = table.Find(Quantities.InitialDepth.Key), own = table.Find("fractions") ?? table.Find("depths_mm");
        if ((initial is null) == (own is null))
        {
            errors.Add(own?.KeyAt ?? table.Table.At, own is not null
                ? $"only one of {Section}.{Quantities.InitialDepth.Key} and a curve of your own can be stated"
                : $"{Section}.{Quantities.InitialDepth.Key} is missing; or state a curve of your own with fractions and depths_mm");
            return null;
        }

        if (inputs.Find(Quantities.Wall) is not { } wall)
        {
            if (!inputs.IsWrong("axle.wall_mm"))
            {
                errors.Add(table.Table.At, $"[{Section}] needs axle.wall_mm: the crack ends where it is through the wall");
            }

            return null;
        }

        double left = wall.Value.Nominal - (inputs.Find(Quantities.CorrosionLoss)?.Value.Nominal ?? 0);
        return own is not null ? ReadOwn(table, fractions, depths, left, source)
            : IsBelow(initial!, left) ? new Crack() : null;
    }

    /// <summary>Reads the ways of looking; what is wrong is logged.</summary>
    public ImmutableArray<InspectionMethod> ReadMethods(TableReader root, double requiredKm)
    {
        HashSet<string> names = [];
        InspectionMethod[] read =
        [
            .. (root.Inners("inspections") ?? []).Select(t => ReadMethod(
                new TableReader(t, "inspections", CrackFormat.Method, errors), names, requiredKm)).OfType<InspectionMethod>(),
        ];
        TomlEntry? stated = root.Find("inspections") ?? root.Find("inspection_plan");
        if (stated is not null && root.Find(Section) is null)
        {
            errors.Add(stated.KeyAt, $"{stated.Key} needs a crack to look for; state [{Section}], with {Quantities.InitialDepth.Key}");
        }

        return [.. read];
    }

    /// <summary>Reads what a plan is judged by.</summary>
    public static InspectionTerms ReadTerms(TableReader? table)
    {
        if (table is null)
        {
            return InspectionTerms.None;
        }

        var terms = new InspectionTerms
        {
            Target = table.Number("target"),
            RepairCost = table.Number("repair_cost") ?? 0,
            FalseCallCost = table.Number("false_call_cost") ?? 0,
            FailureCost = table.Number("failure_cost"),
            RepairedLife = table.Number("repaired_life") ?? 1,
        };
        table.RejectUnknown();
        return terms;
    }

    private bool IsBelow(TomlEntry initial, double wallMm)
    {
        Value? value = inputs.Find(Quantities.InitialDepth)?.Value;
        double deepest = Math.Max(value?.Nominal ?? 0, value is Value.Uncertain { Distribution: var d } ? d.Quantile(0.99) : 0);
        if (deepest < wallMm)
        {
            return true;
        }

        errors.Add(initial.Node.At, value is Value.Uncertain
            ? $"{Section}.{initial.Key} must be below the wall of {wallMm:G6} mm, also at its 99 % quantile of {deepest:G6} mm; truncate it with max"
            : $"{Section}.{initial.Key} ({deepest:G6}) must be below the wall of {wallMm:G6} mm");
        return false;
    }

    private Crack? ReadOwn(TableReader table, double[]? fractions, double[]? depths, double wallMm, string source)
    {
        if (fractions is null || depths is null)
        {
            foreach (string missing in (ReadOnlySpan<string>)["fractions", "depths_mm"])
            {
                if (table.Find(missing) is null)
                {
                    errors.Add(table.Table.At, $"{Section}.{missing} is missing: a curve of your own has fractions and depths_mm");
                }
            }

            return null;
        }

        (string Key, string Fault)? wrong = !Rises(fractions) || fractions[0] != 0 || fractions[^1] != 1
            ? ("fractions", "must rise from 0 to 1")
            : !Rises(depths) ? ("depths_mm", "must rise")
            : depths.Length != fractions.Length ? ("depths_mm", $"must be as many as fractions: {fractions.Length}, not {depths.Length}")
            : depths[^1] > wallMm ? ("depths_mm", $"must not go deeper than the wall of {wallMm:G6} mm") : null;
        if (wrong is var (key, fault))
        {
            errors.Add(table.Find(key)!.Node.At, $"{Section}.{key} {fault}");
            return null;
        }

        return new Crack(new CrackCurve([.. fractions], [.. depths], source));
    }

    private InspectionMethod? ReadMethod(TableReader table, HashSet<string> names, double requiredKm)
    {
        string? name = table.Line("name");
        double? a50 = table.Number("a50_mm"), a90 = table.Number("a90_mm");
        double falseCalls = table.Number("false_calls") ?? 0, cost = table.Number("cost") ?? 0;
        double[] at = table.Numbers("at_km") ?? [];
        table.RejectUnknown();
        if (name is not null && !names.Add(name))
        {
            errors.Add(table.Find("name")!.Node.At, $"there are two inspections with the name {MessageText.Quote(name)}");
            return null;
        }

        if (a50 > a90)
        {
            errors.Add(table.Find("a90_mm")!.Node.At,
                $"inspections.a90_mm ({a90:R}) must not be below a50_mm ({a50:R}): what is found in nine looks of ten is not shallower than what is found in half");
            return null;
        }

        if (at.Any(km => km >= requiredKm))
        {
            errors.Add(table.Find("at_km")!.Node.At,
                $"inspections.at_km must be below required_km ({requiredKm:R}), not {at.First(km => km >= requiredKm):R}");
            return null;
        }

        if (at.Distinct().Count() < at.Length)
        {
            errors.Add(table.Find("at_km")!.Node.At, "inspections.at_km names a distance twice");
            return null;
        }

        return name is not null && a50 is double half && a90 is double most
            ? new InspectionMethod(name, new DetectionCurve(half, most), falseCalls, cost, [.. at.Order()]) : null;
    }

    private static bool Rises(double[] x) => Enumerable.Range(1, x.Length - 1).All(i => x[i] > x[i - 1]);
}
