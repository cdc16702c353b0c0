using System.Text.RegularExpressions;
using AxleRisk.App.Tests.Commands;
using AxleRisk.LibraryExample;
using Xunit;

namespace AxleRisk.App.Tests.Files;

/// <summary>The study on the page of the libraries is compiled against public types alone, and prints what the page says.</summary>
public class LibraryPageTests
{
    private static readonly string Page = File.ReadAllText(Repository.PathTo("docs", "library.md"));

    [Fact]
    public void The_program_is_that_of_the_page()
    {
        string program = File.ReadAllText(Repository.PathTo("tests", "AxleRisk.LibraryExample", "WallStudy.cs"));
        Assert.Equal(program.TrimEnd(), Block("csharp"));
        Assert.InRange(program.TrimEnd().Split('\n').Length, 10, 34);
    }

    [Fact]
    public void It_prints_what_the_page_says()
    {
        using var output = new StringWriter { NewLine = "\n" };
        WallStudy.Run(Cli.Shipped("benchmark-five-legs"), output);
        if (Environment.GetEnvironmentVariable("AXLERISK_NEW_TABLES") is { Length: > 0 })
        {
            File.WriteAllText(Repository.PathTo("docs", "library.md"), Page.Replace(Block("text"), output.ToString().TrimEnd()));
            return;
        }

        Assert.Equal(Block("text"), output.ToString().TrimEnd());
    }

    private static string Block(string kind) => Regex.Match(Page, $"```{kind}\n(.*?)\n```", RegexOptions.Singleline).Groups[1].Value;
}
