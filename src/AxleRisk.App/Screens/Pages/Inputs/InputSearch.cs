using AxleRisk.App.Screens.Editing;

namespace AxleRisk.App.Screens.Pages.Inputs;

/// <summary>Finds places in the list of inputs, counted over all groups.</summary>
internal static class InputSearch
{
    /// <summary>
    /// The next input behind a place, round to it, that has a text in its name, key or value; or is the first of a group whose
    /// title begins with it.
    /// </summary>
    /// <returns>Its place; -1 where there is none.</returns>
    public static int Next(IReadOnlyList<InputGroup> groups, int place, string text)
    {
        (InputGroup Group, InputRow Row)[] all = [.. groups.SelectMany(g => g.Rows.Select(r => (g, r)))];
        bool Has(string word) => word.Contains(text, StringComparison.OrdinalIgnoreCase);
        return Enumerable.Range(1, all.Length).Select(step => (place + step) % all.Length)
            .FirstOrDefault(i => all[i] is var (group, row)
                && (Has(row.Label) || Has(row.Name) || Has(row.ValueText)
                    || (row == group.Rows[0] && group.Title.StartsWith(text, StringComparison.OrdinalIgnoreCase))), -1);
    }

    /// <summary>The first input of the group so many after that of a place; backward, first that of the group itself.</summary>
    public static int Group(IReadOnlyList<InputGroup> groups, int place, int step)
    {
        int[] starts = [.. groups.Select((_, i) => groups.Take(i).Sum(g => g.Rows.Count))];
        return step > 0 ? starts.FirstOrDefault(s => s > place, place) : starts.LastOrDefault(s => s < place, 0);
    }
}
