using System.Collections.Immutable;
using AxleRisk.App.Documents;
using AxleRisk.App.Text;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Sections;

/// <summary>Puts the sections of a report in order, and the tables that go with it.</summary>
internal static class ReportComposer
{
    public static Report Compose(ReportStudies studies)
    {
        DataFile[] files = [.. Files(studies)];
        return Report.Of(Printable.Line(studies.Document.Scenario.Title), Sections(studies, files.Select(f => f.Name)), files);
    }

    private static IEnumerable<Section> Sections(ReportStudies studies, IEnumerable<string> files) =>
        new[]
        {
            SummarySection.Of(studies),
            InputsSection.Of(studies),
            BaseSection.Of(studies.Base),
            RiskSection.Of(studies.Risk, studies.Curve),
            studies.Ranking is { } ranking ? RankSection.Of(ranking) : LeftOutSection.Of(studies, studies.Plan.Rank),
            studies.Combined is { } combined ? CombineSection.Of(combined) : LeftOutSection.Of(studies, studies.Plan.Combine),

            // What one role asks, where the scenario holds it.
            studies.Trip is { } trip ? TripSection.Of(trip) : LeftOutSection.Of(studies, studies.Plan.Trip),
            studies.Fleet is { } fleet ? FleetSection.Of(fleet) : LeftOutSection.Of(studies, studies.Plan.Fleet),
            studies.Causes is { } causes ? CausesSection.Of(causes) : LeftOutSection.Of(studies, studies.Plan.Causes),
            studies.Remedies is { } remedies
                ? RemediesSection.Of(studies.Document.Scenario, remedies) : LeftOutSection.Of(studies, studies.Plan.Remedies),
            ClosingSections.Method,
            ClosingSections.Cautions,
            RepeatSection.Of(studies, files),
        }.OfType<Section>();

    private static IEnumerable<DataFile> Files(ReportStudies studies) =>
        new[]
        {
            File("inputs", CheckDocument.Header, CheckDocument.Rows(studies.Model.Factors)),
            File("base", BaseDocument.Header, BaseDocument.Rows(studies.Base)),
            File("risk", RiskDocument.Header, RiskDocument.Rows(studies.Risk)),
            File("curve", RiskDocument.Header, RiskDocument.CurveRows(studies.Curve)),
            studies.Ranking is { } ranking ? File("rank", RankDocument.Header, RankDocument.Rows(ranking)) : null,
            studies.Combined is { } combined ? File("combine", CombineDocument.Header, CombineDocument.Rows(combined)) : null,
            studies.Causes is { } causes ? File("causes", CausesDocument.Header, CausesDocument.Rows(causes)) : null,
            studies.Remedies is { } remedies ? File("remedies", RemediesDocument.Header, RemediesDocument.Rows(remedies)) : null,
            studies.Trip is { } trip ? File("trip", TripDocument.Header, TripDocument.Rows(trip)) : null,
            studies.Fleet is { } fleet ? File("fleet", FleetDocument.Header, FleetDocument.Rows(fleet)) : null,
        }.OfType<DataFile>();

    private static DataFile File(string name, string[] header, IEnumerable<string[]> rows) =>
        new(name, [.. header], [.. rows.Select(r => r.ToImmutableArray())]);
}
