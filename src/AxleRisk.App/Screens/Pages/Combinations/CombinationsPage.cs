using AxleRisk.App.Screens.Live;
using AxleRisk.App.Studies;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Combinations;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Screens.Pages.Combinations;

/// <summary>What factors do together: the worst combinations as sentences, and the pairs as a grid and in words.</summary>
internal sealed class CombinationsPage(Session session, IDialogs dialogs)
    : AnswerPage<CombineLimits, CombineResult>(session, dialogs, StudyBook.Combine, "Combinations", new Stages(20_000, 100_000))
{
    private static readonly PairMeasure[] Measures = Enum.GetValues<PairMeasure>();

    private int measure;

    public override string ShortName => "Comb";

    public override IReadOnlyList<KeyHint> Keys => Run.Result is null ? base.Keys : [new("g", "another grid"), .. base.Keys];

    public override int Revision => HashCode.Combine(base.Revision, measure);

    public override bool Press(PageKey key)
    {
        if (key.Character == 'g' && Run.Result is not null)
        {
            measure = (measure + 1) % Measures.Length;
            return true;
        }

        return base.Press(key);
    }

    protected override IReadOnlyList<PageLine> Show(CombineResult result, int width, int height)
    {
        IReadOnlyList<PageLine> grid = PairGrid.Lines(result, Measures[measure], Math.Min(width, Layout.Width));
        Block[] blocks = [.. StudyBook.Combine.Blocks(Session.Document, result), .. Notes];
        return
        [
            .. PageLine.Of(blocks[..1], width), PageLine.Empty, .. grid, PageLine.Empty, .. PageLine.Of(blocks[1..], width), PageLine.Empty,
            .. Foot(result),
        ];
    }
}
