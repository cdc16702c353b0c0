using System.Reflection;

namespace AxleRisk.App;

/// <summary>The program's own name and version.</summary>
internal static class Product
{
    public const string Name = "axlerisk";

    public static string Version { get; } =
        typeof(Product).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion;

    /// <summary>The commit it was made from, which stands behind the + of the version; null for a build of a working copy.</summary>
    public static string? Commit { get; } = Version.Split('+', 2) is [_, var commit] ? commit : null;
}
