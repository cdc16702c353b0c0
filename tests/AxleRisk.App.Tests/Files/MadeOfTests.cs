using System.Diagnostics;
using System.Text.Json;
using Xunit;

namespace AxleRisk.App.Tests.Files;

/// <summary>The list of what the program is made of (<c>.ci/sbom</c>) against the lock file, read by another reader.</summary>
public class MadeOfTests
{
    // Fields of the standard (CycloneDX 1.6, ECMA-424), and a place of a package as the purl specification writes it.
    [Fact]
    public void Every_locked_package_is_listed_with_its_place_licence_and_hash()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "the list is made by a script of bash and awk");
        using JsonDocument list = JsonDocument.Parse(Run(".ci/sbom", "1.2.3+abc", "2026-11-28T12:00:00Z", "10.0.0"));
        JsonElement root = list.RootElement;
        Assert.Equal(("CycloneDX", "1.6"), (root.GetProperty("bomFormat").GetString(), root.GetProperty("specVersion").GetString()));
        JsonElement program = root.GetProperty("metadata").GetProperty("component");
        Assert.Equal("1.2.3+abc", program.GetProperty("version").GetString());

        var components = root.GetProperty("components").EnumerateArray().ToDictionary(c => c.GetProperty("bom-ref").GetString()!);
        Assert.All(components.Values, c => Assert.False(string.IsNullOrEmpty(
            c.GetProperty("licenses")[0].GetProperty("expression").GetString())));
        Assert.All(components, c => Assert.Equal(c.Key, c.Value.GetProperty("purl").GetString()));
        Assert.Contains(components.Values, c => c.GetProperty("name").GetString() == ".NET runtime");

        (string Name, string Version, string Hash)[] locked = [.. Locked()];
        Assert.True(locked.Length > 30, $"{locked.Length} packages");
        foreach ((string name, string version, string hash) in locked)
        {
            JsonElement component = components[$"pkg:nuget/{name}@{version}"];
            Assert.Equal(hash, component.GetProperty("properties")[0].GetProperty("value").GetString());
        }

        Assert.Equal(locked.Length + 2, components.Count); // the font and the runtime come from no lock file
    }

    [Fact]
    public void Who_needs_whom_names_listed_parts_alone()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "the list is made by a script of bash and awk");
        using JsonDocument list = JsonDocument.Parse(Run(".ci/sbom"));
        HashSet<string> known =
            [.. list.RootElement.GetProperty("components").EnumerateArray().Select(c => c.GetProperty("bom-ref").GetString()!)];
        var needs = list.RootElement.GetProperty("dependencies").EnumerateArray().ToDictionary(
            d => d.GetProperty("ref").GetString()!, d => d.GetProperty("dependsOn").EnumerateArray().Select(e => e.GetString()!).ToArray());
        Assert.All(needs.Values.SelectMany(n => n), n => Assert.Contains(n, known));

        // From the program everything listed is reached.
        HashSet<string> reached = [];
        var left = new Stack<string>([needs.Keys.First()]);
        while (left.TryPop(out string? next))
        {
            foreach (string n in needs.GetValueOrDefault(next, []).Where(reached.Add))
            {
                left.Push(n);
            }
        }

        Assert.Equal(known.Order(), reached.Order());
        Assert.StartsWith("pkg:generic/axlerisk@", needs.Keys.First());
    }

    private static IEnumerable<(string Name, string Version, string Hash)> Locked()
    {
        using JsonDocument file = JsonDocument.Parse(File.ReadAllText(Repository.PathTo("src", "AxleRisk.App", "packages.lock.json")));
        foreach (JsonProperty package in file.RootElement.GetProperty("dependencies").GetProperty("net10.0").EnumerateObject())
        {
            // Our own projects, and what only the build uses.
            if (package.Value.GetProperty("type").GetString() != "Project"
                && package.Name is not ("Microsoft.CodeAnalysis.BannedApiAnalyzers" or "JetBrains.Annotations"))
            {
                JsonElement locked = package.Value;
                yield return (package.Name, locked.GetProperty("resolved").GetString()!, locked.GetProperty("contentHash").GetString()!);
            }
        }
    }

    private static string Run(string script, params string[] arguments)
    {
        var start = new ProcessStartInfo("bash", [Repository.PathTo(script), .. arguments])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using Process process = Process.Start(start)!;
        string output = process.StandardOutput.ReadToEnd();
        Assert.Equal("", process.StandardError.ReadToEnd());
        process.WaitForExit();
        Assert.Equal(0, process.ExitCode);
        return output;
    }
}
