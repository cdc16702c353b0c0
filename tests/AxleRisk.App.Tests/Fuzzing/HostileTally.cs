namespace AxleRisk.App.Tests.Fuzzing;

/// <summary>What came of many hostile texts.</summary>
internal sealed class HostileTally
{
    private readonly Dictionary<string, (long All, long Refused, TimeSpan Longest)> kinds = [];

    /// <summary>What went wrong, a line each.</summary>
    public List<string> Faults { get; } = [];

    /// <summary>The kinds in the order in which they came up.</summary>
    public IEnumerable<(string Kind, long All, long Refused, TimeSpan Longest)> Kinds =>
        kinds.Select(k => (k.Key, k.Value.All, k.Value.Refused, k.Value.Longest));

    /// <summary>Counts one.</summary>
    public void Count(string kind, bool refused, TimeSpan took)
    {
        (long all, long no, TimeSpan longest) = kinds.GetValueOrDefault(kind);
        kinds[kind] = (all + 1, no + (refused ? 1 : 0), took > longest ? took : longest);
    }

    /// <summary>Notes a fault.</summary>
    public void Wrong(string kind, long number, string fault) => Faults.Add($"{kind} {number}: {fault}");
}
