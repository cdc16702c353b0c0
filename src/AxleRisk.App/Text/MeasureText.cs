using AxleRisk.Core.Analyses.Measurements;
using AxleRisk.Core.Numerics;

namespace AxleRisk.App.Text;

/// <summary>What knowing more is worth, as text.</summary>
internal static class MeasureText
{
    public const string FactorsHeading = "Knowing an unknown factor exactly, the most worth first";
    public const string MeasurementsHeading = "The measurements, the greatest net worth first";

    /// <summary>The method in words.</summary>
    public static string Method(MeasureResult result) =>
        $"nested: each factor held at {InformationNodes} values, at each the same {Figures.Count(result.Rows)} rows of all else";

    /// <summary>What to do, in a few words.</summary>
    public static string Choice(MeasureResult result) => result.Measurements switch
    {
        [] => result.Factors is [var first, ..] && Tells(first.Perfect) ? Printable.Capital(first.Factor.Label)
            : result.Factors.IsEmpty && !result.LeftOut.IsEmpty ? "not told" : "none of the factors by itself",
        [{ Net: { Estimate: > 0 } } best, ..] => Printable.Line(best.Measurement.Name),
        [{ Net: null } best, ..] when Tells(best.Value) => Printable.Line(best.Measurement.Name),
        _ => "none of the measurements",
    };

    /// <summary>Why.</summary>
    public static IEnumerable<string> Sentences(MeasureResult result)
    {
        if (result.Band is var (low, high))
        {
            yield return $"There is no decision: the failure probability lies between {Figures.Probability(low)} and {Figures.Probability(high)} "
                + "(5 to 95 %, by what is unknown), and the share is told by which that band is expected to narrow";
        }

        if (result.Measurements is [var best, ..] && best.Net is { } net)
        {
            yield return net.Low > 0
                ? $"\"{Printable.Line(best.Measurement.Name)}\" saves {Worth(best.Value, result)} on average and costs {Money(best.Measurement.Cost, result)}: it pays by {Worth(net, result)}"
                : result.Measurements.All(m => m.Net!.Value.High < 0)
                ? $"No measurement pays: the best, \"{Printable.Line(best.Measurement.Name)}\", saves {Worth(best.Value, result)} on average and costs {Money(best.Measurement.Cost, result)}"
                : $"Whether \"{Printable.Line(best.Measurement.Name)}\" pays this run cannot tell: it saves {Worth(best.Value, result)} on average and costs {Money(best.Measurement.Cost, result)}";
        }

        if (result.Apart is { } apart)
        {
            yield return ApartText.Sentence(apart);
        }

        if (result.Factors is [var first, ..])
        {
            yield return !Tells(first.Perfect)
                ? "This run finds no worth in knowing any one of the unknown factors by itself; of several together nothing is asked"
                : $"Most worth knowing: {first.Factor.Label}, {Worth(first.Perfect, result)}; no measurement of it is worth more";
        }
    }

    public static TextTable Factors(MeasureResult result)
    {
        var table = new TextTable("factor", result.OfDecision ? "worth" : "narrows by", "95 % interval");
        foreach (KnownFactor f in result.Factors)
        {
            table.AddNoted(f.Factor.Name, f.Factor.Label, Number(f.Perfect.Estimate, result), Range(f.Perfect, result));
        }

        return table;
    }

    public static TextTable Measurements(MeasureResult result)
    {
        var table = result.OfDecision
            ? new TextTable("measurement", "worth", "cost", "net", "95 % interval") : new TextTable("measurement", "narrows by", "cost", "95 % interval");
        foreach (WorthOfMeasurement m in result.Measurements)
        {
            string[] cells = [Printable.Line(m.Measurement.Name), Number(m.Value.Estimate, result), DecideText.Money(m.Measurement.Cost)];
            table.Add(m.Net is { } net
                ? [.. cells, DecideText.Money(net.Estimate), DecideText.Range(net)] : [.. cells, Range(m.Value, result)]);
        }

        return table;
    }

    /// <summary>How to read it, and what is left out.</summary>
    public static string Reading(MeasureResult result)
    {
        string worth = result.OfDecision
            ? $"worth: what would be saved on average{(result.Vehicles == 1 ? "" : $", of {Figures.Count(result.Vehicles)} vehicles")}, because another option would sometimes be chosen."
            : "narrows by: the share of the band's width that is expected to go.";
        string[] varying = [.. result.Measurements.Where(m => !m.IsOfUnknown).Select(m => Printable.Line(m.Measurement.Name))];
        return worth
            + (varying.Length == 0 ? "" : $" Of what varies between vehicles, so worth nothing here: {string.Join(", ", varying)}.")
            + (result.LeftOut.IsEmpty ? "" : $" Not told, for they have several parts or are correlated beside what was learned of them: {string.Join(", ", result.LeftOut.Select(f => f.Label))}.");
    }

    private static string InformationNodes => Figures.Count(MeasureAnalysis.Values);

    private static bool Tells(Interval of) => of.Low > 0;

    private static string Worth(Interval of, MeasureResult result) =>
        result.OfDecision ? $"{Money(of.Estimate, result)} ({DecideText.Range(of)})" : $"{Number(of.Estimate, result)} ({Range(of, result)})";

    private static string Number(double x, MeasureResult result) => result.OfDecision ? DecideText.Money(x) : Figures.Share(x);

    private static string Range(Interval of, MeasureResult result) => result.OfDecision ? DecideText.Range(of)
        : $"{Figures.Share(of.Low).Replace(" %", "")} to {Figures.Share(of.High)}";

    private static string Money(double x, MeasureResult result) => Figures.Cost(DecideText.Money(x), result.Currency);
}
