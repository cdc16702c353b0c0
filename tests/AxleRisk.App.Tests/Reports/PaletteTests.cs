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
        Assert.True(Palette.Light.Contrast(tone, Tone.Paper) >= least, $"{Palette.Light.Contrast(tone, Tone.Paper):0.00} on light paper");
        Assert.True(Palette.Dark.Contrast(tone, Tone.Paper) >= least, $"{Palette.Dark.Contrast(tone, Tone.Paper):0.00} on dark paper");
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
}
