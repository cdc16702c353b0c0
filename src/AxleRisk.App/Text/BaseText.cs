using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Text;

/// <summary>The base case as text.</summary>
internal static class BaseText
{
    public const string OneAtATimeHeading = "One factor at a time: life over the life of the base case";

    public const string Label = "Life of the base case, everything at its nominal";

    public static string Answer(BaseCaseResult result) => $"{Figures.Km(result.LifeKm)} km";

    public static IReadOnlyList<string> Facts(BaseCaseResult result) =>
    [
        $"every factor at its median: {Figures.Km(result.MedianFactorsLifeKm)} km",
        $"damage per 1,000 km {Figures.Number(1000 * result.DamagePerKm)}; stress {Figures.Number(result.Axle!.StressPerKnMPa)} MPa per kN of wheel force",
        $"body bounce {result.Axle!.BodyBounceHz:0.00} Hz, wheel hop {result.Axle!.WheelHopHz:0.0} Hz",
        $"S-N curve {Name(result.Axle!.Curve)}{Place(result.Axle!.Curve)}: {CurveText.Knees(result.Axle!.Curve.KneesMPa)}; lives are on its mean curve",
        .. HistoryText.Told(result.Axle!.Stretch) is { } told ? [told] : Array.Empty<string>(),
    ];

    private static string Name(SnCurve curve) =>
        curve.Catalogue == Detail.OwnCatalogue ? "of the scenario's own" : $"{curve.Catalogue} {curve.Category}";

    private static string Place(SnCurve curve) => curve.Environment == Surroundings.Air ? "" : $", {curve.Environment}";

    public static TextTable LegTable(BaseCaseResult result)
    {
        var table = new TextTable("leg", "share", "km/h", "stress RMS MPa", "cycles/s", "of damage");
        foreach (BaseLeg leg in result.Axle!.Legs)
        {
            table.Add(
                leg.Name, Figures.Share(leg.Share), Figures.Number(leg.SpeedKmPerH), Figures.Number(leg.StressRmsMPa),
                leg.UpcrossingsPerSecond.ToString("0.0"), Figures.Share(leg.DamageShare));
        }

        return table;
    }

    public static TextTable SectionTable(BaseCaseResult result)
    {
        var table = new TextTable("section", "MPa per kN", "<S-N curve", "damage per 1,000 km, new");
        foreach (BaseSection s in result.Axle!.Sections)
        {
            table.Add(
                ModeText.SectionName(s.Name), Figures.Number(s.StressPerKnMPa), Name(s.Curve) + Place(s.Curve),
                Figures.Number(1000 * s.DamagePerKm));
        }

        return table;
    }

    public static TextTable EventTable(BaseCaseResult result)
    {
        var table = new TextTable("event", "<leg", "a km", "of leg's damage", "of all damage");
        foreach (BaseEvent e in result.Axle!.Events)
        {
            table.Add(e.Name, e.Leg, Figures.Number(e.PerKm), Figures.Share(e.ShareOfLeg), Figures.Share(e.Share));
        }

        return table;
    }

    public static TextTable OneAtATimeTable(BaseCaseResult result)
    {
        var table = new TextTable("factor", "5 % point", "life", "95 % point", "life", "+10 %");
        foreach (OneAtATime f in result.Factors)
        {
            table.AddNoted(
                f.Factor.Name, f.Factor.Label, f.Factor.Show(f.Low), Figures.Ratio(f.LifeAtLow), f.Factor.Show(f.High),
                Figures.Ratio(f.LifeAtHigh), Figures.Ratio(f.LifeAtPlusTenPercent));
        }

        return table;
    }
}
