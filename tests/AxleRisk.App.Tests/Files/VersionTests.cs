using System.Text.RegularExpressions;
using Xunit;

namespace AxleRisk.App.Tests.Files;

/// <summary>The version stands in one place, and the pages that name it name that.</summary>
public class VersionTests
{
    private static readonly string Stated = Regex.Match(Read("src", "Directory.Build.props"), "<Version>(.*)</Version>").Groups[1].Value;

    [Fact]
    public void The_program_has_the_version_of_the_one_place_that_states_it()
    {
        Assert.Matches("^[0-9]+[.][0-9]+[.][0-9]+$", Stated);
        Assert.Equal(Stated, Product.Version.Split('+')[0]);
        string[] projects =
        [
            .. new[] { "src", "tests" }.SelectMany(f => Directory.GetFiles(Repository.PathTo(f), "*.*proj", SearchOption.AllDirectories)),
            Repository.PathTo("tests", "Directory.Build.props"),
        ];
        Assert.NotInRange(projects.Length, 0, 5);
        Assert.All(projects, p => Assert.DoesNotMatch("<(Version|VersionPrefix|PackageVersion|AssemblyVersion)>", File.ReadAllText(p)));
    }

    [Theory]
    [InlineData("## {0}\n", "docs", "changelog.md")]
    [InlineData("axlerisk-{0}-linux-x64.tar.gz", "docs", "install.md")]
    [InlineData("axlerisk.{0}.nupkg", "docs", "install.md")]
    [InlineData("AxleRisk, version {0}, ", "docs", "citing.md")]
    [InlineData("axlerisk {0}.\n", "README.md")]
    public void Pages_name_it(string words, params string[] page) =>
        Assert.Contains(words.Replace("{0}", Stated, StringComparison.Ordinal), Read(page), StringComparison.Ordinal);

    private static string Read(params string[] path) => File.ReadAllText(Repository.PathTo(path));
}
