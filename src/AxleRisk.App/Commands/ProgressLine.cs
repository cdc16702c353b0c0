using AxleRisk.App.Text;

namespace AxleRisk.App.Commands;

/// <summary>
/// One line of progress on a terminal, for runs that take longer than a second; redrawn a few times a second, and gone at the
/// end.
/// </summary>
internal sealed class ProgressLine(Terminal terminal, long total) : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(200);
    private readonly long start = terminal.Clock.GetTimestamp();
    private readonly Lock drawing = new();
    private TimeSpan lastDrawn = TimeSpan.Zero;
    private int drawnWidth;

    /// <summary>Reports the number of evaluations done; from any thread.</summary>
    public void Report(long done)
    {
        if (!terminal.ShowsProgress || !drawing.TryEnter())
        {
            return;
        }

        try
        {
            TimeSpan elapsed = terminal.Clock.GetElapsedTime(start);
            if (elapsed < Patience || elapsed - lastDrawn < Pause)
            {
                return;
            }

            lastDrawn = elapsed;
            double share = Math.Min(1, (double)done / total);
            double left = elapsed.TotalSeconds * (1 - share) / share;
            string line = $"{100 * share,3:0} %  {Figures.Count(done)} evaluations, {Figures.Km(done / elapsed.TotalSeconds)} a second, about {left:0} s left";
            terminal.Error.Write("\r" + line.PadRight(drawnWidth));
            drawnWidth = line.Length;
        }
        finally
        {
            drawing.Exit();
        }
    }

    /// <summary>Wipes the line.</summary>
    public void Dispose()
    {
        if (drawnWidth > 0)
        {
            terminal.Error.Write("\r" + new string(' ', drawnWidth) + "\r");
        }
    }
}
