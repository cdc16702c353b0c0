namespace AxleRisk.Files.Toml;

/// <summary>Collects the errors of one scenario file and puts them into file order.</summary>
internal sealed class ErrorLog(string file)
{
    /// <summary>More errors than anyone reads; the rest is counted.</summary>
    private const int Most = 100;

    private readonly List<(Position Anchor, ScenarioError Error)> found = [];

    public bool Any => found.Count > 0;

    /// <summary>How many there are.</summary>
    public int Count => found.Count;

    public void Add(Position at, string message) => found.Add((at, new ScenarioError(file, at.Line, at.Column, message)));

    /// <summary>Adds an error of the whole file.</summary>
    public void Add(string message) => found.Add((default, new ScenarioError(file, 0, 0, message)));

    /// <summary>Adds an error in a data file, listed where the scenario refers to it.</summary>
    public void AddInDataFile(string dataFile, int line, Position anchor, string message) =>
        AddInDataFile(dataFile, new Position(line, 0), anchor, message);

    /// <summary>The same where the column is known.</summary>
    public void AddInDataFile(string dataFile, Position at, Position anchor, string message) =>
        found.Add((anchor, new ScenarioError(dataFile, at.Line, at.Column, message)));

    /// <summary>Throws if anything was found.</summary>
    /// <exception cref="ScenarioException">There are errors.</exception>
    public void ThrowIfAny()
    {
        if (!Any)
        {
            return;
        }

        // OrderBy is stable: errors of one place stay in the order they were found.
        List<ScenarioError> inOrder = [.. found.OrderBy(f => f.Anchor.Line).ThenBy(f => f.Anchor.Column).Select(f => f.Error).Distinct()];
        if (inOrder.Count > Most)
        {
            int more = inOrder.Count - Most;
            inOrder.RemoveRange(Most, more);
            inOrder.Add(new ScenarioError(file, 0, 0, $"and {more} more errors"));
        }

        throw new ScenarioException(inOrder);
    }
}
