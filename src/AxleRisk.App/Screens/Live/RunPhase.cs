namespace AxleRisk.App.Screens.Live;

/// <summary>Where a background study stands.</summary>
internal enum RunPhase
{
    /// <summary>Nothing was started.</summary>
    Idle,

    /// <summary>It runs.</summary>
    Running,

    /// <summary>It was stopped and can be continued.</summary>
    Stopped,

    /// <summary>It ended, at its end or earlier as asked.</summary>
    Done,

    /// <summary>It failed.</summary>
    Failed,
}

/// <summary>A background study as it stands at one moment.</summary>
/// <param name="Phase">Where it stands.</param>
/// <param name="Evaluations">Evaluations done.</param>
/// <param name="Requested">Evaluations it will spend.</param>
/// <param name="Elapsed">The time it has run, stops left out.</param>
/// <param name="Failure">What went wrong; null unless it failed.</param>
internal sealed record RunStanding(RunPhase Phase, long Evaluations, long Requested, TimeSpan Elapsed, string? Failure)
{
    public static RunStanding Idle { get; } = new(RunPhase.Idle, 0, 0, TimeSpan.Zero, null);

    /// <summary>The share done, 0 to 1.</summary>
    public double Share => Requested > 0 ? Math.Min(1, (double)Evaluations / Requested) : 0;

    /// <summary>Evaluations a second; NaN before there is anything to divide.</summary>
    public double PerSecond => Evaluations > 0 && Elapsed > TimeSpan.Zero ? Evaluations / Elapsed.TotalSeconds : double.NaN;

    /// <summary>Seconds left at this rate; NaN where that is not known.</summary>
    public double SecondsLeft => (Requested - Evaluations) / PerSecond;
}
