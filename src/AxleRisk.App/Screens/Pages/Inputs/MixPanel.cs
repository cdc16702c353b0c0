using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Text;

namespace AxleRisk.App.Screens.Pages.Inputs;

/// <summary>The road mix as bars that always sum to 100 %: one share moves and the free ones of the others make room.</summary>
internal sealed class MixPanel(Session session, int leg = 0) : Panel
{
    private const double Step = 0.01;

    private int chosen = Math.Max(0, leg);

    /// <summary>The mix as it is being set.</summary>
    public RoadMix Mix { get; private set; } = RoadMix.Of(session.Document.Scenario.Legs);

    public override IReadOnlyList<KeyHint> Keys =>
        [new("left right", "less, more"), new("up down", "leg"), new("l", "lock"), new("Enter", "take"), new("Esc", "leave")];

    public override string Status => "Road mix: the bars always sum to 100 %; a locked leg keeps its share.";

    public override IReadOnlyList<PageLine> Lines(int width, int height)
    {
        int nameWidth = Math.Min(24, Math.Max(4, Mix.Names.Max(n => n.Length)));
        int barWidth = Math.Max(4, width - nameWidth - 20);
        var lines = new List<PageLine> { PageLine.Of("Share of the distance on each leg", Ink.Heading), PageLine.Empty };
        for (int i = 0; i < Mix.Names.Length; i++)
        {
            double share = Mix.Shares[i];
            string bar = new string('#', (int)Math.Round(barWidth * share)).PadRight(barWidth, '.');
            string name = (i == chosen ? "> " : "  ") + TextTable.Shorten(Printable.Line(Mix.Names[i]), nameWidth).PadRight(nameWidth);
            string figure = $" {Mix.Percents[i],5:0.0} % {(Mix.Locked[i] ? "locked" : "")}";
            PageLine line = PageLine.Of(new Piece(name + " "), new Piece(bar, Ink.Strong), new Piece(figure));
            lines.Add(i == chosen ? line.Fit(width).In(Ink.Chosen) : line);
        }

        lines.Add(PageLine.Of($"  {"sum".PadRight(nameWidth + barWidth + 1)} {Mix.Percents.Sum(),5:0.0} %", Ink.Quiet));
        int top = Math.Clamp(chosen + 3 - height, 0, Math.Max(0, lines.Count - height));
        return [.. lines.Skip(top)];
    }

    public override PanelAnswer Press(PageKey key)
    {
        switch (key.Name)
        {
            case KeyName.Up:
                chosen = Math.Max(0, chosen - 1);
                return new(true);
            case KeyName.Down:
                chosen = Math.Min(Mix.Names.Length - 1, chosen + 1);
                return new(true);
            case KeyName.Left or KeyName.Right:
                Mix = Mix.With(chosen, Math.Round(Mix.Shares[chosen] + (key.Name == KeyName.Left ? -Step : Step), 4));
                return new(true);
            case KeyName.Character when key.Character == 'l':
                Mix = Mix.WithLock(chosen, !Mix.Locked[chosen]);
                return new(true);
            case KeyName.Enter:
                string? refusal = session.Apply(Mix.ToEdit()).Reasons is [var first, ..] ? first : null;
                return new(true, refusal is null, refusal);
            case KeyName.Escape:
                return new(true, IsDone: true);
            default:
                return new(false);
        }
    }
}
