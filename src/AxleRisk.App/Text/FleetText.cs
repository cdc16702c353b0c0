using AxleRisk.Core.Analyses.Fleets;

namespace AxleRisk.App.Text;

/// <summary>A fleet's warranty as text: the figure to write down first.</summary>
internal static class FleetText
{
    private const int MostRows = 16;

    public static IEnumerable<string> Lines(FleetResult result) =>
    [
        .. Summary(result), "",
        .. FleetLimitsText.Warranty(result), .. FleetLimitsText.Design(result),
        Style.Heading("Claims since the first sale, by month"), .. Months(result), "",
        .. Wrap.Lines(
            "A vehicle is sold in the middle of its month and makes one claim at most: when its axle fails before its warranty ends. "
            + "The 95 % bands cover chance and what is unknown of the whole fleet, not wrong inputs or the limits of the model.", Layout.Width), "",
    ];

    /// <summary>The method in words, for the line that tells how to repeat the run.</summary>
    public static string Method(FleetSampling s) =>
        (s.Shared.IsEmpty
            ? $"one level: {s.Replicates} replicates of {Figures.Count(s.Inner)} vehicles"
            : $"two levels: {Figures.Count(s.Outer)} outer draws of what is unknown in {s.Replicates} replicates, {Figures.Count(s.Inner)} vehicles in each")
        + (s.Designs == 0 ? "" : $"; {s.Designs} designs with {Figures.Count(s.DesignOuter)} times {Figures.Count(s.DesignInner)} vehicles, the same random numbers in each")
        + (s.IsConditional ? "; Miner sum and S-N scatter of a vehicle averaged exactly" : "; failures counted");

    private static IEnumerable<string> Summary(FleetResult result)
    {
        Prediction claims = result.Claims;
        yield return Style.Heading($"Expected claims: {Number(claims.Expected.Estimate)} of {Figures.Count(result.Fleet.Vehicles)} vehicles ({Figures.Probability(result.ClaimRate.Estimate)})");
        yield return $"  95 % interval {Number(claims.Expected.Low)} to {Number(claims.Expected.High)} (error of sampling)";
        yield return $"  Warranty: {result.Fleet.WarrantyMonths} months or {Figures.Km(result.Fleet.WarrantyKm)} km, whichever ends first; "
            + $"{Figures.Share(result.EndedByDistance)} end by distance";
        if (result.Cost is { } cost)
        {
            yield return $"  Expected cost: {Money(cost.Expected.Estimate)} ({Money(cost.Expected.Low)} to {Money(cost.Expected.High)})";
        }

        string costs = result.Cost is { } c ? $" and cost {Money(c.Low)} to {Money(c.High)}" : "";
        string text = $"Write down: with a probability of 95 % this fleet will make {Figures.Count(claims.Low)} to {Figures.Count(claims.High)} claims{costs}. {Why(result)}";
        foreach (string line in Wrap.Lines(text, Layout.Width - 2, ""))
        {
            yield return "  " + line;
        }
    }

    private static string Why(FleetResult result)
    {
        if (result.Sampling.Shared.IsEmpty)
        {
            return "No factor is marked as unknown, so this width is chance alone.";
        }

        string inner = result.Sampling.InnerShare >= 0.05
            ? $" Up to {Figures.Share(result.Sampling.InnerShare)} of the spread between draws is error of sampling that makes it wider; more --evaluations help." : "";
        return $"{Figures.Share(result.UnknownShare)} of this variance is what nobody knows of the whole fleet ({string.Join(", ", result.Sampling.Shared)}), the rest is chance.{inner}";
    }

    private static IEnumerable<string> Months(FleetResult result)
    {
        var table = new TextTable("to the end of month", "claims so far", "95 % band", "in this month", "95 % band");
        int step = (result.Months.Length + MostRows - 1) / MostRows;
        foreach (ClaimMonth m in result.Months.Where(m => m.Month % step == 0 || m.Month == result.Months.Length))
        {
            table.Add(m.Month.ToString().PadLeft(19), Number(m.SoFar.Expected.Estimate), Band(m.SoFar), Number(m.InMonth.Expected.Estimate), Band(m.InMonth));
        }

        return table.Lines(Layout.Width);
    }

    private static string Band(Prediction p) => $"{Figures.Count(p.Low)} to {Figures.Count(p.High)}";

    private static string Number(double x) => double.IsNaN(x) ? Figures.None : x >= 100 ? x.ToString("#,0") : x.ToString(x >= 10 ? "0.0" : "0.00");

    private static string Money(double x) => double.IsNaN(x) ? Figures.None : x.ToString(Math.Abs(x) >= 100 ? "#,0" : "0.##");
}
