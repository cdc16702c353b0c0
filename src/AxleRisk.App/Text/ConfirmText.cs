using AxleRisk.Core.Analyses.Confirmation;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Studies;

namespace AxleRisk.App.Text;

/// <summary>The comparison with simulation in time as text.</summary>
internal static class ConfirmText
{
    // Less than the counting formula's own error: the models agree.
    private const double Agreement = 0.05;

    /// <summary>The run in words.</summary>
    public static string Run(ConfirmationResult result) =>
        $"Run: {result.Records} records of {Figures.Number(result.Question.KmPerRecord)} km a leg, point and ride, {result.SimulatedSeconds / 3600:#,0} hours of "
            + $"driving in all; seed {result.Question.Seed}; model {LifeModel.Version}, axlerisk {Product.Version}. Intervals are of 95 %, from the records.";

    /// <summary>That it was ended early; null where it was not.</summary>
    public static string? Partial(ConfirmationResult result) => result.IsPartial
        ? $"PARTIAL: ended early, after {result.Points.Length} of {result.Question.Points + 1} points." : null;

    /// <summary>The line for the scenario file.</summary>
    public static string TomlLine(ConfirmationResult result) => TomlLine(result.RatioMedian, result.RatioCov);

    /// <summary>The line for the table of a leg in the scenario file.</summary>
    public static string TomlLine(LegRatio leg) => TomlLine(leg.Median, leg.Cov) + " # " + leg.Leg;

    private static string TomlLine(double median, double cov) =>
        $"damage_ratio = {{ distribution = \"lognormal\", median = {Short(median)}, cov = {Short(cov)}, knowledge = \"unknown\" }}";

    /// <summary>A step of the simulation away from the linear ride, in words.</summary>
    public static string StepInWords(RideStepKind step, ConfirmationQuestion question) => step switch
    {
        RideStepKind.TwoRateDamper => "a damper of two rates",
        RideStepKind.BumpStop when double.IsFinite(question.BumpClearanceMm) =>
            $"a bump stop after {Figures.Exact(question.BumpClearanceMm)} mm",
        RideStepKind.BumpStop => "the scenario's bump stop",
        _ => "wheel lift-off",
    };

    /// <summary>What the simulation says of the fast model, in words.</summary>
    public static IEnumerable<string> Verdict(ConfirmationResult result)
    {
        ConfirmedPoint first = result.Points[0];
        double ratio = first.Ratio.Estimate;
        string fast = Math.Abs(ratio - 1) <= Agreement
            ? "The fast model agrees with the simulation within 5 %."
            : ratio < 1
                ? $"The fast model is on the safe side: it computes {100 * (1 / ratio - 1):0} % more damage than the simulation."
                : $"The fast model is on the UNSAFE side: the simulation finds {100 * (ratio - 1):0} % more damage.";
        IEnumerable<string> steps = result.Steps.Select((step, i) =>
            $"{(i == 0 ? "With" : "Then, with")} {StepInWords(step, result.Question)}{(i == 0 ? "" : " too")}, {Relation(first.Steps[i].Estimate, i == 0 ? "the linear ride" : "the step before")}.");
        string strikes = Math.Abs(first.FastStrikes - 1) < 0.005 ? ""
            : $" The fast model itself adds {100 * (first.FastStrikes - 1):0} % for strikes on the stop.";
        yield return $"{fast} Counting cycle by cycle, {Relation(1 / first.Fast.Estimate, "the fast model's formula")}. {string.Join(' ', steps)}{strikes}";
        if (result.Points.Length > 1)
        {
            (ConfirmedPoint least, ConfirmedPoint most) = (result.Points.MinBy(p => p.Ratio.Estimate)!,
                result.Points.MaxBy(p => p.Ratio.Estimate)!);
            yield return $"Over all points the ratio lies between {Figures.Ratio(least.Ratio.Estimate)} ({least.Name}) and {Figures.Ratio(most.Ratio.Estimate)} ({most.Name}).";
        }
    }

    private static string Relation(double ratio, string than) =>
        Math.Abs(ratio - 1) < 0.005 ? $"the damage is that of {than}"
        : ratio > 1 ? $"the damage is {100 * (ratio - 1):0} % above that of {than}"
        : $"the damage is {100 * (1 - ratio):0} % below that of {than}";

    /// <summary>What each step of the simulation does to the damage.</summary>
    public static TextTable StepTable(ConfirmationResult result, ConfirmedPoint point)
    {
        var table = new TextTable("simulated", "over the row above", "over the linear ride");
        table.Add("linear ride, over the formula", Index(Inverse(point.Fast)), "1");
        double sofar = 1;
        foreach ((RideStepKind step, Interval over) in result.Steps.Zip(point.Steps))
        {
            sofar *= over.Estimate;
            table.Add($"{(step == result.Steps[0] ? "with" : "and")} {StepInWords(step, result.Question)}", Index(over),
                Figures.Ratio(sofar));
        }

        return table;
    }

    private static Interval Inverse(Interval x) => new(1 / x.Estimate, 1 / x.High, 1 / x.Low);

    public static TextTable LegTable(ConfirmationResult result, ConfirmedPoint point)
    {
        // With strikes the page has no room for the linear ride; the JSON document has it.
        bool stop = result.Steps.Contains(RideStepKind.BumpStop);
        var table = new TextTable("leg", "of damage", "fast/simulated", stop ? "strikes/km" : "fast/linear", "off ground");
        foreach (ConfirmedLeg leg in point.Legs)
        {
            table.Add(
                leg.Name, Figures.Share(leg.DamageShare), Index(leg.FastOverReference),
                stop ? Figures.Number(leg.StrikesPerKm) : Index(leg.FastOverLinear), OffGround(leg.OffGroundShare));
        }

        return table;
    }

    public static TextTable PointTable(ConfirmationResult result)
    {
        var table = new TextTable("point", "life km", "true/computed", "counting alone", "off ground");
        foreach (ConfirmedPoint point in result.Points)
        {
            table.Add(point.Name, Figures.Km(point.LifeKm), Index(point.Ratio), Index(Inverse(point.Fast)),
                OffGround(point.Legs.Max(l => l.OffGroundShare)));
        }

        return table;
    }

    private static string OffGround(double share) => share == 0 ? "0" : share < 5e-5 ? "<0.01 %" : (100 * share).ToString("0.00") + " %";

    public static string Index(Interval i) => Figures.Index(i);

    private static string Short(double x) => x.ToString("G3");
}
