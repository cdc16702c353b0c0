using AxleRisk.App.Answers;
using AxleRisk.App.Text;
using AxleRisk.Core.Scenarios;
using AxleRisk.Reports.Charts;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Sections;

/// <summary>
/// What went in, as stated: the uncertain inputs with their distributions drawn, the certain ones, what is assumed, and what the
/// scenario says of trip, fleet, evidence and remedies.
/// </summary>
internal static class InputsSection
{
    /// <summary>The columns that the picture stands before: the 5, 50 and 95 % points.</summary>
    private const int PointColumns = 3;

    public static Section Of(ReportStudies studies)
    {
        Scenario scenario = studies.Document.Scenario;
        FactorSet factors = studies.Model.Factors;
        return new Section(
            "Inputs",
            [
                .. UseInputs.Of(scenario), .. Uncertain(factors), .. Correlations(scenario), Certain(scenario),
                .. NoteBlocks.Sources(scenario), .. NoteBlocks.Assumed(Frame.Assumed(scenario)), .. InputNoteBlocks.Of(studies.Document),
                .. TripInputs.Of(scenario), .. FleetInputs.Of(scenario), .. EvidenceInputs.Of(scenario), .. RemedyInputs.Of(scenario),
                .. DecisionInputs.Of(scenario), .. InspectionInputs.Of(scenario),
            ]);
    }

    private static IEnumerable<Block> Uncertain(FactorSet factors)
    {
        if (factors.Factors.IsEmpty)
        {
            return [new Paragraph(CheckText.NothingUncertain)];
        }

        Table table = CheckText.FactorTable(factors).Captioned("The uncertain inputs", "factor", "unit", "kind", "5 %", "50 %", "95 %");
        table = table with { Rows = [.. table.Rows.Zip(factors.Factors, (row, f) => row.SetItem(0, row[0] with { Note = $"{f.Name}: {Meaning(f)}" }))] };
        return
        [
            new Paragraph(
                "Each input below is a distribution. Its picture shows how likely its values are, from the lowest at the left to the highest; "
                    + "the upright line is the value of the base case. Bars are the states of a choice, or the stated shares of the road mix."),
            table
                .WithColumn(table.Columns.Length - PointColumns, new Column("distribution", IsText: true),
                    factors.Factors.Select((f, i) => new Cell("", PictureOf(f, i))))
                .WithColumn(table.Columns.Length + 1, new Column("as stated", IsText: true),
                    factors.Factors.Select(f => new Cell(DistributionText.Of(f)))),
        ];
    }

    private static string Meaning(Factor factor) => factor switch
    {
        ScalarFactor s => s.Input.Quantity.Meaning,
        WordFactor w when CheckedSection.FirstName(w.Name) == Change.EnvironmentName => "what the weld lives in",
        WordFactor => "weld category of the checked section",
        _ => "shares of the distance, leg by leg",
    };

    private static Picture PictureOf(Factor factor, int index) => new(
        $"input-{index + 1:00}", $"{factor.Label}: {DistributionText.Of(factor)}",
        factor.Distribution is { } distribution
            ? DistributionPicture.Of(distribution, factor.Nominal[0])
            : DistributionPicture.OfStates(factor.Nominal, -1));

    private static IEnumerable<Block> Correlations(Scenario scenario) =>
        scenario.Correlations.IsEmpty ? [] : [new ItemList([.. CheckText.Correlations(scenario)])];

    private static Table Certain(Scenario scenario) =>
        CheckText.CertainTable(scenario).Captioned("The certain inputs", "input", "value", "unit", "remark");
}
