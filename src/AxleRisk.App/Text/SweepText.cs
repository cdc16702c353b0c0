using AxleRisk.Core.Analyses.Sweeps;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Text;

/// <summary>A sweep in words and tables.</summary>
internal static class SweepText
{
    public const string Reading =
        "life, damage: those of the base case, every input at its nominal, over the same as stated; nothing is sampled. times: how many "
        + "times the failure probability as stated. Every point is evaluated with the same samples, all else as stated; a factor that is moved is "
        + "certain at each point. Intervals are 95 %.";

    public const string TogetherReading =
        "together: the ratio of the failure probabilities over what the two ratios, each alone, would give multiplied; above 1 the two make each "
        + "other worse. life together: the same of relative lives, below 1 where the two shorten life more than each alone.";

    /// <summary>Characters of an input's name above its column.</summary>
    private const int LongestHead = 16;

    /// <summary>What is moved.</summary>
    public static string Title(Scenario scenario, IEnumerable<SweptInput> inputs) =>
        Printable.Capital(string.Join(" and ", inputs.Select(i => scenario.LabelOf(i.Input))) + " over a range");

    /// <summary>The method in words.</summary>
    public static string Method(SweepResult result) => $"{result.Points.Length + 1} points, each evaluated with these same samples, "
        + (result.IsConditional ? "exact failure probabilities given the damage averaged" : "failures counted");

    /// <summary>An input with its unit.</summary>
    public static string Axis(SweepAxis axis) => axis.Unit.Length == 0 ? axis.Label : $"{axis.Label}, {axis.Unit}";

    /// <summary>The points with one input moved.</summary>
    public static TextTable Table(SweepResult result, int input)
    {
        var table = new TextTable(">" + Heads(result)[input], "life", "damage", "failed", "95 % interval", "times (95 %)");
        foreach (SweepPoint p in Alone(result, input))
        {
            table.Add(
                p.Values[input]!, Figures.Ratio(p.RelativeLife), Figures.Ratio(p.RelativeDamage), Figures.Probability(p.Case.Probability),
                Figures.ProbabilityRange(p.Case.Probability), ChangeTables.Ratio(p.Case.Change!.Ratio));
        }

        return table;
    }

    /// <summary>The failures with both moved.</summary>
    public static TextTable Failures(SweepResult result)
    {
        var table = new TextTable([">" + Heads(result)[0], Heads(result)[1], "failed", "95 % interval", "together (95 %)"]);
        foreach (SweepPoint p in Both(result))
        {
            table.Add(
                p.Values[0]!, p.Values[1]!, Figures.Probability(p.Case.Probability), Figures.ProbabilityRange(p.Case.Probability),
                ChangeTables.Ratio(p.Together!.Value));
        }

        return table;
    }

    /// <summary>The lives with both moved.</summary>
    public static TextTable Lives(SweepResult result)
    {
        var table = new TextTable([">" + Heads(result)[0], Heads(result)[1], "life", "life together"]);
        foreach (SweepPoint p in Both(result))
        {
            table.Add(p.Values[0]!, p.Values[1]!, Figures.Ratio(p.RelativeLife), Figures.Ratio(p.LifeTogether!.Value));
        }

        return table;
    }

    /// <summary>What the range does, in a sentence.</summary>
    public static string Sentence(SweepResult result, int input)
    {
        SweepPoint[] points = [.. Alone(result, input)];
        SweepPoint least = points.MinBy(p => p.Case.Probability.Estimate)!, most = points.MaxBy(p => p.Case.Probability.Estimate)!;
        string unit = result.Inputs[input].Unit is { Length: > 0 } u ? $" {u}" : "";
        return $"{Printable.Capital(result.Inputs[input].Label)} from {points[0].Values[input]} to {points[^1].Values[input]}{unit}: between "
            + $"{Figures.Probability(least.Case.Probability)} (at {least.Values[input]}) and {Figures.Probability(most.Case.Probability)} "
            + $"(at {most.Values[input]}) fail; the life of the base case is {Figures.Ratio(points.Min(p => p.RelativeLife))} to "
            + $"{Figures.Ratio(points.Max(p => p.RelativeLife))} times that as stated.";
    }

    /// <summary>What the two do together, in a sentence; null for one input or where nothing fails.</summary>
    public static string? Together(SweepResult result)
    {
        SweepPoint[] joint = [.. result.Points.Where(p => p.Together is { } t && double.IsFinite(t.Estimate))];
        if (joint.Length == 0)
        {
            return null;
        }

        SweepPoint most = joint.MaxBy(p => Math.Abs(Math.Log(p.Together!.Value.Estimate)))!;
        return $"Together they do most beyond what each does alone at {most.Values[0]} and {most.Values[1]}: "
            + $"{ChangeTables.Ratio(most.Together!.Value)} times the failures that their ratios multiplied would give.";
    }

    /// <summary>The points at which one input is moved and the other, if there is one, is as stated.</summary>
    public static IEnumerable<SweepPoint> Alone(SweepResult result, int input) =>
        result.Points.Where(p => p.Together is null && p.Values[input] is not null);

    /// <summary>The inputs with their units, in the order of a table's columns.</summary>
    public static string Named(SweepResult result) =>
        string.Join(" and ", result.Inputs.Select(i => i.Unit.Length > 0 ? $"{i.Label} ({i.Unit})" : i.Label));

    private static IEnumerable<SweepPoint> Both(SweepResult result) => result.Points.Where(p => p.Together is not null);

    private static string[] Heads(SweepResult result) =>
        TextTable.Shorten([.. result.Inputs.Select(i => i.Unit.Length > 0 ? i.Unit : i.Label)], LongestHead);
}
