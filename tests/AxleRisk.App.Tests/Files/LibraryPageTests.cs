using System.Text.RegularExpressions;
using AxleRisk.App.Tests.Commands;
using AxleRisk.LibraryExample;
using Xunit;

namespace AxleRisk.App.Tests.Files;

/// <summary>The study on the page of the libraries is compiled against public types alone, and prints what the page says.</summary>
public class LibraryPageTests
{
    private static readonly string Page = File.ReadAllText(Repository.PathTo("docs", "library.md"));

    [Theory]
    [InlineData(0, "WallStudy.cs")]
    [InlineData(1, "BeamModel.cs")]
    [InlineData(2, "BeamStudy.cs")]
    public void The_programs_are_those_of_the_page(int place, string file)
    {
        string program = File.ReadAllText(Repository.PathTo("tests", "AxleRisk.LibraryExample", file));
        Assert.Equal(program.TrimEnd(), Blocks("csharp")[place]);
        Assert.InRange(program.TrimEnd().Split('\n').Length, 10, 48);
    }

    [Fact]
    public void They_print_what_the_page_says()
    {
        string[] printed =
        [
            Printed(output => WallStudy.Run(Cli.Shipped("benchmark-five-legs"), output)),
            Printed(BeamStudy.Run),
        ];
        if (Environment.GetEnvironmentVariable("AXLERISK_NEW_TABLES") is { Length: > 0 })
        {
            int place = 0;
            File.WriteAllText(Repository.PathTo("docs", "library.md"), BlockOf("text").Replace(Page, _ => $"```text\n{printed[place++]}\n```"));
            return;
        }

        Assert.Equal(printed, Blocks("text"));
    }

    private static string Printed(Action<TextWriter> run)
    {
        using var output = new StringWriter { NewLine = "\n" };
        run(output);
        return output.ToString().TrimEnd();
    }

    private static string[] Blocks(string kind) => [.. BlockOf(kind).Matches(Page).Select(m => m.Groups[1].Value.TrimEnd())];

    private static Regex BlockOf(string kind) => new($"```{kind}\n(.*?)```", RegexOptions.Singleline);
}
