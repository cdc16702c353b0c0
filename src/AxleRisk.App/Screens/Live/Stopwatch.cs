namespace AxleRisk.App.Screens.Live;

/// <summary>Measures the time a study has run, by a clock that can be handed in.</summary>
internal sealed class Stopwatch
{
    private readonly TimeProvider clock;
    private readonly Lock changing = new();
    private long start;
    private TimeSpan before;
    private bool isRunning = true;

    /// <summary>Creates a stopwatch that runs.</summary>
    public Stopwatch(TimeProvider clock)
    {
        this.clock = clock;
        start = clock.GetTimestamp();
    }

    public TimeSpan Elapsed
    {
        get
        {
            lock (changing)
            {
                return isRunning ? before + clock.GetElapsedTime(start) : before;
            }
        }
    }

    public void Stop()
    {
        lock (changing)
        {
            before = isRunning ? before + clock.GetElapsedTime(start) : before;
            isRunning = false;
        }
    }

    public void Start()
    {
        lock (changing)
        {
            start = isRunning ? start : clock.GetTimestamp();
            isRunning = true;
        }
    }
}
