using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Forms;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Tests.Commands;
using Xunit;

namespace AxleRisk.App.Tests.Screens.Pages;

public sealed class ReportPageTests
{
    private readonly string place = TemporaryFolder.New();

    [Fact]
    public void It_writes_the_tables_of_the_report_command_and_says_where_they_are()
    {
        using Session session = Open();
        string folder = Path.Combine(place, "handed over");
        using var page = new ReportPage(session, new NoDialogs { Filling = form => Fill(form, folder, "200") });
        page.Press('r');
        Patience.Until(page.Run.Completion);
        string text = string.Join('\n', page.Lines(200, 30).Select(l => l.Text));
        Assert.Contains("handed over", text, StringComparison.Ordinal);
        Assert.Contains("Failure probability by", text, StringComparison.Ordinal);

        string other = Path.Combine(place, "command");
        Cli.Run("report", Cli.Shipped("benchmark-five-legs"), "-n", "200", "--out", other);
        string[] Tables(string of) => [.. Directory.GetFiles(Path.Combine(of, "tables")).Order().Select(File.ReadAllText)];
        Assert.True(Tables(other).Length > 4);
        Assert.Equal(Tables(other), Tables(folder));
    }

    [Theory]
    [InlineData("", "1000")]
    [InlineData("new", "none")]
    [InlineData("new", "0")]
    public void What_cannot_be_is_refused_in_the_form_and_nothing_is_started(string folder, string evaluations)
    {
        using Session session = Open();
        bool? isRight = null;
        using var page = new ReportPage(session, new NoDialogs
        {
            Filling = form =>
            {
                Fill(form, folder, evaluations);
                isRight = form.IsRight;
            },
        });
        page.Press('r');
        Assert.Equal((false, RunPhase.Idle), (isRight, page.Run.Standing.Phase));
    }

    [Fact]
    public void A_folder_that_holds_other_things_is_refused_in_the_form()
    {
        File.WriteAllText(Path.Combine(place, "mine.txt"), "of value");
        var form = new ReportForm(place, 1000);
        Assert.NotNull(form.Fields[0].Refusal);
    }

    [Fact]
    public void A_report_given_up_leaves_nothing_behind()
    {
        using Session session = Open();
        string folder = Path.Combine(place, "given up");
        using var page = new ReportPage(session, new NoDialogs { Filling = form => Fill(form, folder, "100000000") });
        page.Press('r');
        page.Press('f');
        Patience.Until(page.Run.Completion);
        Assert.Equal(RunPhase.Idle, page.Run.Standing.Phase);
        Assert.Empty(Directory.GetFileSystemEntries(place));
    }

    private static void Fill(Form form, string folder, string evaluations)
    {
        form.Set(0, folder);
        form.Set(1, evaluations);
    }

    private static Session Open() =>
        new(EditedScenario.Open(Cli.Shipped("benchmark-five-legs")), TimeProvider.System, HeadlessConsole.FewEvaluations);
}
