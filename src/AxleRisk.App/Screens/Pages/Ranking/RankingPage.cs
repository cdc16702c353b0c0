using AxleRisk.App.Answers;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages.Combinations;
using AxleRisk.App.Studies;
using AxleRisk.Core.Analyses.Ranking;

namespace AxleRisk.App.Screens.Pages.Ranking;

/// <summary>The ranking of the factors as bars with a row to choose; Enter opens the factor chosen, t the tables.</summary>
internal sealed class RankingPage(Session session, IDialogs dialogs, CombinationsPage combinations)
    : AnswerPage<RankQuestion, RankResult>(session, dialogs, StudyBook.Rank, "Ranking", new Stages(20_000, 200_000))
{
    /// <summary>Rows that the chosen factor's sentences keep below the bars.</summary>
    private const int LeastBody = 7;

    private readonly ListAndBody view = new() { LeastList = 56 };
    private string? chosen;
    private bool showsTables;
    private int presses;

    public override string ShortName => "Rank";

    public override IReadOnlyList<string> Explanation => Opened?.Explanation ?? base.Explanation;

    /// <summary>The factor's own page while one is open.</summary>
    public FactorPage? Opened { get; private set; }

    public override IReadOnlyList<KeyHint> Keys => Opened is not null ? [new("Esc", "back"), .. Opened.Keys]
        : Run.Result is null ? base.Keys
        : showsTables ? [new("t", "bars"), .. base.Keys]
        : [new("Enter", "open factor"), new("t", "tables"), .. base.Keys];

    public override PageLine Status => Opened?.Status ?? base.Status;

    public override int Revision => HashCode.Combine(base.Revision, presses, Opened?.Revision);

    public override IReadOnlyList<PageLine> Lines(int width, int height) => Opened?.Lines(width, height) ?? base.Lines(width, height);

    public override bool Press(PageKey key)
    {
        presses++;
        if (Opened is not null)
        {
            if (key.Name == KeyName.Escape)
            {
                Close();
                return true;
            }

            return Opened.Press(key);
        }

        if (Run.Result is not { } result)
        {
            return base.Press(key);
        }

        switch (key.Name)
        {
            case KeyName.Character when key.Character == 't':
                showsTables = !showsTables;
                return true;
            case KeyName.Up or KeyName.Down when !showsTables:
                chosen = result.Factors[Math.Clamp(Place(result) + (key.Name == KeyName.Up ? -1 : 1), 0,
                    result.Factors.Length - 1)].Factor.Name;
                return true;
            case KeyName.Enter when !showsTables:
                Open(result.Factors[Place(result)].Factor.Name);
                return true;
            default:
                return (!showsTables && view.Press(key)) || base.Press(key);
        }
    }

    public override bool Click(int line, int column)
    {
        if (Opened is not null || showsTables || Run.Result is not { } result || view.RowAt(line, column) - RankingList.Above is not { } row
            || row < 0 || row >= result.Factors.Length)
        {
            return false;
        }

        bool again = row == Place(result);
        chosen = result.Factors[row].Factor.Name;
        presses++;
        return !again || Press(KeyName.Enter);
    }

    protected override IReadOnlyList<PageLine> Show(RankResult result, int width, int height)
    {
        if (showsTables)
        {
            return base.Show(result, width, height);
        }

        int place = Place(result);
        return view.Lines(
            w => RankingList.Rows(result, place, w), RankingList.Above + place,
            (w, _) =>
            [
                .. RankingList.Of(result, result.Factors[place], w), PageLine.Empty,
                .. PageLine.Of([.. RankBlocks.Kinds(result), .. Notes], w), PageLine.Empty, .. Foot(result),
            ], width, height, LeastBody);
    }

    protected override void Dispose(bool disposing)
    {
        Close();
        base.Dispose(disposing);
    }

    private int Place(RankResult result) => Math.Max(0, result.Factors.ToList().FindIndex(f => f.Factor.Name == chosen));

    private void Open(string factor)
    {
        Close();
        Opened = new FactorPage(Session, Dialogs, combinations, factor);
        Opened.Start();
    }

    private void Close()
    {
        Opened?.Dispose();
        Opened = null;
    }
}
