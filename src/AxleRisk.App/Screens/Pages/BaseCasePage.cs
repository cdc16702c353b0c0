using AxleRisk.App.Answers;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Screens.Pages;

/// <summary>The base case and one factor at a time. It takes milliseconds, so it is always that of the scenario as it stands.</summary>
internal sealed class BaseCasePage(Session session) : Page
{
    private (int Edition, BaseCaseResult Result)? known;

    public override string Name => "Base case";

    public override string ShortName => "Base";

    public override IReadOnlyList<string> Explanation =>
    [
        "The base case is one vehicle with every input at its nominal value: the number stated, or the median of its distribution. It is not the typical life and says nothing of how many fail.",
        "Life is on the mean S-N curve: half of such details would last longer, if everything else were exactly as stated.",
        "The legs' table shows where the damage comes from: stress RMS is the size of the stress about its mean, cycles/s how often it swings. A short bad leg often does more damage than all the others.",
        "One factor at a time: every other input stays at its nominal while one goes to its 5 % and 95 % point. A life of 0.40 means the life falls to 40 % of the base case. What factors do together is on the pages Ranking and Combinations.",
    ];

    public override int Revision => session.Edition;

    public override PageLine Status => PageLine.Of("Every input at its nominal value; follows every edit.", Ink.Quiet);

    public override IReadOnlyList<PageLine> Lines(int width, int height) =>
    [
        .. PageLine.Of([.. BaseBlocks.Of(Result()), .. NoteBlocks.Of(session.Document)], width), PageLine.Empty,
        .. PageLine.Of([new Paragraph(Caution.Sentence)], width),
    ];

    private BaseCaseResult Result()
    {
        if (known?.Edition != session.Edition)
        {
            known = (session.Edition, BaseCaseAnalysis.Run(session.Model));
        }

        return known!.Value.Result;
    }
}
