namespace AxleRisk.App.Screens.Shell;

/// <summary>Names for files that are not there yet.</summary>
internal static class NewFile
{
    /// <summary>The name, or where it is taken one with a number behind it.</summary>
    public static string Free(string name) => !System.IO.File.Exists(name) ? name
        : Enumerable.Range(2, 999).Select(n => $"{Path.GetFileNameWithoutExtension(name)}-{n}{Path.GetExtension(name)}")
            .FirstOrDefault(n => !System.IO.File.Exists(n), name);

    /// <summary>Why a new file cannot have a path; null where it can.</summary>
    public static string? WhyNot(string path) => System.IO.File.Exists(path) || Directory.Exists(path) ? "it is there already: another name"
        : Path.GetDirectoryName(Path.GetFullPath(path)) is { } folder && !Directory.Exists(folder) ? $"there is no folder {folder}"
        : null;
}
