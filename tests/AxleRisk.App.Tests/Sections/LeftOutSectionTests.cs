using AxleRisk.App.Sections;
using AxleRisk.App.Studies;
using AxleRisk.App.Tests.Commands;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using AxleRisk.Reports.Content;
using Xunit;

namespace AxleRisk.App.Tests.Sections;

/// <summary>What stands in place of a section that was not made.</summary>
public sealed class LeftOutSectionTests
{
    private const string Asked =
        """

        [evidence]
        survived_km = 1000

        [[remedies]]
        name = "thicker tube"
        cost = 85
        change = { "axle.wall_mm" = 8.5 }

        [trip]
        [[trip.legs]]
        name = "there"
        km = 100
        like = "gravel"

        [fleet]
        vehicles = 100
        distance_km_per_year = 20000
        warranty_months = 24
        warranty_km = 60000
        cost_per_claim = 1000

        [decision]
        over = "warranty"
        """;

    /// <summary>No axle of the benchmark gets this far: no sample agrees with it.</summary>
    private const string Impossible = "\n[evidence]\nsurvived_km = 900000000\n";

    [Fact]
    public void Each_study_but_the_main_one_may_be_missing_and_its_section_keeps_its_place()
    {
        ReportStudies all = Studies(Asked);
        Assert.Empty(all.LeftOut);
        Report whole = ReportComposer.Compose(all);
        Assert.Equal(
            StudyBook.All.Where(s => s != StudyBook.Sweep && s.WhyNot(all.Document.Scenario) is null), all.Plan.Steps.Select(s => s.Study));
        Assert.True(all.Plan.Steps.Length > 7, "nearly all are asked");
        foreach (StudyStep step in all.Plan.Steps.Skip(1))
        {
            ReportStudies lacking = all with
            {
                Made = [.. all.Made.Where(m => m.Step != step)],
                LeftOut = [new LeftOutStudy(step, "of\u001b[1m this")],
            };
            string title = step.Study.Title;
            Report report = ReportComposer.Compose(lacking);
            Assert.Equal(whole.Sections.Select(s => s.Title), report.Sections.Select(s => s.Title));
            Assert.Equal([new Warning("This section was not made: of [1m this.")], report.Sections.Single(s => s.Title == title).Blocks);
            Assert.Contains(report.Sections[0].Blocks, b => b is Warning w && w.Text.Contains($"\"{title}\"", StringComparison.Ordinal));
            Assert.Equal(whole.Files.Select(f => f.Name).Where(n => n != step.Command), report.Files.Select(f => f.Name));
            string[] commands = [.. report.Sections[^1].Blocks.OfType<CommandLines>().Single().Lines];
            Assert.DoesNotContain(commands, c => c.StartsWith($"axlerisk {step.Command} ", StringComparison.Ordinal));
            Assert.Equal(all.Plan.Steps.Length + 2, commands.Length); // report, check, base, and all studies but one
        }
    }

    [Fact]
    public void A_run_ended_early_leaves_nothing_out_but_ends()
    {
        // Ended in the midst of a study whose samples never suffice.
        using var source = new CancellationTokenSource();
        Assert.Single(Studies(Impossible).LeftOut);
        Assert.Throws<OperationCanceledException>(() => Studies(Impossible, source, (plan, done) =>
        {
            if (done > plan.Steps.TakeWhile(s => s.Study != StudyBook.Causes).Sum(s => s.Work))
            {
                source.Cancel();
            }
        }));
    }

    [Fact]
    public void The_title_block_stands_first_and_who_is_named_signs()
    {
        Report report = ReportComposer.Compose(Studies("", head: "author = \"A. Nobody\"\nrevision = \"B\"\n"));
        ItemList block = Assert.IsType<ItemList>(report.Sections[0].Blocks[0]);
        Assert.Equal(["Author: A. Nobody", "Revision: B", "Signed: " + new string('_', 30)], block.Items);
        Assert.IsNotType<ItemList>(ReportComposer.Compose(Studies("")).Sections[0].Blocks[0]);
        ScenarioException refused = Assert.Throws<ScenarioException>(() => Studies("", head: "author = \"\"\"a\nb\"\"\"\n"));
        Assert.Contains("author must be one line", refused.Errors[0].Message, StringComparison.Ordinal);
    }

    private static ReportStudies Studies(
        string asked, CancellationTokenSource? source = null, Action<ReportPlan, long>? progress = null, string head = "")
    {
        ScenarioDocument document = ScenarioReader.ReadFile(FewFactors.With(asked, head));
        var model = new LifeModel(document.Scenario);
        var plan = ReportPlan.Of(model, 200, StudySettings.DefaultSeed);
        return ReportStudies.Run(document, model, plan, new RunOptions
        { Threads = 1, Cancellation = source?.Token ?? CancellationToken.None, Progress = done => progress?.Invoke(plan, done) });
    }
}
