using System.Text.Json.Nodes;
using AxleRisk.App.Documents.Forms;
using AxleRisk.Core.Analyses.Sweeps;

namespace AxleRisk.App.Documents;

/// <summary>A sweep as JSON and as rows.</summary>
internal static class SweepDocument
{
    public static JsonForm<SweepResult> Form { get; } = new JsonForm<SweepResult>()
        .Number("distance_km", "the distance of the failure probabilities, km", r => r.DistanceKm)
        .Word("event_method", "how they are found: exactly given the damage, or by counting", CommonForms.EventMethods,
            r => r.IsConditional ? "conditional" : "crude")
        .Interval("failure_probability_as_stated", "failure probability with the inputs as stated", r => r.Stated.Probability)
        .List("inputs", "the inputs that are moved, one or two", new JsonForm<SweepAxis>()
            .Text("name", "the input", a => a.Name)
            .Text("unit", "its unit; empty for a pure number", a => a.Unit)
            .NumberOrNull("stated", "its stated value; null for a category", a => a.Stated), r => r.Inputs)
        .List("points", "the points", new JsonForm<(SweepPoint Point, SweepResult Result)>()
            .Key("values", new JsonShape.Map(new JsonShape.TextOrNumber(), MayBeNull: true), "the value of each input by its name; null where it is as stated",
                p => new JsonObject(
                    p.Point.Values.Select((_, i) => KeyValuePair.Create(p.Result.Inputs[i].Name, ValueOf(p.Result, p.Point, i)))))
            .NumberOrNull("relative_life", "life of the base case over that as stated", p => p.Point.RelativeLife)
            .NumberOrNull("relative_damage", "damage of the base case over that as stated", p => p.Point.RelativeDamage)
            .Probability("failure_probability", "failure probability", p => p.Point.Case.Probability)
            .Interval("difference", "of the failure probability from that as stated, paired", p => p.Point.Case.Change!.Difference)
            .Interval("ratio", "of the failure probability to that as stated, paired", p => p.Point.Case.Change!.Ratio)
            .Maybe("together", "what two moved inputs do together over the product of what each does alone; only in a grid",
                CommonForms.Interval,
                p => p.Point.Together).Optional()
            .Number("life_together", "the same of life; only in a grid",
                p => p.Point.LifeTogether).Optional(), r => r.Points.Select(p => (p, r)));

    public static string[] Header { get; } = ["first", "second", "relative_life", "relative_damage", "estimate", "low", "high"];

    public static IEnumerable<string[]> Rows(SweepResult result) => result.Points.Select(p => (string[])
    [
        p.Values[0] ?? "", p.Values.Length > 1 ? p.Values[1] ?? "" : "", Cells.Of(p.RelativeLife), Cells.Of(p.RelativeDamage),
        Cells.Of(p.Case.Probability.Estimate), Cells.Of(p.Case.Probability.Low), Cells.Of(p.Case.Probability.High),
    ]);

    // As stated where it is not moved.
    private static JsonNode? ValueOf(SweepResult result, SweepPoint point, int input) => point.Values[input] is not { } text ? null
        : double.IsNaN(result.Inputs[input].Stated) ? JsonValue.Create(text) : Json.Number(point.Place[input]);
}
