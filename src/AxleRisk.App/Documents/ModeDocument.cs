using AxleRisk.App.Documents.Forms;
using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Analyses.Risk;

namespace AxleRisk.App.Documents;

/// <summary>The modes of failure as JSON and as rows.</summary>
internal static class ModeDocument
{
    public static JsonForm<(ModeRisk Mode, RiskResult Result)> OfRisk { get; } = new JsonForm<(ModeRisk Mode, RiskResult Result)>()
        .Text("mode", "the mode of failure", m => Name(m.Mode))
        .List("fails_first", "the probability that it fails first, by distance", new JsonForm<(double Km, double Estimate)>()
            .Number("distance_km", "the distance, km", d => d.Km)
            .NumberOrNull("estimate", "the probability",
                d => d.Estimate), m => m.Result.Distances.Select((d, i) => (d.DistanceKm, m.Mode.First[i])))
        .NumberOrNull("failure_probability_without", "failure probability by the required distance with the mode left out; null where failures are counted",
            m => m.Mode.Without);

    public static JsonForm<ModeOfFailures> OfRank { get; } = new JsonForm<ModeOfFailures>()
        .Text("mode", "the mode of failure", m => m.Mode.Key)
        .Interval("fails_first", "the probability that it fails first, before the required distance", m => m.First)
        .Interval("failure_probability_without", "failure probability with the mode left out; null where failures are counted",
            m => m.Without);

    public static IEnumerable<string[]> Rows(RiskResult result) =>
        result.Modes.SelectMany(m => result.Distances.Select((d, i) =>
            new[] { $"fails_first_{Name(m)}", Cells.Of(d.DistanceKm), Cells.Of(m.First[i]), "", "" }));

    private static string Name(ModeRisk mode) => mode.Mode.Key;
}
