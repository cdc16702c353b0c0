using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages.Combinations;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Studies;

namespace AxleRisk.App.Screens.Pages.Ranking;

/// <summary>The ranking of the factors as bars with a row to choose; Enter opens the factor chosen, t the tables.</summary>
internal sealed class RankingPage(Session session, IDialogs dialogs, CombinationsPage combinations) : StudyPage<RankResult>(session,
    dialogs)
{
    /// <summary>Evaluations of the first answers.</summary>
    private static readonly Stages Stages = new(20_000, 200_000);

    /// <summary>Rows that the chosen factor's sentences keep below the bars.</summary>
    private const int LeastBody = 7;

    private readonly ListAndBody view = new() { LeastList = 56 };
    private string? chosen;
    private bool showsTables;
    private int presses;

    public override string Name => "Ranking";

    public override string ShortName => "Rank";

    public override IReadOnlyList<string> Explanation => Opened?.Explanation ??
    [
        "The factors by their share of the failures: how much of the difference between vehicles that fail and vehicles that last each one accounts for, over its real spread. The shares add up to 100 %; they rank factors for this scenario and would change with its distributions.",
        "A bar is full as far as the lower end of its 95 % interval, shaded on to the share, and a whisker goes to the upper end. Factors of one place (=) are a tie: their intervals overlap, and the order between them means nothing yet. More evaluations may part them.",
        "Alone is what a factor does by itself, with others what it does in all its combinations; where the two differ, it acts together with other factors.",
        "Held is the failure probability if the factor could be fixed at its nominal, its 5 % or its 95 % point: what controlling it would be worth. Enter shows this across its whole range.",
        "First answers of 20 000 and 200 000 evaluations come sooner; the whole run follows and has the digits of axlerisk rank. Unless you choose a number of evaluations it ends when no share's interval is wider than 1 point to either side.",
    ];

    /// <summary>The factor's own page while one is open.</summary>
    public FactorPage? Opened { get; private set; }

    public override IReadOnlyList<KeyHint> Keys => Opened is not null ? [new("Esc", "back"), .. Opened.Keys]
        : Run.Result is null ? base.Keys
        : showsTables ? [new("t", "bars"), .. base.Keys]
        : [new("Enter", "open factor"), new("t", "tables"), .. base.Keys];

    public override PageLine Status => Opened?.Status ?? base.Status;

    public override int Revision => HashCode.Combine(base.Revision, presses, Opened?.Revision);

    protected override string? Unavailable => Session.Model.Factors.Factors.IsEmpty
        ? "No value of this scenario is uncertain, so there is nothing to rank. Give at least one input a distribution on the page Inputs."
        : null;

    protected override long DefaultEvaluations => RankAnalysis.MostEvaluations;

    protected override string Invitation => "Ranks the factors by their share of the failures. Press r to run it.";

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

    protected override long Requested(StudySettings settings) => Stages.Requested(settings.Evaluations);

    protected override RankResult Study(LifeModel model, StudySettings settings, RunOptions options, Action<RankResult> publish)
    {
        RankQuestion question = RankQuestion.Of(allSubsets: false, evaluationsStated: ChosenEvaluations is not null);
        return WithHeadline(model, options, headline => Stages.Run(
            settings, 1, options, publish, (s, o) => RankAnalysis.Run(model, s, o, question).With(headline), r => r.Run));
    }

    protected override IReadOnlyList<PageLine> Show(RankResult result, int width, int height)
    {
        IReadOnlyList<PageLine> foot = [.. PageLine.FromPrinted(
            Frame.Foot(result.Run, RankText.Method(result), Run.ResultElapsed, RankText.Speed(result, Run.ResultElapsed)))];
        if (showsTables)
        {
            return [.. PageLine.FromPrinted(RankText.Lines(result)), .. foot];
        }

        int place = Place(result);
        return view.Lines(
            w => RankingList.Rows(result, place, w), RankingList.Above + place,
            (w, _) =>
            [
                .. RankingList.Of(result, result.Factors[place], w), PageLine.Empty,
                PageLine.Of(RankText.LegsHeading, Ink.Heading), .. PageLine.FromPrinted(RankText.LegTable(result).Lines(Layout.Width)),
                PageLine.Empty,
                .. foot,
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
