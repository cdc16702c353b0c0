namespace AxleRisk.Files;

/// <summary>One thing that is wrong with a scenario file or with a data file it refers to.</summary>
/// <param name="File">The file at fault, as the user named it.</param>
/// <param name="Line">The line, from 1; 0 where no place in the file is at fault.</param>
/// <param name="Column">The column in characters, from 1; 0 where only the line is known.</param>
/// <param name="Message">What is wrong and what would be right, in one line.</param>
public sealed record ScenarioError(string File, int Line, int Column, string Message)
{
    /// <summary><c>FILE(line,column): message</c>, without the parts that are not known.</summary>
    public override string ToString() => (Line, Column) switch
    {
        ( <= 0, _) => $"{File}: {Message}",
        (_, <= 0) => $"{File}({Line}): {Message}",
        _ => $"{File}({Line},{Column}): {Message}",
    };
}
