namespace AxleRisk.App.Commands;

/// <summary>Whether a study is under way: only then is there something to tell when a signal ends the program.</summary>
internal sealed class RunGauge
{
    private int running;

    /// <summary>Whether a study is under way.</summary>
    public bool IsRunning => Volatile.Read(ref running) > 0;

    /// <summary>A study begins; it ends when what is returned is disposed of.</summary>
    public IDisposable Begin()
    {
        Interlocked.Increment(ref running);
        return new Run(this);
    }

    private sealed class Run(RunGauge gauge) : IDisposable
    {
        public void Dispose() => Interlocked.Decrement(ref gauge.running);
    }
}
