using System.Reflection;
using System.Text;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files;
using Xunit;

namespace AxleRisk.App.Tests.Files;

/// <summary>
/// What the libraries offer to programs of others is listed in a file, so that nothing becomes public, or goes, without being seen: a
/// change on purpose renews it with AXLERISK_NEW_API=1.
/// </summary>
public class PublicApiTests
{
    // What the compiler adds to a record.
    private static readonly string[] OfRecords = ["Equals", "GetHashCode", "ToString", "Deconstruct", "PrintMembers", "<Clone>$"];

    public static TheoryData<string> Libraries => ["AxleRisk.Core", "AxleRisk.Files"];

    [Theory]
    [MemberData(nameof(Libraries))]
    public void The_public_api_is_the_listed_one(string library)
    {
        string path = Repository.PathTo("tests", "data", "api", library + ".txt");
        string api = string.Join('\n', (library == "AxleRisk.Core" ? typeof(Scenario) : typeof(ScenarioReader)).Assembly.GetExportedTypes()
            .OrderBy(t => t.FullName, StringComparer.Ordinal).Select(Listed)) + "\n";
        if (Environment.GetEnvironmentVariable("AXLERISK_NEW_API") is { Length: > 0 })
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, api);
            return;
        }

        string[] listed = File.ReadAllLines(path), now = api.TrimEnd().Split('\n');
        Assert.Empty(now.Except(listed).Select(l => "not listed: " + l));
        Assert.Empty(listed.Except(now).Select(l => "listed and gone: " + l));
    }

    private static string Listed(Type type)
    {
        var lines = new StringBuilder($"{Kind(type)} {type.FullName}");
        const BindingFlags Own =
            BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
        if (type.IsEnum)
        {
            return $"{lines}: {string.Join(", ", Enum.GetNames(type))}";
        }

        bool isRecord = type.GetMethod("<Clone>$") is not null || type.GetMethod("PrintMembers", Own) is not null;
        IEnumerable<string> members =
        [
            .. type.GetConstructors(Own).Where(c => IsSeen(c) && !IsCopy(c, type)).Select(c => $".ctor({Parameters(c)})"),
            .. type.GetMethods(Own).Where(m => IsSeen(m) && !m.IsSpecialName && !(isRecord && OfRecords.Contains(m.Name)))
                .Select(m => $"{(m.IsStatic ? "static " : "")}{m.Name}({Parameters(m)}): {Name(m.ReturnType)}"),
            .. type.GetProperties(Own).Where(p => p.GetMethod is { } get && IsSeen(get) && p.Name != "EqualityContract")
                .Select(p => $"{(p.GetMethod!.IsStatic ? "static " : "")}{p.Name}: {Name(p.PropertyType)}{Setter(p)}"),
            .. type.GetFields(Own).Where(f => f.IsPublic).Select(f => $"{(f.IsLiteral ? "const " : "")}{f.Name}: {Name(f.FieldType)}"),
        ];
        foreach (string member in members.Order(StringComparer.Ordinal))
        {
            lines.Append('\n').Append(type.FullName).Append('.').Append(member);
        }

        return lines.ToString();
    }

    private static bool IsSeen(MethodBase method) => method.IsPublic || method.IsFamily || method.IsFamilyOrAssembly;

    private static string Setter(PropertyInfo property) => property.SetMethod is { } set && IsSeen(set) ? " { set }" : "";

    private static bool IsCopy(ConstructorInfo constructor, Type type) =>
        constructor.GetParameters() is [var only] && only.ParameterType == type;

    private static string Kind(Type type) => type switch
    {
        { IsEnum: true } => "enum",
        { IsInterface: true } => "interface",
        { IsValueType: true } => "struct",
        { IsAbstract: true, IsSealed: true } => "static class",
        { IsAbstract: true } => "abstract class",
        { IsSealed: true } => "sealed class",
        _ => "class",
    };

    private static string Parameters(MethodBase method) =>
        string.Join(", ", method.GetParameters().Select(p => $"{Name(p.ParameterType)} {p.Name}{(p.IsOptional ? " = ..." : "")}"));

    private static string Name(Type type) => type.IsArray ? Name(type.GetElementType()!) + "[]"
        : type.IsGenericType ? $"{type.Name.Split('`')[0]}<{string.Join(", ", type.GetGenericArguments().Select(Name))}>" : type.Name;
}
