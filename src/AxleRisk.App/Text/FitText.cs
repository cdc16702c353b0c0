using AxleRisk.Core.Analyses.Fits;
using AxleRisk.Core.Distributions;
using AxleRisk.Files.Tables;

namespace AxleRisk.App.Text;

/// <summary>Fits in words and tables.</summary>
internal static class FitText
{
    /// <summary>A p-value below which a family is said to fit badly.</summary>
    public const double Bad = 0.05;

    public const string Reading =
        "ln L: logarithm of the likelihood. AICc: corrected AIC; the least is the best, and 2 less is no difference worth a word, 10 a clear "
        + "one. A2: Anderson and Darling's statistic, which weighs the tails; p: the share of samples of that very fit that fit worse. A small p speaks "
        + "against the family; a large one proves nothing with few values. Uniform, log-uniform, triangular, pert and beta are fitted with their "
        + "ends, which the outermost values tell badly and which say that nothing beyond can happen: they stand first only where AICc gains 10 by it.";

    /// <summary>What the answer is about.</summary>
    public static IEnumerable<TextLine> Head(MeasuredTable table) =>
    [
        TextTable.Shorten($"{Printable.Line(table.Columns.Values)}: distributions fitted to measured values", Layout.Width),
        $"{TextTable.Shorten(Printable.Line(table.File), Layout.Width - 22)}  digest {table.Digest[..12]}",
        "",
    ];

    /// <summary>The finding.</summary>
    public static string Best(FitResult result) => Words(result.Fits[0]);

    /// <summary>How many values there are, and of what kind.</summary>
    public static string Values(FitResult result)
    {
        double censored = result.Observations.Where(o => !o.IsExact).Sum(o => o.Count);
        double[] ends = [.. result.Observations.SelectMany(o => new[] { o.Low, o.High }).Where(double.IsFinite)];
        return $"{result.Count:#,0} values from {Figures.Number(ends.Min())} to {Figures.Number(ends.Max())}"
            + (censored > 0 ? $", {censored:#,0} of them known only to lie above, below or between" : "") + ".";
    }

    /// <summary>How sure the choice of the family is.</summary>
    public static string Choice(FitResult result)
    {
        FamilyFit best = result.Fits[0];
        string[] near = [.. result.Fits.Skip(1).Where(f => f.CorrectedAic - best.CorrectedAic < 2).Select(f => f.Distribution.Family)];
        string test = double.IsNaN(best.PValue) ? "" : best.PValue < Bad
            ? $" Even the best fits badly (p = {Figures.Number(best.PValue)}): a mixture of two kinds of parts, or rounded values? Look at the picture."
            : $" It fits (p = {Figures.Number(best.PValue)}).";
        return (double.IsNaN(best.CorrectedAic) ? "There are too few values to choose a family by."
            : near.Length == 0 ? "No other family comes near it by AICc."
            : $"The values do not tell it from {Listed(near)}.") + test;
    }

    /// <summary>The predictive form in words.</summary>
    public static string Predictive(FitResult result, Prediction prediction) =>
        $"The parameters come from {result.Count:#,0} values alone. With what is unknown of them, 90 % of the next values lie from "
        + $"{Figures.Number(prediction.Low)} to {Figures.Number(prediction.High)}: {Figures.Number(prediction.Widening)} times as wide as the fit of the {prediction.Fit.Distribution.Family} says"
        + (prediction.Widening < 1.02 ? ", so the fit itself does." : ". This line has that width:");

    /// <summary>The line for the scenario.</summary>
    public static string[] Line(MeasuredTable table, FitResult result, FamilyFit fit) =>
    [
        $"# {result.Count:0} values{Errors(fit)}",
        $"{Key(table)}{{ distribution = \"{fit.Distribution.Family}\", {string.Join(", ", fit.Parameters.Select(p => $"{p.Name} = {Exact(p.Value)}"))} }}",
    ];

    /// <summary>The line of the predictive form; null where two quantiles determine no member of the family.</summary>
    public static string? Line(MeasuredTable table, Prediction prediction) => prediction.Widening >= 1.02
        && QuantileFit.Families.Contains(prediction.Fit.Distribution.Family)
        ? $"{Key(table)}{{ distribution = \"{prediction.Fit.Distribution.Family}\", quantiles = [[0.05, {Exact(prediction.Low)}], [0.95, {Exact(prediction.High)}]] }}"
        : null;

    /// <summary>All fits.</summary>
    public static TextTable Table(FitResult result)
    {
        var table = new TextTable("family", "<parameters (standard error)", "ln L", "AICc", "A2", "p");
        foreach (FamilyFit f in result.Fits)
        {
            table.Add(
                f.Distribution.Family, string.Join(", ", f.Parameters.Select((p, i) => $"{Short(p.Value)}{Error(f.StandardErrors[i])}")),
                f.LogLikelihood.ToString("0.00"), Two(f.CorrectedAic), Two(f.Statistic), Figures.Number(f.PValue));
        }

        return table;
    }

    /// <summary>The run in words.</summary>
    public static string Run(FitResult result) => result.IsExact
        ? $"Run: p of {string.Join(" or ", result.Fits.Select(f => f.Replicates).Where(r => r > 0).Distinct())} samples of {result.ReplicateSize} values each, seed {result.Seed}; axlerisk {Product.Version}."
        : $"Run: no test of fit, which would need to know when the others would have been censored; seed {result.Seed}; axlerisk {Product.Version}.";

    // The column's name where it can stand as a key.
    private static string Key(MeasuredTable table) =>
        table.Columns.Values.All(c => char.IsAsciiLetterOrDigit(c) || c is '_' or '-') ? table.Columns.Values + " = " : "";

    private static string Words(FamilyFit fit) =>
        $"{fit.Distribution.Family}, {string.Join(", ", fit.Parameters.Select(p => $"{p.Name} {Figures.Number(p.Value)}"))}";

    private static string Errors(FamilyFit fit) => fit.StandardErrors.All(double.IsFinite)
        ? $"; standard errors {string.Join(", ", fit.StandardErrors.Select(Short))}" : "";

    private static string Error(double error) => double.IsFinite(error) ? $" ({Short(error)})" : "";

    private static string Short(double x) => x.ToString("G4");

    private static string Exact(double x) => x.ToString("G6");

    private static string Two(double x) => double.IsNaN(x) ? Figures.Number(x) : x.ToString("0.00");

    private static string Listed(string[] names) =>
        names.Length == 1 ? names[0] : $"{string.Join(", ", names[..^1])} and {names[^1]}";
}
