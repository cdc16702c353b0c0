using AxleRisk.Files.Writing;
using Xunit;

namespace AxleRisk.App.Tests.Files.Writing;

public class LineEditsTests
{
    [Theory]
    [InlineData("a\nb\nc", 2, "a\nX\nc", "a\nb\nX\nc", "a\nc")]
    [InlineData("a\r\nb\r\n", 2, "a\r\nX\r\n", "a\r\nb\r\nX\r\n", "a\r\n")]
    [InlineData("a", 1, "X", "a\nX\n", "")]
    [InlineData("", 1, "X", "X\n", "")]
    [InlineData("a\n", 9, "a\nX", "a\nX\n", "a\n")]
    public void One_line_is_changed_and_the_rest_stays(string text, int line, string replaced, string inserted, string removed) =>
        Assert.Equal((replaced, inserted, removed),
            (LineEdits.Replace(text, line, "X"), LineEdits.Insert(text, line, "X"), LineEdits.Remove(text, line)));

    [Fact]
    public void A_line_is_given_without_its_end() =>
        Assert.Equal(("b", ""), (LineEdits.Line("a\r\nb\r\n", 2), LineEdits.Line("a\r\nb\r\n", 3)));
}
