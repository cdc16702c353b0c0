using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Answers;

/// <summary>The two tables of a comparison: failure probabilities and B10 lives, each with its change against the first row.</summary>
internal static class ChangeBlocks
{
    public static IEnumerable<Block> Of(double distanceKm, IReadOnlyList<(string Name, ComparedCase Case)> rows) =>
    [
        ChangeTables.RiskTable(rows).Captioned(ChangeTables.RiskHeading(distanceKm), Headers("failed")),
        ChangeTables.LifeTable(rows).Captioned(ChangeTables.LifeHeading + ChangeTables.TimesOfFirst, Headers("B10 life, km")),
    ];

    private static string[] Headers(string figure) => ["case", figure, "times (95 % interval)", "note"];
}
