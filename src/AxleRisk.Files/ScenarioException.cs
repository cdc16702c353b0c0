namespace AxleRisk.Files;

/// <summary>A scenario could not be read. Carries every error found, in the order of the file.</summary>
public sealed class ScenarioException : Exception
{
    /// <summary>Creates the exception from the errors found, at least one.</summary>
    public ScenarioException(IReadOnlyList<ScenarioError> errors)
        : base(string.Join('\n', errors)) => Errors = errors;

    /// <summary>Every error found, in the order of the file.</summary>
    public IReadOnlyList<ScenarioError> Errors { get; }
}
