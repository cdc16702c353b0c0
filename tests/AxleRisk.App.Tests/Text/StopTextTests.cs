using AxleRisk.App.Answers;
using AxleRisk.App.Tests.Commands;
using AxleRisk.App.Tests.Files;
using Xunit;

namespace AxleRisk.App.Tests.Text;

/// <summary>The bump stop is never silent.</summary>
public sealed class StopTextTests
{
    [Theory]
    [InlineData("check")]
    [InlineData("base")]
    [InlineData("risk", "-n", "1024")]
    [InlineData("trip", "-n", "1024")]
    public void Where_none_is_stated_every_answer_says_so(params string[] command)
    {
        string output = Cli.Run([command[0], Cli.Shipped("desert-crossing"), .. command[1..]]).Out;
        Assert.Contains("No bump stop clearance is stated: strikes are left out", string.Join(' ', output.Split('\n')), StringComparison.Ordinal);
        Assert.Contains("trip leg", output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(300)]
    [InlineData(105)]
    public void A_stop_that_is_hardly_met_is_not_named(double clearance) =>
        Assert.DoesNotContain(WarningsWith(clearance), w => w.Contains("stop"));

    [Fact]
    public void Many_strikes_are_named_by_leg_with_what_they_add() =>
        Assert.Matches(
            @"^The suspension meets its bump stop in the base case on gravel \(\d+ a km\); strikes add \d+\.\d % of the damage of the usual use\.$",
            Assert.Single(WarningsWith(10), w => w.Contains("meets its bump stop")));

    [Fact]
    public void A_clearance_that_the_formula_is_not_made_for_is_named() =>
        Assert.Matches(
            @"below 0\.6 standard deviations of the travel on .*gravel \(0\.\d\d\).*: the formula of the strikes is rough there\.$",
            Assert.Single(WarningsWith(2), w => w.Contains("rough")));

    private static string[] WarningsWith(double clearance) =>
    [
        .. NoteBlocks.Warnings(Good.Parse(Good.With("unsprung_kg = 90", $"unsprung_kg = 90\nbump_clearance_mm = {clearance}")))
            .Select(w => w.Text),
    ];
}
