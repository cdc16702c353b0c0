namespace AxleRisk.Files.Writing;

/// <summary>A piece of a text, from one offset up to another, and what comes in its place.</summary>
internal readonly record struct Splice(int From, int To, string Text)
{
    /// <summary>The text with all pieces replaced; they must not overlap.</summary>
    public static string Apply(string text, IEnumerable<Splice> splices) =>
        splices.OrderByDescending(s => s.From).ThenByDescending(s => s.To)
            .Aggregate(text, (t, s) => string.Concat(t.AsSpan(0, s.From), s.Text, t.AsSpan(s.To)));
}
