namespace AxleRisk.Core.Scenarios;

/// <summary>What stands in the title block of a report; every text may be empty.</summary>
/// <param name="Date">The date, as the author writes it.</param>
/// <param name="Author">Who made the scenario.</param>
/// <param name="Examiner">Who examined the vehicle.</param>
/// <param name="Reviewer">Who has looked it over.</param>
/// <param name="Revision">Which state of it this is.</param>
public sealed record TitleBlock(string Date, string Author, string Examiner, string Reviewer, string Revision)
{
    /// <summary>The keys, in the order they are printed.</summary>
    public static IReadOnlyList<string> Keys { get; } = ["date", "author", "examiner", "reviewer", "revision"];

    /// <summary>Nothing stated.</summary>
    public static TitleBlock Empty { get; } = new("", "", "", "", "");

    /// <summary>What is stated, under its key.</summary>
    public IEnumerable<(string Key, string Text)> Stated =>
        Keys.Zip([Date, Author, Examiner, Reviewer, Revision]).Where(x => x.Second.Length > 0);
}
