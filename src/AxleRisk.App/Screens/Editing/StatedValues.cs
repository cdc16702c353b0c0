using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Editing;

/// <summary>What a scenario's text states, read once for a whole table.</summary>
internal sealed class StatedValues(string text)
{
    private readonly TomlValue.Table? root = ScenarioEditor.Read(text, TomlPath.Root) as TomlValue.Table;

    /// <summary>Whether the text states something under a name.</summary>
    public bool Has(string name) => Find(TomlPath.Of(name)) is not null;

    /// <summary>A number as it stands in the text; null where there is none.</summary>
    public string? Number(string name) => Find(TomlPath.Of(name)) is TomlValue.Number number ? number.Literal : null;

    /// <summary>The value of a path; null where there is none.</summary>
    public TomlValue? Find(TomlPath path)
    {
        TomlValue? at = root;
        foreach (PathPart part in path.Parts)
        {
            at = (at, part.Key) switch
            {
                (TomlValue.Table table, string key) => table[key],
                (TomlValue.List list, null) => list.Items.ElementAtOrDefault(part.Index),
                (TomlValue.List list, string name) =>
                    list.Items.OfType<TomlValue.Table>().FirstOrDefault(t => t["name"] is TomlValue.Text named && named.Value == name),
                _ => null,
            };
        }

        return at;
    }
}
