using AxleRisk.App.Text;
using AxleRisk.Core.Scenarios;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Answers;

/// <summary>A checked scenario: its factors and its certain values.</summary>
internal static class CheckBlocks
{
    public static IEnumerable<Block> Of(Scenario scenario, FactorSet factors) =>
    [
        new Paragraph($"Valid: {scenario.Legs.Length} legs, {factors.Factors.Length} factors, required distance {Figures.Exact(scenario.RequiredKm)} km."),
        .. factors.Factors.IsEmpty ? new Block[] { new Paragraph(CheckText.NothingUncertain) } :
        [
            CheckText.FactorTable(factors).Captioned("Factors"),
            new ItemList([.. CheckText.FactorLines(factors)]),
        ],
        new Subheading("Certain values"),
        new ItemList([.. CheckText.CertainLines(scenario)]),
        .. HistoryText.Sentence(scenario) is { } history ? new Block[] { new Paragraph(history) } : [],
        .. scenario.Correlations.IsEmpty ? Array.Empty<Block>() : [new ItemList([.. CheckText.Correlations(scenario)])],
    ];
}
