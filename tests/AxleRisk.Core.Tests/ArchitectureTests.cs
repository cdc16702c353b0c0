using System.Text.RegularExpressions;
using AxleRisk.Core.Numerics;
using Xunit;

namespace AxleRisk.Core.Tests;

/// <summary>The rules of the layout, read from the source files.</summary>
public partial class ArchitectureTests
{
    // The folders in order: each uses only itself and those before it. One inside another sees that one's types without saying
    // so, and so always stands after it.
    private static readonly string[] Folders =
    [
        "Numerics", "Numerics.Vectors", "Randomness", "Distributions", "Sampling", "Scenarios",
        "Damage.Fatigue", "Damage.Roads", "Damage.Rides", "Damage.Sections", "Damage.Spectra", "Damage.BumpStops", "Damage.TimeDomain",
        "Damage.Kernel", "Damage.Yields", "Damage.Bearings",
        "Outcomes", "Modes", "Studies",
        "Analyses.Fits", "Analyses.BaseCase", "Analyses.RareEvents", "Analyses.Risk", "Analyses.Remedies", "Analyses.Sweeps", "Analyses.Combinations", "Analyses.Causes",
        "Analyses.Shares", "Analyses.Ranking", "Analyses.Trips", "Analyses.Strikes", "Analyses.Confirmation", "Analyses.Fleets",
        "Analyses.Decisions", "Analyses.Measurements", "Analyses.Learning", "Analyses.Inspections",
    ];

    // Nor these, though they stand before it: a plan fills the unit cube and knows no distribution, the damage model takes
    // numbers and knows neither scenario nor sampler.
    private static readonly (string Folder, string Forbidden)[] AlsoForbidden =
        [("Sampling", "Distributions"), ("Damage", "Scenarios"), ("Damage", "Sampling")];

    private static readonly string Source = Path.Combine(RepositoryRoot(), "src", "AxleRisk.Core");

    [Fact]
    public void Folders_of_the_core_use_only_those_before_them()
    {
        string[] offences =
        [
            .. from file in SourceFiles(Source)
               let folder = FolderOf(file)
               where folder is not null
               from used in FoldersUsed(File.ReadAllText(file))
               where !MayUse(folder, used)
               select $"{Path.GetRelativePath(Source, file)} uses {used}",
        ];
        Assert.Empty(offences);
    }

    [Fact]
    public void Every_folder_of_the_core_has_its_place()
    {
        string[] used = [.. SourceFiles(Source).Select(FolderOf).OfType<string>().Distinct()];
        Assert.NotEmpty(used);
        Assert.Empty(used.Except(Folders));
    }

    // The projects of src and what each may refer to: App -> {Files, Reports} -> Core.
    [Theory]
    [InlineData("AxleRisk.Core", "MathNet.Numerics")]
    [InlineData("AxleRisk.Files", "AxleRisk.Core CsvHelper Tomlyn")]
    [InlineData("AxleRisk.Reports", "AxleRisk.Core ScottPlot")]
    public void A_project_refers_only_to_what_it_may(string project, string allowed)
    {
        string text = File.ReadAllText(Path.Combine(RepositoryRoot(), "src", project, project + ".csproj"));
        string[] used =
        [
            .. ReferenceName().Matches(text)
                .Select(m => m.Groups[1].Value == "Project" ? Path.GetFileNameWithoutExtension(m.Groups[2].Value) : m.Groups[2].Value),
        ];
        Assert.NotEmpty(used);
        Assert.Empty(used.Except(allowed.Split(' ')));
    }

    // Charts stand below the document model, and that below the renderers.
    [Theory]
    [InlineData("Charts", "Content")]
    [InlineData("Charts", "Rendering")]
    [InlineData("Content", "Rendering")]
    public void Folders_of_the_reports_use_only_those_below_them(string folder, string forbidden)
    {
        string[] files = [.. SourceFiles(Path.Combine(RepositoryRoot(), "src", "AxleRisk.Reports", folder))];
        Assert.NotEmpty(files);
        Assert.All(files, f => Assert.DoesNotContain("AxleRisk.Reports." + forbidden, File.ReadAllText(f), StringComparison.Ordinal));
    }

    [Fact]
    public void Only_the_charts_know_the_drawing_library()
    {
        string charts = Path.Combine("AxleRisk.Reports", "Charts");
        string[] users = [.. SourceFiles(Path.Combine(RepositoryRoot(), "src")).Where(f => DrawingLibrary().IsMatch(File.ReadAllText(f)))];
        Assert.NotEmpty(users);
        Assert.All(users, f => Assert.Contains(charts, f, StringComparison.Ordinal));
    }

    [Fact]
    public void Namespaces_of_the_core_follow_its_folders()
    {
        string[] offences =
        [
            .. from file in SourceFiles(Source)
               where FolderOf(file) is not null && !File.ReadLines(file).Contains($"namespace AxleRisk.Core.{FolderOf(file)};")
               select Path.GetRelativePath(Source, file),
        ];
        Assert.Empty(offences);
    }

