using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.RareEvents;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Answers;

/// <summary>How an answer too rare to sample was had, and the likeliest way to fail.</summary>
internal static class RareEventBlocks
{
    public static IEnumerable<Block> Of(RareEventResult answer, string heading) =>
    [
        new ItemList([.. RareEventText.Sentences(answer)]),
        .. RareEventText.DesignTable(answer) is var (state, table)
            ? new Block[] { table.Captioned(heading + (state.Length == 0 ? "" : $": {state}")) } : [],
    ];
}
