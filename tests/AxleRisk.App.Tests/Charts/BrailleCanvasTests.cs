using AxleRisk.App.Charts;
using Xunit;

namespace AxleRisk.App.Tests.Charts;

public class BrailleCanvasTests
{
    // The Unicode Standard, Braille patterns: dots 1 2 3 7 down the left, 4 5 6 8 down the right; U+2800 plus the bits.
    [Theory]
    [InlineData(0, 0, '\u2801')]
    [InlineData(0, 1, '\u2802')]
    [InlineData(0, 2, '\u2804')]
    [InlineData(0, 3, '\u2840')]
    [InlineData(1, 0, '\u2808')]
    [InlineData(1, 1, '\u2810')]
    [InlineData(1, 2, '\u2820')]
    [InlineData(1, 3, '\u2880')]
    public void A_dot_has_its_bit(int x, int y, char glyph)
    {
        var canvas = new BrailleCanvas(1, 1);
        canvas.Set(x, y, ChartRole.Line);
        var picture = new Picture(1, 1);
        canvas.Put(picture, 0, 0);
        Assert.Equal(new ChartCell(glyph, ChartRole.Line), picture[0, 0]);
    }

    [Fact]
    public void A_line_hides_the_band_behind_it()
    {
        var canvas = new BrailleCanvas(1, 1);
        canvas.Set(0, 0, ChartRole.Band);
        canvas.Set(1, 1, ChartRole.Line);
        canvas.Set(0, 3, ChartRole.Band);
        var picture = new Picture(1, 1);
        canvas.Put(picture, 0, 0);
        Assert.Equal(new ChartCell('\u2810', ChartRole.Line), picture[0, 0]);
    }
}
