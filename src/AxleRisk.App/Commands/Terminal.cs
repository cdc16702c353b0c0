namespace AxleRisk.App.Commands;

/// <summary>Where a command writes and what it may know of its surroundings: handed in, so that tests need no console.</summary>
internal sealed record Terminal
{
    /// <summary>Answers.</summary>
    public required TextWriter Out { get; init; }

    /// <summary>Errors and progress.</summary>
    public required TextWriter Error { get; init; }

    /// <summary>Whether <see cref="Error"/> is a terminal that progress may be drawn on.</summary>
    public required bool ShowsProgress { get; init; }

    /// <summary>The clock, for timings only.</summary>
    public required TimeProvider Clock { get; init; }

    /// <summary>Runs a study; tests share what the same question gave.</summary>
    public Func<Func<object>, object> Compute { get; init; } = study => study();

    /// <summary>Whether a study is under way.</summary>
    public RunGauge Runs { get; } = new();

    /// <summary>Why the console cannot be opened here, as the end of a sentence; null where it can.</summary>
    public string? WhyNoConsole { get; init; } = "this is no terminal";

    public static Terminal OfProcess() => new()
    {
        Out = Console.Out,
        Error = Console.Error,
        ShowsProgress = !Console.IsErrorRedirected && Environment.GetEnvironmentVariable("TERM") is not (null or "" or "dumb"),
        Clock = TimeProvider.System,
        WhyNoConsole =
            Console.IsInputRedirected ? "the standard input is not one"
            : Console.IsOutputRedirected ? "the standard output is not one"
            : Environment.GetEnvironmentVariable("TERM") is null or "" or "dumb" ? "TERM names one that cannot place the cursor"
            : null,
    };
}
