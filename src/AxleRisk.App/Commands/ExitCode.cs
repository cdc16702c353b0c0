namespace AxleRisk.App.Commands;

/// <summary>The exit codes of the program.</summary>
internal static class ExitCode
{
    /// <summary>The question was answered.</summary>
    public const int Done = 0;

    /// <summary>The run failed.</summary>
    public const int Failed = 1;

    /// <summary>The command line or the scenario was not right.</summary>
    public const int BadInput = 2;

    /// <summary>The run was ended by Ctrl-C; what was known was printed, marked as partial.</summary>
    public const int Interrupted = 130;

    /// <summary>The same by SIGTERM.</summary>
    public const int Terminated = 143;
}
