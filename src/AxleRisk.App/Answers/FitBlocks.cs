using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Fits;
using AxleRisk.Core.Numerics;
using AxleRisk.Files.Tables;
using AxleRisk.Reports.Charts;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Answers;

/// <summary>What families say of measured values.</summary>
internal static class FitBlocks
{
    public static IEnumerable<Block> Of(MeasuredTable table, FitResult result)
    {
        FamilyFit best = result.Fits[0];
        Prediction? predictive = result.Predictive;
        string name = Printable.Line(table.Columns.Values);
        return
        [
            new Headline("Best fit", FitText.Best(result), [FitText.Values(result), FitText.Choice(result)]),
            new Subheading("For the scenario"),
            new CommandLines([.. FitText.Line(table, result, best)]),
            .. predictive is null ? [] : new Block[] { new Paragraph(FitText.Predictive(result, predictive)) },
            .. predictive is not null && FitText.Line(table, predictive) is { } line ? new Block[] { new CommandLines([line]) } : [],
            FitText.Table(result).Captioned("All families that allow these values, the best first"),
            new Subheading($"{name}: measured against the {best.Distribution.Family}"),
            Quantiles(result, best, name),
            new Subheading($"{name}: density"),
            Density(result, best, name),
            new Paragraph(FitText.Reading),
        ];
    }

    private static Figure Quantiles(FitResult result, FamilyFit best, string name)
    {
        // The share below a step, at its middle (Hazen).
        double before = 1;
        List<(double X, double Y)> points = [];
        foreach (SurvivalStep step in SurvivalCurve.Of(result.Observations, result.Seed))
        {
            double share = 1 - (0.5 * (before + step.Survival.Estimate));
            points.Add((best.Distribution.Quantile(share), step.At));
            before = step.Survival.Estimate;
        }

        double[] ends = points.Count == 0 ? [0, 1] : [points[0].X, points[^1].X];
        return new Figure(
            new Picture("fit-quantiles", $"Measured {name} over the quantiles of the fit.", new PaperChart(
                [new PaperCurve("as fitted", [.. ends.Select(x => new CurvePoint(x, new Interval(x, x, x)))])],
                [new PaperPoints("measured", [.. points.Select(p => new CurvePoint(p.X, new Interval(p.Y, p.Y, p.Y)))])],
                new ChartAxis($"{name}, as fitted", Figures.Number), new ChartAxis("measured", Figures.Number))),
            "Each value over the quantile of the fit at its rank: on the line the fit is right.")
        { InLines = true };
    }

    private static Figure Density(FitResult result, FamilyFit best, string name)
    {
        double[] ends = [.. result.Observations.SelectMany(o => new[] { o.Low, o.High }).Where(double.IsFinite)];
        (double low, double high) = (Math.Min(ends.Min(), best.Distribution.Quantile(0.005)),
            Math.Max(ends.Max(), best.Distribution.UpperQuantile(0.005)));
        const int most = 120;
        CurvePoint[] curve =
        [
            .. Enumerable.Range(0, most + 1).Select(i => low + ((high - low) * i / most))
                .Select(x => (x, y: best.Distribution.Density(x))).Where(p => double.IsFinite(p.y)).Select(p => Point(p.x, p.y)),
        ];
        // Classes of the values: as many as the square root of their number.
        int classes = Math.Clamp((int)Math.Sqrt(result.Count), 4, 24);
        double least = ends.Min(), width = Math.Max(1e-300, (ends.Max() - least) / classes);
        CurvePoint[] bars =
        [
            .. Enumerable.Range(0, classes).Select(c => Point(
                least + ((c + 0.5) * width),
                result.Observations.Where(o => o.IsExact && Math.Min(classes - 1, (int)((o.Low - least) / width)) == c).Sum(o => o.Count)
                    / result.Count / width)),
        ];
        return new Figure(
            new Picture("fit-density", $"Density of the fit over {name}, and the shares of the values.", new PaperChart(
                [new PaperCurve("as fitted", [.. curve])], [new PaperPoints("measured, by class", [.. bars])],
                new ChartAxis(name, Figures.Number), new ChartAxis("density", Figures.Number))
            { FromZero = true }),
            "The density of the fit, and the share of the known values in classes over their width.")
        { InLines = true };
    }

    private static CurvePoint Point(double x, double y) => new(x, new Interval(y, y, y));
}
