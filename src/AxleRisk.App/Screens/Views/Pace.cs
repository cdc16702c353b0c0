using System.Diagnostics.CodeAnalysis;
using Terminal.Gui.App;

namespace AxleRisk.App.Screens.Views;

/// <summary>
/// The pace of the application's loop: a turn follows at once where something waits to be drawn or done or an answer has come, else
/// after a moment, since nobody tells of a key. The library's own wait ends at its time alone, and late where its pool of threads
/// is busy with a study.
/// </summary>
[SuppressMessage("Reliability", "CA1001", Justification = "a study that ends after the console may still wake it")]
internal sealed class Pace
{
    /// <summary>A key waits no longer than this for the next turn.</summary>
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(5);

    private readonly AutoResetEvent isDue = new(false);

    /// <summary>Takes the wait out of the library's loop; before the application is created.</summary>
    public Pace() => Application.MaximumIterationsPerSecond = ushort.MaxValue;

    /// <summary>Ends the wait under way, or the next one; from any thread.</summary>
    public void Wake() => isDue.Set();

    /// <summary>Sets the pace of an application that was made ready.</summary>
    public void Drive(IApplication app) => app.TimedEvents!.Added += (_, added) =>
    {
        if (added.Timeout.Span == TimeSpan.Zero)
        {
            Wake();
        }
    };

    /// <summary>Waits for the next turn; called at the beginning of every one.</summary>
    public void Wait(IApplication app)
    {
        if (app.TopRunnableView is not { NeedsDraw: true })
        {
            isDue.WaitOne(Pause);
        }
    }
}
