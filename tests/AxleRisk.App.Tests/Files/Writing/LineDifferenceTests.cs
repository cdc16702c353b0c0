using AxleRisk.Files.Writing;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace AxleRisk.App.Tests.Files.Writing;

public class LineDifferenceTests
{
    [Fact]
    public void Only_what_differs_is_told_with_its_numbers() =>
        Assert.Equal(
            [new(false, 2, "b"), new(true, 2, "B"), new(true, 4, "d")],
            LineDifference.Of("a\nb\nc\n", "a\r\nB\r\nc\r\nd\r\n"));

    [Fact]
    public void Equal_texts_do_not_differ() => Assert.Empty(LineDifference.Of("a\n\nb", "a\n\nb"));

    /// <summary>Taking out what the first has and putting in what the second has makes the second of the first.</summary>
    [Property]
    public Property It_leads_from_one_to_the_other() => Prop.ForAll(
        Gen.ListOf(Gen.Elements("a", "b", "c", "")).Zip(Gen.ListOf(Gen.Elements("a", "b", "c", ""))).ToArbitrary(),
        pair =>
        {
            string[] first = string.Join('\n', pair.Item1).Split('\n'), second = string.Join('\n', pair.Item2).Split('\n');
            IReadOnlyList<DifferentLine> lines = LineDifference.Of(string.Join('\n', first), string.Join('\n', second));
            List<string> made = [.. first.Where((_, i) => !lines.Any(l => !l.IsSecond && l.Line == i + 1))];
            foreach (DifferentLine line in lines.Where(l => l.IsSecond))
            {
                made.Insert(line.Line - 1, line.Text);
            }

            return made.SequenceEqual(second);
        });
}
