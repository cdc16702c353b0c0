using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Numerics;

namespace AxleRisk.App.Text;

/// <summary>What meets a fleet's targets, as text.</summary>
internal static class FleetLimitsText
{
    public static string WarrantyHeading(WarrantyLimits warranty) =>
        $"Target: claims of no more than {Figures.Probability(warranty.Target)} of the fleet";

    public static TextTable WarrantyTable(FleetResult result, WarrantyLimits warranty)
    {
        var table = new TextTable("longest", "limit", "95 % interval", "<holds");
        foreach (WarrantyLimit limit in warranty.Limits)
        {
            Add(table, $"months, at {Figures.Exact(result.Fleet.WarrantyKm)} km", limit.Months, limit.Basis, Months, "months");
            Add(table, $"km, at {result.Fleet.WarrantyMonths} months", limit.Km, limit.Basis, Figures.Km, "km");
        }

        return table;
    }

    /// <summary>How long a warranty may be, by age or by distance, in a line.</summary>
    public static string Longest(FleetResult result, WarrantyLimit limit)
    {
        string[] ways =
        [
            .. limit.Months.Outcome == SearchOutcome.Found
                ? new[] { $"{Months(limit.Months.Value.Estimate)} months at {Figures.Exact(result.Fleet.WarrantyKm)} km" } : [],
            .. limit.Km.Outcome == SearchOutcome.Found
                ? new[] { $"{Figures.Km(limit.Km.Value.Estimate)} km at {result.Fleet.WarrantyMonths} months" } : [],
        ];
        return ways.Length == 0 ? "none found within the range searched" : string.Join(", or ", ways);
    }

    public static string DesignHeading(DesignLimits design) =>
        $"Target: no more than {Figures.Probability(design.Target.Fraction)} failed by {Figures.Exact(design.Target.Km)} km (B{100 * design.Target.Fraction:0.##} life)";

    public static string AsItIs(FleetResult result, DesignLimits design)
    {
        Interval p = result.Headline?.Probability ?? design.AsItIs;
        string own = result.Headline is { } headline ? $". {HeadlineText.Own(headline, design.AsItIs)}" : ".";
        return $"As it is: {Figures.Probability(p.Estimate)}, 95 % interval {Figures.ProbabilityRange(p)}{own}";
    }


    public static TextTable DesignTable(DesignLimits design)
    {
        var table = new TextTable("all else as stated", "limit", "95 % interval", "<holds");
        foreach (DesignLimit limit in design.Limits)
        {
            if (limit.WallMm is { } wall)
            {
                Add(table, $"smallest nominal wall, mm (now {Figures.Number(design.NominalWallMm!.Value)})", wall, limit.Basis,
                    Figures.Number, "mm");
            }

            if (limit.Tolerance is { } tolerance)
            {
                Add(table, "loosest wall tolerance, times what it is", tolerance, limit.Basis, Figures.Ratio, "times");
            }

            if (limit.Category is { } category)
            {
                table.Add("worst weld category", category.Category ?? "none", "", Holds(limit.Basis));
            }
        }

        return table;
    }

    /// <summary>What the table leaves open: the categories beside the limit, and what cannot be searched.</summary>
    public static IReadOnlyList<string> DesignSentences(DesignLimits design) =>
        [
            .. design.Limits.Where(l => l.Category is not null).Select(l => $"{Holds(l.Basis)}: {CategoryWords(l.Category!, design)}"),
            .. Missing(design),
        ];

    /// <summary>Whether the warranty as stated meets the target.</summary>
    public static string WarrantyWords(FleetResult result, WarrantyLimits warranty)
    {
        string now = result.ClaimRate.Estimate <= warranty.Target ? "meets" : "does not meet";
        string confidence = result.Sampling.Shared.IsEmpty ? ""
            : $" With what is unknown, it does so with a probability of {Figures.Share(warranty.Confidence.Estimate)} ({Figures.ProbabilityRange(warranty.Confidence)}).";
        return $"The warranty as stated {now} it on average.{(now == "meets" ? confidence : confidence.Replace("does so", "meets it"))}";
    }

    private static string CategoryWords(CategoryAnswer c, DesignLimits design)
    {
        string failed(Interval p) => $"{Figures.Probability(p.Estimate)} ({Figures.ProbabilityRange(p)})";
        string doubt = c.IsClear(design.Target.Fraction) ? "" : "; this run cannot tell it from the target for certain";
        return c.Outcome switch
        {
            SearchOutcome.NoneMeets =>
                $"no category of the catalogue meets the target; the best, {c.Next}, has {failed(c.NextProbability)}{doubt}.",
            SearchOutcome.EveryMeets => $"every category meets the target; the worst, {c.Category}, has {failed(c.Probability)}{doubt}.",
            _ => $"category {c.Category} has {failed(c.Probability)}, the next worse, {c.Next}, {failed(c.NextProbability)}{doubt}.",
        };
    }

    private static IEnumerable<string> Missing(DesignLimits design) =>
    [
        .. design.NominalWallMm is null ? ["The section modulus is given, so no wall and no tolerance can be searched."]
            : !design.HasWallSpread ? ["The wall is certain, so there is no tolerance to loosen."] : Array.Empty<string>(),
        .. design.Categories.IsEmpty
            ? ["The S-N curve is the scenario's own, so there are no categories to search."] : Array.Empty<string>(),
    ];

    private static void Add(TextTable table, string name, SearchAnswer answer, TargetBasis basis, Func<double, string> show, string unit)
    {
        string limit = answer.Outcome switch
        {
            SearchOutcome.NoneMeets => "none",
            SearchOutcome.EveryMeets => "any",
            _ => show(answer.Value.Estimate),
        };
        string interval = answer.Outcome == SearchOutcome.Found
            ? $"{show(answer.Value.Low)} to {show(answer.Value.High)}"
            : $"{(answer.Outcome == SearchOutcome.NoneMeets ? "none" : "any")} from {Figures.Exact(answer.Low)} to {Figures.Exact(answer.High)} {unit}";
        table.Add(name, limit, interval, Holds(basis));
    }

    private static string Holds(TargetBasis basis) => basis == TargetBasis.Average ? "on average" : "with 90 %";

    private static string Months(double months) => months.ToString("0.0");
}
