namespace AxleRisk.Files.Writing;

/// <summary>What of a scenario decides its figures, as a key: two with the same key have the same answers to every study.</summary>
public static class ScenarioNumbers
{
    /// <summary>Keys at the top of the file that are only printed.</summary>
    private static readonly HashSet<string> OnlyPrinted = ["title", "about", "currency", .. Core.Scenarios.TitleBlock.Keys];

    /// <summary>The key: everything stated but what is only printed, without comments and manner of writing, and the data files.</summary>
    /// <param name="text">The text of a valid scenario.</param>
    /// <param name="document">The scenario of the text.</param>
    public static string KeyOf(string text, ScenarioDocument document) =>
        ScenarioEditor.Read(text, TomlPath.Root) is TomlValue.Table root
            ? new TomlValue.Table([.. root.Items.Where(i => !OnlyPrinted.Contains(i.Key))]).Plain().Write() + document.DataDigest
            : document.Digest;

    /// <summary>The value with its numbers in the shortest way.</summary>
    private static TomlValue Plain(this TomlValue value) => value switch
    {
        TomlValue.Number number => TomlValue.Of(number.Value),
        TomlValue.List list => TomlValue.ListOf(list.Items.Select(Plain)),
        TomlValue.Table table => new TomlValue.Table([.. table.Items.Select(i => i with { Value = i.Value.Plain() })]),
        _ => value,
    };
}
