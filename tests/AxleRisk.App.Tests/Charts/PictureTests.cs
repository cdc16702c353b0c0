using AxleRisk.App.Charts;
using AxleRisk.App.Tests.Files;
using Xunit;

namespace AxleRisk.App.Tests.Charts;

/// <summary>
/// The pictures at fixed sizes against the files in <c>Pictures</c>, which were looked at. With RENEW_PICTURES=1 in the
/// environment the files are written anew; look at the difference before it is committed.
/// </summary>
public class PictureTests
{
    public static TheoryData<string> Names => [.. Gallery.All.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_picture_is_as_it_was_looked_at(string name)
    {
        string text = string.Concat(Gallery.Sizes.Select(s => $"{s.Width} x {s.Height}\n{Gallery.All[name](s.Width, s.Height)}\n\n"));
        string file = Repository.PathTo("tests", "AxleRisk.App.Tests", "Charts", "Pictures", name + ".txt");
        if (Environment.GetEnvironmentVariable("RENEW_PICTURES") == "1")
        {
            File.WriteAllText(file, text);
        }

        Assert.Equal(File.ReadAllText(file), text);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_picture_has_the_size_it_was_asked_for_however_small(string name)
    {
        for (int width = 0; width <= 130; width += width < 40 ? 3 : 9)
        {
            foreach (int height in new[] { 0, 1, 2, 3, 4, 5, 6, 9, 14, 30 })
            {
                Picture picture = Gallery.All[name](width, height);
                Assert.Equal((width, height), (picture.Width, picture.Height));
                Assert.All(picture.Lines(), line => Assert.True(line.Length <= width && !line.Any(char.IsControl)));
            }
        }
    }
}
