using System.Collections.Immutable;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Text;

/// <summary>S-N curves in words.</summary>
internal static class CurveText
{
    /// <summary>Where the curves in force come from, where the scenario states them; null where all are a catalogue's.</summary>
    public static string? Source(Scenario scenario)
    {
        string[] sources =
        [
            .. Source(scenario.Detail, ""),
            .. scenario.Sections.SelectMany(s => Source(s.Detail, $" at {Printable.Line(s.Name)}")),
        ];
        return sources.Length == 0 ? null : string.Join(" ", sources);
    }

    /// <summary>
    /// A curve of the scenario's own: <c>mean curve, slopes 3 and 5, knee at 46.77 MPa, standard deviation 0.2 of log10 N</c>.
    /// </summary>
    public static string Of(OwnCurve own)
    {
        SnCurve curve = DetailCurves.Of(own);
        string level = own.DeviationsBelowMean == 0 ? "mean curve"
            : $"design curve, {Figures.Exact(own.DeviationsBelowMean)} standard deviations below the mean";
        string slopes = own.Slopes.Length == 1 ? $"slope {Figures.Number(own.Slopes[0])}"
            : $"slopes {List(own.Slopes)}, {Knees(curve.KneesMPa)}";
        string cutOff = own.CutOffMPa > 0 ? $", cut-off at {Figures.Number(own.CutOffMPa)} MPa" : "";
        return $"{level}, {slopes}{cutOff}, standard deviation {Figures.Number(own.StandardDeviation)} of log10 N";
    }

    /// <summary>Where the slope changes.</summary>
    public static string Knees(ImmutableArray<double> knees) => knees switch
    {
        [] => "one slope",
        [var knee] => $"knee at {Figures.Number(knee)} MPa",
        _ => $"knees at {List(knees)} MPa",
    };

    private static IEnumerable<string> Source(Detail detail, string where)
    {
        if (detail is { IsOwn: true, Own: { } own })
        {
            yield return $"S-N curve of the scenario's own{where} ({Of(own)}): {Printable.Line(own.Source)}";
        }
    }

    private static string List(ImmutableArray<double> numbers) =>
        string.Join(", ", numbers[..^1].Select(Figures.Number)) + (numbers.Length > 1 ? " and " : "") + Figures.Number(numbers[^1]);
}
