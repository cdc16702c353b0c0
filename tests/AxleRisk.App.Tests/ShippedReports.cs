using System.Collections.Concurrent;
using System.Xml.Linq;
using AxleRisk.App.Sections;
using AxleRisk.App.Tests.Commands;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using AxleRisk.Reports.Content;
using AxleRisk.Reports.Rendering;

namespace AxleRisk.App.Tests;

/// <summary>The reports of the shipped scenarios with few evaluations, made once for all tests that read them.</summary>
internal static class ShippedReports
{
    private static readonly ConcurrentDictionary<string, Lazy<ReportStudies>> Made = new();

    /// <summary>The scenarios that show a role each.</summary>
    public static IReadOnlyList<string> Names { get; } = ["warranty-clinic-van", "desert-crossing", "broken-housing", "quarry-shuttle"];

    /// <summary>The command that writes the report, without its folder. Evidence needs a sample that agrees with it.</summary>
    public static string[] Command(string scenario) =>
        ["report", Cli.Shipped(scenario), "-n", scenario == "broken-housing" ? "9000" : "300"];

    /// <summary>The studies behind the report of a scenario.</summary>
    public static ReportStudies Studies(string scenario) => Made.GetOrAdd(scenario, s => new Lazy<ReportStudies>(() => Run(s))).Value;

    /// <summary>Its page.</summary>
    public static XElement Page(ReportStudies studies)
    {
        Report report = ReportComposer.Compose(studies);
        string html = HtmlRenderer.Render(report);
        return XDocument.Parse(html[html.IndexOf("<html", StringComparison.Ordinal)..]).Root!;
    }

    private static ReportStudies Run(string scenario)
    {
        ScenarioDocument document = ScenarioReader.ReadFile(Cli.Shipped(scenario));
        var model = new LifeModel(document.Scenario);
        return SharedStudies.Of(
            Command(scenario),
            () => ReportStudies.Run(document, model, ReportPlan.Of(model, long.Parse(Command(scenario)[^1]), 1), new RunOptions()));
    }
}