    [Theory]
    [InlineData("using AxleRisk.Core.Damage.Kernel;", "Numerics", false)]
    [InlineData("using AxleRisk.Core.Damage.Kernel;", "Damage.TimeDomain", false)]
    [InlineData("using AxleRisk.Core.Damage.TimeDomain;", "Damage.Kernel", true)]
    [InlineData("using AxleRisk.Core.Damage.Fatigue;", "Sampling", false)]
    [InlineData("using AxleRisk.Core.Numerics.Vectors;", "Numerics", false)]
    [InlineData("using static AxleRisk.Core.Numerics.StandardNormal;", "Damage.Rides", true)]
    [InlineData("using D = AxleRisk.Core.Distributions.Normal;", "Sampling", false)]
    [InlineData("    var x = global::AxleRisk.Core.Scenarios.Quantities.All;", "Damage.Kernel", false)]
    [InlineData("using AxleRisk.Core.Analyses.Risk;", "Studies", false)]
    [InlineData("using AxleRisk.Core.Analyses.Risk;", "Analyses.RareEvents", false)]
    [InlineData("namespace AxleRisk.Core.Analyses.Risk;", "Studies", true)]
    public void The_rule_itself_catches_what_it_should(string line, string folder, bool allowed) =>
        Assert.Equal(allowed, FoldersUsed(line).All(used => MayUse(folder, used)));

    [Fact]
    public void No_source_file_is_longer_than_500_lines()
    {
        string root = RepositoryRoot();
        string[] tooLong =
        [
            .. from file in SourceFiles(Path.Combine(root, "src")).Concat(SourceFiles(Path.Combine(root, "tests")))
               let lines = File.ReadLines(file).Count()
               where lines > 500
               select $"{Path.GetRelativePath(root, file)}: {lines} lines",
        ];
        Assert.Empty(tooLong);
    }

    // What .editorconfig says of lines, which the formatter does not check. A text is never broken for it.
    [Fact]
    public void No_line_is_longer_than_140_characters_but_for_its_texts()
    {
        string root = RepositoryRoot();
        string[] tooLong =
        [
            .. from file in SourceFiles(Path.Combine(root, "src")).Concat(SourceFiles(Path.Combine(root, "tests")))
               from line in RawText().Replace(File.ReadAllText(file), "").Split('\n')
               where line.Length > 140 && Text().Replace(line, "").Length > 140
               select $"{Path.GetRelativePath(root, file)}: {line.Trim()}",
        ];
        Assert.Empty(tooLong);
    }

    [Fact]
    public void No_namespace_is_named_like_a_type()
    {
        Type[] types = [.. typeof(StandardNormal).Assembly.GetTypes().Where(IsOurs)];
        HashSet<string> namespaceParts = [.. types.SelectMany(t => t.Namespace!.Split('.'))];
        Assert.Contains("Numerics", namespaceParts);
        Assert.Empty(types.Where(t => !t.IsNested && namespaceParts.Contains(t.Name)).Select(t => t.FullName));
    }

    private static bool IsOurs(Type type) => type.Namespace?.StartsWith("AxleRisk", StringComparison.Ordinal) == true;

    private static bool MayUse(string folder, string used) =>
        Array.IndexOf(Folders, used) <= Array.IndexOf(Folders, folder) && !AlsoForbidden.Contains((folder.Split('.')[0], used));

    // The longest name that fits: a type is named after its folder.
    private static string[] FoldersUsed(string text) =>
    [
        .. FolderName().Matches(NamespaceLine().Replace(text, ""))
            .Select(m => Folders.Where(f => $"{m.Groups[1].Value}.".StartsWith(f + '.', StringComparison.Ordinal)).MaxBy(f => f.Length))
            .OfType<string>(),
    ];

    // As in its namespace; null for a file beside the folders.
    private static string? FolderOf(string file) =>
        Path.GetDirectoryName(Path.GetRelativePath(Source, file)) is { Length: > 0 } folder
            ? folder.Replace(Path.DirectorySeparatorChar, '.') : null;

    private static IEnumerable<string> SourceFiles(string folder) =>
        Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories)
            .Where(f => !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal));

    private static string RepositoryRoot()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "AxleRisk.sln")))
        {
            folder = Path.GetDirectoryName(folder);
        }

        return folder ?? throw new InvalidOperationException("no AxleRisk.sln above the tests");
    }

    [GeneratedRegex(@"\bAxleRisk\.Core\.([\w.]+)")]
    private static partial Regex FolderName();

    [GeneratedRegex(@"<(Project|Package)Reference Include=""([^""]+)""")]
    private static partial Regex ReferenceName();

    [GeneratedRegex(@"\b(ScottPlot|SkiaSharp)\b")]
    private static partial Regex DrawingLibrary();

    [GeneratedRegex(@"^\s*namespace .*$", RegexOptions.Multiline)]
    private static partial Regex NamespaceLine();

    [GeneratedRegex("\"\"\".*?\"\"\"", RegexOptions.Singleline)]
    private static partial Regex RawText();

    [GeneratedRegex("\"(\\\\.|[^\"\\\\])*\"")]
    private static partial Regex Text();
}
