using AxleRisk.Reports.Charts;
using Xunit;

namespace AxleRisk.App.Tests.Reports;

public sealed class PaletteTests
{
    // Web Content Accessibility Guidelines 2.1: 1.4.3 asks 4.5 of text, 1.4.11 asks 3 of what must be seen in a picture.
    [Theory]
    [InlineData(Tone.Ink, 4.5)]
    [InlineData(Tone.Muted, 4.5)]
    [InlineData(Tone.Accent, 4.5)]
    [InlineData(Tone.Second, 4.5)]
    public void Every_tone_stands_out_from_the_paper(Tone tone, double least)
    {
        foreach (Palette palette in (Palette[])[Palette.Light, Palette.Dark])
        {
            double one = Luminance(palette.Hex(tone)), paper = Luminance(palette.Hex(Tone.Paper));
            double contrast = (Math.Max(one, paper) + 0.05) / (Math.Min(one, paper) + 0.05);
            Assert.True(contrast >= least, $"{contrast:0.00} on {palette.Hex(Tone.Paper)}");
        }
    }

    [Fact]
    public void A_tone_and_its_stand_in_belong_together()
    {
        foreach (Tone tone in Enum.GetValues<Tone>())
        {
            Assert.Equal(tone, Palette.ToneOf(Palette.Stand.Hex(tone)));
        }

        Assert.Null(Palette.ToneOf("black"));
    }

    // Relative luminance: the same guidelines.
    private static double Luminance(string hex)
    {
        double Part(int place)
        {
            double c = int.Parse(hex.AsSpan(place, 2), System.Globalization.NumberStyles.HexNumber) / 255.0;
            return c <= 0.03928 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4);
        }

        return (0.2126 * Part(1)) + (0.7152 * Part(3)) + (0.0722 * Part(5));
    }
}
