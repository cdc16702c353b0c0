using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Distributions;
using AxleRisk.Files.Reading;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files;

/// <summary>Reads one number or distribution by itself, as a form is filled in.</summary>
public static class ValueText
{
    /// <summary>Reads a value.</summary>
    /// <param name="text">A text with the value behind one key.</param>
    /// <param name="key">The key.</param>
    /// <param name="domain">The values that make sense.</param>
    /// <param name="path">The scenario file, beside which its data lie.</param>
    /// <param name="dataFolders">Further folders that its data files may lie in.</param>
    /// <returns>The value, null where it is wrong; and what is wrong with it.</returns>
    public static (Value? Value, IReadOnlyList<ScenarioError> Errors) Read(
        string text, string key, Domain domain, string path, IReadOnlyList<string>? dataFolders = null)
    {
        ErrorLog errors = new(path);
        try
        {
            Value? value = TomlTree.Parse(text, errors)?.Find(key) is { } entry
                ? new ValueReader(errors, new DataFiles(new DataFolder(path, dataFolders ?? []).Read)).Read(entry.Node, key, domain)
                : null;
            errors.ThrowIfAny();
            return (value, []);
        }
        catch (ScenarioException e)
        {
            return (null, e.Errors);
        }
    }
}
