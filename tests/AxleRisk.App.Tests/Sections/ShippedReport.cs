using System.Collections.Concurrent;
using AxleRisk.App.Sections;
using AxleRisk.App.Tests.Commands;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Tests.Sections;

/// <summary>The report of a shipped scenario with two sweeps and few evaluations, made once for all tests that read it.</summary>
internal sealed record ShippedReport(ScenarioDocument Document, ReportStudies Studies, Report Report)
{
    private static readonly ConcurrentDictionary<string, Lazy<ShippedReport>> Made = new();

    public static ShippedReport Of(string name) => Made.GetOrAdd(name, n => new Lazy<ShippedReport>(() => Make(n))).Value;

    private static ShippedReport Make(string name)
    {
        ScenarioDocument document = ScenarioReader.ReadFile(Cli.Shipped(name));
        var model = new LifeModel(document.Scenario);
        string leg = document.Scenario.Legs[0].Name;
        ReportPlan plan = ReportPlan.Of(model, 400, 1,
            [new("axle.wall_mm", "5", "8", 2), new($"legs.{leg}.speed_km_per_h", "40", "60", 2)]);
        var studies = ReportStudies.Run(document, model, plan, new RunOptions());
        return new ShippedReport(document, studies, ReportComposer.Compose(studies));
    }
}
