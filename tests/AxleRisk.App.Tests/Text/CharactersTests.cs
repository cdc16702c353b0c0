using AxleRisk.App.Charts;
using AxleRisk.App.Text;
using Xunit;

namespace AxleRisk.App.Tests.Text;

/// <summary>Which characters are shown where.</summary>
public sealed class CharactersTests
{
    // The order of the variables: POSIX.1-2017, 8.2.
    [Theory]
    [InlineData("xterm-256color", null, null, null, false)]
    [InlineData("xterm-256color", null, null, "en_GB.UTF-8", false)]
    [InlineData("xterm-256color", "", "C.utf8", "C", false)]
    [InlineData("xterm-256color", "C", null, "en_GB.UTF-8", true)]
    [InlineData("xterm-256color", "POSIX", null, null, true)]
    [InlineData("xterm-256color", null, "de_DE.ISO-8859-1", "de_DE.UTF-8", true)]
    [InlineData("linux", null, null, "en_GB.UTF-8", true)]
    [InlineData(null, null, null, null, false)]
    public void Terminal_and_locale_decide(string? terminal, string? all, string? type, string? language, bool plain) =>
        Assert.Equal(plain, Characters.ArePlainBy(name => name switch
        {
            "TERM" => terminal,
            "LC_ALL" => all,
            "LC_CTYPE" => type,
            "LANG" => language,
            _ => null,
        }));

    [Fact]
    public void Every_character_of_the_pictures_has_a_plain_one_of_its_own_width()
    {
        const string Drawn = "─│┆┄╌═┤├└┬┴┼█▉▊▋▌▍▎▏▁▂▃▄▅▆▇▒░▓·►◄▲▼←→↑↓⡢⣀";
        Assert.All(Drawn, c => Assert.True(Characters.Plain(c) is > ' ' and < '\u007F' and not '?', $"{c}"));
        Assert.Equal('?', Characters.Plain('\u00E9'));
        Assert.Equal(Enumerable.Range(' ', 95).Select(i => (char)i), Enumerable.Range(' ', 95).Select(i => Characters.Plain((char)i)));
    }

    [Fact]
    public void A_chosen_bar_stays_as_it_is()
    {
        Bar[] bars = [new("first", 8, double.NaN, double.NaN, "8"), new("second", 4, double.NaN, double.NaN, "4") { IsChosen = true }];
        Picture picture = BarChart.Draw(bars, 40, 2);
        Assert.Equal((ChartRole.Chosen, ChartRole.Chosen), (picture[0, 1].Role, picture[39, 1].Role));
        Assert.Equal((ChartRole.Text, ChartRole.Text), (picture[0, 0].Role, picture[39, 0].Role));
        int Length(int row) => Enumerable.Range(0, 40).Count(x => picture[x, row] is { Role: ChartRole.Line });
        Assert.Equal(Length(0) / 2.0, Length(1), 1.0);
    }
}
