using AxleRisk.Core.Numerics;

namespace AxleRisk.App.Documents;

/// <summary>Cells of a table for other programs: full precision, empty where a number does not exist.</summary>
internal static class Cells
{
    public static string Of(double x) => double.IsFinite(x) ? x.ToString("R") : "";

    public static string[] Row(string figure, string of, Interval interval) =>
        [figure, of, Of(interval.Estimate), Of(interval.Low), Of(interval.High)];
}
