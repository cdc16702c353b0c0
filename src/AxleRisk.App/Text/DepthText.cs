using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;

namespace AxleRisk.App.Text;

/// <summary>The depth of the crack by distance, as text.</summary>
internal static class DepthText
{
    public const string Heading = "Depth of the crack by distance, over the vehicles that have not failed by then";
    public const string NominalHeading = "Depth of the crack by distance in the base case";

    public static string Reading { get; } =
        $"Depths are in mm: the 5 % point of the vehicles, the median with its 95 % interval, and the 95 % point; of {Figures.Count(CrackDepths.Vehicles)} vehicles drawn beside the run. "
        + " One crack of constant geometry factor, its beginning counted as growth.";

    public static TextTable Table(IEnumerable<DepthAtDistance> depths)
    {
        var table = new TextTable("distance km", "5 %", "median", "95 % interval", "95 %");
        foreach (DepthAtDistance d in depths)
        {
            table.Add(Figures.Km(d.Km), Mm(d.Low.Estimate), Mm(d.Median.Estimate), Range(d.Median), Mm(d.High.Estimate));
        }

        return table;
    }

    public static TextTable Nominal(IEnumerable<(double Km, double Mm)> depths)
    {
        var table = new TextTable("distance km", "depth mm");
        foreach ((double km, double mm) in depths)
        {
            table.Add(Figures.Km(km), Mm(mm));
        }

        return table;
    }

    private static string Range(Interval i) => $"{Mm(i.Low)} to {Mm(i.High)}";

    private static string Mm(double mm) => double.IsNaN(mm) ? Figures.None : mm.ToString("0.00");
}
