namespace AxleRisk.App.Commands.Cluster;

/// <summary>How a batch job starts this program.</summary>
internal static class Shell
{
    /// <summary>A word that a shell takes as it stands, whatever is in it.</summary>
    public static string Quote(string word) => $"'{word.Replace("'", "'\\''")}'";

    /// <summary>
    /// This program, as another machine starts it: of an archive what chooses the build, for the other may have another processor.
    /// </summary>
    public static string[] Program()
    {
        string path = Environment.ProcessPath ?? Product.Name;
        string[] up = path.Split('/');
        string chooser = up is [.., "lib", _, _] ? string.Join('/', up[..^3].Append(Product.Name)) : "";
        return Path.GetFileNameWithoutExtension(path) == "dotnet" ? [path, Path.Combine(AppContext.BaseDirectory, $"{Product.Name}.dll")]
            : chooser.Length > 0 && File.Exists(chooser) ? [chooser] : [path];
    }
}
