namespace AxleRisk.Files.Toml;

/// <summary>A place in a text: line and column, both from 1.</summary>
internal readonly record struct Position(int Line, int Column)
{
    public static Position Start { get; } = new(1, 1);
}
