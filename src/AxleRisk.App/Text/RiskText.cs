using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;

namespace AxleRisk.App.Text;

/// <summary>The risk as text.</summary>
internal static class RiskText
{
    public const string DistancesHeading = "Failure probability over distance";
    public const string LivesHeading = "Lives: the distance by which a share has failed";
    public const string LegsHeading = "Share of the damage by leg, mean over all vehicles";

    /// <summary>The method in words, for the line that tells how to repeat the run.</summary>
    public static string Method(RiskResult result) => $"{result.Method.ToString().ToLowerInvariant()} method ({result.MethodReason})";

    /// <summary>The main figure itself.</summary>
    public static string Answer(Interval p) =>
        Figures.IsBound(p) ? $"below {Figures.Probability(p.High)}, not resolved" : Figures.Probability(p);

    /// <summary>What the main figure is of.</summary>
    public static string Question(double requiredKm) => $"Failure probability by {Figures.Exact(requiredKm)} km";

    /// <summary>How sure the main figure is.</summary>
    public static string Precision(RiskResult result) =>
        $"95 % interval {Figures.ProbabilityRange(result.AtRequired.Probability)}; reliability index beta {Beta(result.AtRequired)}";

    /// <summary>A failure probability as a sentence.</summary>
    public static string InWords(Interval probability) => probability.Estimate switch
    {
        double.NaN when !Figures.IsBound(probability) => "nothing is known of it yet.",
        double.NaN => $"fewer than 1 axle in {Figures.OneIn(probability.High, isBound: true)} {Fails}; how many fewer was not resolved.",
        1 when probability.Low == 1 => "every such axle fails before this distance.",
        >= 0.5 and var p => $"about {100 * p:0} of 100 such axles fail before this distance.",
        > 0 and var p when Figures.IsBeyondWords(p) =>
            $"fewer than 1 axle in {Figures.OneIn(p)} {Fails}; what the model leaves out will break one sooner.",
        > 0 and var p => $"about 1 axle in {Figures.OneIn(p)} {Fails}.",
        _ when probability.High == 0 => "no such axle fails before this distance: all that could change it is stated for certain.",
        _ => "no failure was seen in this run; the interval tells how rare it must be.",
    };

    private const string Fails = "fails before this distance";

    public static TextTable DistanceTable(RiskResult result)
    {
        var table = new TextTable(">distance km", "failed", "95 % interval", "beta", "<");
        foreach (DistanceRisk risk in result.Distances)
        {
            string mark = string.Join(" ", new[]
            {
                risk.DistanceKm == result.RequiredKm ? "required" : "", risk.IsResolved ? "" : "not resolved",
                risk.Method == RiskMethod.Importance ? "i" : "",
            }.Where(word => word.Length > 0));
            table.Add(
                Figures.Exact(risk.DistanceKm), Figures.Probability(risk.Probability),
                Figures.ProbabilityRange(risk.Probability), Beta(risk), mark);
        }

        return table;
    }

    public static TextTable LifeTable(RiskResult result)
    {
        var table = new TextTable("life", "km", "95 % interval");
        foreach (LifeQuantile life in result.Lives)
        {
            table.Add($"B{life.Percent:0.#}", Figures.Km(life.LifeKm.Estimate), Range(life.LifeKm, Figures.Km));
        }

        table.Add("every factor at its median", Figures.Km(result.MedianFactorsLifeKm));
        return table;
    }

    public static TextTable LegTable(RiskResult result)
    {
        var table = new TextTable("leg", "share", "95 % interval", "#");
        foreach (LegDamage leg in result.Legs)
        {
            string bar = double.IsNaN(leg.Share.Estimate) ? "" : new string('#', (int)Math.Round(30 * leg.Share.Estimate));
            table.Add(leg.Name, Figures.Share(leg.Share.Estimate), Range(leg.Share, Figures.Share), bar);
        }

        return table;
    }

    private static string Range(Interval interval, Func<double, string> show) =>
        $"{show(interval.Low).Replace(" %", "")} to {show(interval.High)}";

    private static string Beta(DistanceRisk risk) =>
        Figures.IsBound(risk.Probability) ? "> " + risk.Beta.Low.ToString("0.00")
        : double.IsFinite(risk.Beta.Estimate) ? risk.Beta.Estimate.ToString("0.00")
        : Figures.None;
}
