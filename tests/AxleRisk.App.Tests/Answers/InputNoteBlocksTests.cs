using AxleRisk.App.Answers;
using AxleRisk.App.Tests.Files;
using AxleRisk.Reports.Content;
using Xunit;

namespace AxleRisk.App.Tests.Answers;

public class InputNoteBlocksTests
{
    [Fact]
    public void Every_input_with_a_comment_of_its_own_is_listed_under_its_name()
    {
        string text = Good.Text.Replace("wall_mm = 6\n", "wall_mm = 6 # drawing 12-7\n")
            .Replace("tyre_n_per_mm = 300", "# of the maker's sheet\ntyre_n_per_mm = 300");
        Block[] blocks = [.. InputNoteBlocks.Of(Good.Parse(text))];
        Assert.Equal(["tyre rate: of the maker's sheet", "wall thickness: drawing 12-7"], ((ItemList)blocks[1]).Items);
        Assert.Empty(InputNoteBlocks.Of(Good.Parse(Good.Text)));
    }
}
