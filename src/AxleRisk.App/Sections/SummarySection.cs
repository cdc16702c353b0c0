using AxleRisk.App.Answers;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Core.Analyses.Decisions;
using AxleRisk.Core.Analyses.Fleets;
using AxleRisk.Core.Analyses.Inspections;
using AxleRisk.Core.Analyses.Learning;
using AxleRisk.Core.Analyses.Measurements;
using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Scenarios;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Sections;

/// <summary>The report on one page: the question, the main figure, what decides it and what could be done.</summary>
internal static class SummarySection
{
    private const int FactorsNamed = 3;

    public static Section Of(ReportStudies studies) => new(
        "Summary",
        [
            .. TitleBlockOf(studies.Document.Scenario),
            .. Paragraphs(studies.Document.Scenario.About),
            .. Decision(studies),
            .. studies.LeftOut.Select(l => new Warning(LeftOutText.InSummary(l.Title))),
            .. Usual(studies),
            new ItemList([.. Findings(studies)]),
            new Paragraph($"{Charting.RunOf(studies.Risk.Run)} Each section names the run behind its figures; all intervals are 95 %."),
            .. NoteBlocks.Warnings(studies.Document),
            new Warning(Caution.Sentence),
        ]);

    private static IEnumerable<Block> Paragraphs(string about) =>
        about.Split("\n\n", StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .Select(p => new Paragraph(p.ReplaceLineEndings(" ")));

    /// <summary>What the author states of the report, above all else; who is named signs.</summary>
    private static IEnumerable<Block> TitleBlockOf(Scenario scenario) => scenario.Block.Stated.Any()
        ?
        [
            new ItemList(
            [
                .. scenario.Block.Stated.Select(x => $"{Printable.Capital(x.Key)}: {Printable.Line(x.Text)}"),
                .. scenario.Block.Author.Length + scenario.Block.Examiner.Length + scenario.Block.Reviewer.Length > 0
                    ? new[] { "Signed: " + new string('_', 30) } : [],
            ]),
        ]
        : [];

    /// <summary>The answer to what the scenario's role asks, before all else.</summary>
    private static IEnumerable<Block> Decision(ReportStudies studies) =>
    [
        .. studies.Find<TripResult>() is { } trip ? [TripBlocks.Headline(trip), .. TripBlocks.Worse(trip)] : Array.Empty<Block>(),
        .. studies.Find<FleetResult>() is { } fleet ? FleetBlocks.Decision(fleet) : [],
        .. studies.Find<LearnResult>() is { } learned ? LearnBlocks.Headlines(studies.Document.Scenario, learned) : [],
        .. studies.Find<DecideResult>() is { } decided ? [DecideBlocks.Headline(decided)] : Array.Empty<Block>(),
        .. studies.Find<MeasureResult>() is { } measure ? [MeasureBlocks.Headline(measure)] : Array.Empty<Block>(),
        .. studies.Find<InspectResult>() is { } inspected ? [InspectBlocks.Headline(inspected)] : Array.Empty<Block>(),
        .. studies.Find<CausesResult>() is { } causes ? [CausesBlocks.Headline(causes)] : Array.Empty<Block>(),
    ];

    /// <summary>The risk of the usual use: the main figure, or second where the scenario's role asks for another.</summary>
    private static IEnumerable<Block> Usual(ReportStudies studies)
    {
        Headline headline = RiskBlocks.Headline(studies.Risk);
        return Decision(studies).Any()
            ? [new Paragraph($"For comparison, under the usual use: {headline.Label.ToLowerInvariant()} {headline.Number}; {headline.Details[0]}.")]
            : [headline];
    }

    private static IEnumerable<string> Findings(ReportStudies studies) =>
    [
        .. ModeText.Sentence(studies.Risk) is { } modes ? new[] { modes } : [],
        .. studies.Risk.Lives.Where(l => l.Percent == 10).Select(Life),
        .. studies.Find<RankResult>() is { } ranking ? Deciding(ranking) : [],
        .. studies.Find<CombineResult>()?.Combinations is [var worst, ..] ? new[] { $"The worst combination: {CombineText.Sentence(worst)}" } : [],
        .. studies.Find<RemediesResult>() is { } remedies && studies.Find<TripResult>() is null ? RemediesText.Sentences(remedies) : [],
    ];

    private static string Life(LifeQuantile life) =>
        $"A tenth has failed by {Figures.Km(life.LifeKm.Estimate)} km (B10 life; {Figures.Km(life.LifeKm.Low)} to {Figures.Km(life.LifeKm.High)}).";

    private static IEnumerable<string> Deciding(RankResult ranking)
    {
        RankedFactor[] first = [.. ranking.Factors.Where(f => !double.IsNaN(f.FailureShare.Estimate)).Take(FactorsNamed)];
        if (first.Length == 0)
        {
            yield break;
        }

        yield return "What decides most over who fails, by share: "
            + string.Join(", ", first.Select(f => $"{f.Factor.Label} {RankText.ShareWithRange(f.FailureShare)}")) + ".";
        if (ranking.ByKnowledge.FirstOrDefault(k => k is { Knowledge: Knowledge.Unknown, Factors: > 0 }) is { } unknown)
        {
            yield return $"What is unknown, and better data could settle, has a share of {RankText.ShareWithRange(unknown.Failure)}; "
                + "the rest varies between vehicles.";
        }
    }
}
