using AxleRisk.Core.Analyses.Fleets;

namespace AxleRisk.App.Text;

/// <summary>A fleet's warranty as text: the figure to write down first.</summary>
internal static class FleetText
{
    private const int MostRows = 16;

    /// <summary>The share from which on an error of the band is told.</summary>
    private const double Negligible = 0.05;

    public const string MonthsHeading = "Claims since the first sale, by month";
    public const string Reading =
        "A vehicle is sold in the middle of its month and makes one claim at most: when its axle fails before its warranty ends. "
        + "The 95 % bands cover chance and what is unknown of the whole fleet, not wrong inputs or the limits of the model.";

    /// <summary>Of how many, and as a share.</summary>
    public static string OfFleet(FleetResult result) =>
        $"of {Figures.Count(result.Fleet.Vehicles)} vehicles ({Figures.Probability(result.ClaimRate.Estimate)})";

    /// <summary>The interval of the expected claims.</summary>
    public static string Precision(FleetResult result) =>
        $"95 % interval {Number(result.Claims.Expected.Low)} to {Number(result.Claims.Expected.High)} (error of sampling)";

    /// <summary>The warranty, and which of its ends comes first.</summary>
    public static string Terms(FleetResult result) =>
        $"Warranty: {result.Fleet.WarrantyMonths} months or {Figures.Exact(result.Fleet.WarrantyKm)} km, whichever ends first; {Figures.Share(result.EndedByDistance)} end by distance";

    /// <summary>The expected cost of all claims; null where none is stated.</summary>
    public static string? ExpectedCost(FleetResult result) =>
        result.Cost is { } cost
            ? $"Expected cost: {Money(cost.Expected.Estimate, result.Currency)} ({Money(cost.Expected.Low)} to {Money(cost.Expected.High, result.Currency)})"
            : null;

    /// <summary>What to write down: the predictive intervals.</summary>
    public static string WriteDown(FleetResult result) =>
        $"Write down: with a probability of 95 % this fleet will make {Band(result.Claims)} claims{(result.Cost is { } c ? $" and cost {Money(c.Low)} to {Money(c.High, result.Currency)}" : "")}.";

    /// <summary>The method in words, for the line that tells how to repeat the run.</summary>
    public static string Method(FleetSampling s) =>
        (s.Shared.IsEmpty
            ? $"one level: {s.Replicates} replicates of {Figures.Count(s.Inner)} vehicles"
            : $"two levels: {Figures.Count(s.Outer)} outer draws of what is unknown in {s.Replicates} replicates, {Figures.Count(s.Inner)} vehicles in each")
        + (s.Designs == 0 ? ""
            : $"; {s.Designs} designs with {Figures.Count(s.DesignOuter)} times {Figures.Count(s.DesignInner)} vehicles, the same random numbers in each")
        + (!s.IsConditional ? "; failures counted"
            : s.Modes == 1 ? "; Miner sum and S-N scatter of a vehicle averaged exactly"
            : "; what is left to chance in each mode of a vehicle averaged exactly");

    /// <summary>Why the predictive interval is as wide as it is.</summary>
    public static string Why(FleetResult result)
    {
        if (result.Sampling.Shared.IsEmpty)
        {
            return "No factor is marked as unknown, so this width is chance alone.";
        }

        string inner = result.Sampling.InnerShare >= Negligible
            ? $" Of the variance between draws {Figures.Share(result.Sampling.InnerShare)} was error of sampling and is taken out." : "";
        string residue = result.Sampling.Residue >= Negligible
            ? $" The band may still be up to {Figures.Share(result.Sampling.Residue)} too wide or too narrow for it; more --evaluations help." : "";
        return $"{Figures.Share(result.UnknownShare)} of this variance is what nobody knows of the whole fleet ({string.Join(", ", result.Sampling.Shared.Select(f => f.Label))}), the rest is chance.{inner}{residue}";
    }

    public static TextTable MonthTable(FleetResult result)
    {
        var table = new TextTable(">to the end of month", "claims so far", "95 % band", "in this month", "95 % band");
        int step = (result.Months.Length + MostRows - 1) / MostRows;
        foreach (ClaimMonth m in result.Months.Where(m => m.Month % step == 0 || m.Month == result.Months.Length))
        {
            table.Add(m.Month.ToString(), Number(m.SoFar.Expected.Estimate), Band(m.SoFar),
                Number(m.InMonth.Expected.Estimate), Band(m.InMonth));
        }

        return table;
    }

    public static string Band(Prediction p) => $"{Figures.Count(p.Low)} to {Figures.Count(p.High)}";

    /// <summary>A number of claims, which need not be whole.</summary>
    public static string Number(double x) =>
        double.IsNaN(x) ? Figures.None : x >= 100 ? x.ToString("#,0") : x.ToString(x >= 10 ? "0.0" : "0.00");

    private static string Money(double x, string? currency = null) =>
        double.IsNaN(x) ? Figures.None : Figures.Cost(x.ToString(Math.Abs(x) >= 100 ? "#,0" : "0.##"), currency);
}
