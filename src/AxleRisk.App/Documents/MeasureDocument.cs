using AxleRisk.App.Documents.Forms;
using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Analyses.Measurements;
using AxleRisk.Core.Numerics;

namespace AxleRisk.App.Documents;

/// <summary>What knowing more is worth, as JSON and as rows.</summary>
internal static class MeasureDocument
{
    public static JsonForm<MeasureResult> Form { get; } = new JsonForm<MeasureResult>()
        .Word("worth_is", "what worth is: the cost that is saved on average, or the share by which the band of the failure probability narrows",
            ["saved_cost", "narrower_band"], r => r.OfDecision ? "saved_cost" : "narrower_band")
        .Text("currency", "what costs are stated in", r => r.Currency).Optional()
        .Whole("vehicles", "the number of vehicles that costs are of", r => r.Vehicles)
        .List("factors", "the unknown factors, the most worth first", new JsonForm<KnownFactor>()
            .Text("name", "the factor", f => f.Factor.Name)
            .Interval("perfect", "what knowing it exactly is worth", f => f.Perfect), r => r.Factors)
        .List("measurements", "the stated measurements, the greatest net worth first", new JsonForm<WorthOfMeasurement>()
            .Text("name", "its name", m => m.Measurement.Name)
            .Text("factor", "what is measured", m => m.Measurement.Factor)
            .Number("cost", "what it costs", m => m.Measurement.Cost)
            .Interval("value", "what it is worth", m => m.Value)
            .Maybe("net", "the same less its cost; null without a decision", CommonForms.Interval, m => m.Net), r => r.Measurements)
        .Object("apart", "what would tell the two leading explanations of the evidence apart; null where there are no two", new JsonForm<Apart>()
            .Text("first", "the likelier explanation", a => a.First)
            .Text("second", "the next", a => a.Second)
            .Number("one_of_them", "the probability that one of them holds without the other, given the evidence", a => a.OneOfThem)
            .Number("open_bits", "bits that are open between them", a => a.Open)
            .List("measurements", "the stated measurements, made on this vehicle", Telling("its name", "what it is expected to tell, bits"),
                a => a.Measurements.Select(m => (m.Measurement.Name, m.Bits, a.ShareOf(m.Bits))))
            .List("factors", "what the explanations speak of", Telling("its name", "what knowing it exactly is expected to tell, bits"),
                a => a.Factors.Select(f => (f.Name, f.Bits, a.ShareOf(f.Bits)))), r => r.Apart).OrNull()
        .Texts("left_out", "unknown factors that are not told of, for they have several columns or are correlated beside what was learned of them",
            r => r.LeftOut.Select(f => f.Name))
        .NumberOrNull("band_low", "5 % point of the failure probability over what is unknown; null with a decision", r => r.Band?.Low)
        .NumberOrNull("band_high", "95 % point; null with a decision", r => r.Band?.High)
        .Whole("values", "values at which each factor is held", _ => MeasureAnalysis.Values)
        .Whole("rows", "rows drawn at each value of a factor", r => r.Rows);

    private static JsonForm<(string Name, Interval Bits, double Share)> Telling(string name, string bits) =>
        new JsonForm<(string Name, Interval Bits, double Share)>()
            .Text("name", name, t => t.Name)
            .Interval("bits", bits, t => t.Bits)
            .Number("share", "the share of the open bits", t => t.Share);

    public static string[] Header { get; } = ["figure", "of", "estimate", "low", "high"];

    public static IEnumerable<string[]> Rows(MeasureResult result) =>
    [
        .. result.Factors.Select(f => Cells.Row("perfect", f.Factor.Name, f.Perfect)),
        .. result.Measurements.Select(m => Cells.Row("value", m.Measurement.Name, m.Value)),
        .. result.Measurements.Where(m => m.Net is not null).Select(m => Cells.Row("net", m.Measurement.Name, m.Net!.Value)),
        .. result.Apart?.Measurements.Select(m => Cells.Row("bits", m.Measurement.Name, m.Bits)) ?? [],
        .. result.Apart?.Factors.Select(f => Cells.Row("bits", f.Name, f.Bits)) ?? [],
    ];
}
