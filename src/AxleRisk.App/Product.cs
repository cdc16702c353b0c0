using System.Reflection;

namespace AxleRisk.App;

/// <summary>The program's own name and version.</summary>
internal static class Product
{
    public const string Name = "axlerisk";

    public static string Version { get; } =
        typeof(Product).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion;
}
