using System.Text;
using System.Text.RegularExpressions;
using AxleRisk.Core.Randomness;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Text;

namespace AxleRisk.Benchmarks.Mutants;

/// <summary>
/// Plants errors, drawn at random, in a copy of the repository: all in one build, each behind a switch that the environment variable
/// AXLERISK_MUTANT turns on by its number.
/// </summary>
internal sealed partial class MutantPlanter
{
    // Where an error is an error of the numbers.
    private static readonly string[] Folders = ["Damage", "Modes", "Studies", "Analyses", "Numerics", "Distributions"];

    private const string Switch = """
        namespace AxleRisk.Core;
        internal static class Planted
        {
            private static readonly int Active = int.TryParse(System.Environment.GetEnvironmentVariable("AXLERISK_MUTANT"), out int n) ? n : 0;
            internal static bool On(int number) => Active == number;
        }
        """;

    private readonly string core;
    private readonly Dictionary<string, SyntaxTree> trees = [];
    private readonly CSharpCompilation compilation;

    private MutantPlanter(string repository)
    {
        core = Path.Combine(repository, "src", "AxleRisk.Core");
        string usings = Directory.GetFiles(Path.Combine(core, "obj"), "*.GlobalUsings.g.cs", SearchOption.AllDirectories)[0];
        string[] files = [.. Directory.GetFiles(core, "*.cs", SearchOption.AllDirectories)
            .Where(f => !Path.GetRelativePath(core, f).StartsWith("obj", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];
        foreach (string file in files.Append(usings))
        {
            trees.Add(Path.GetRelativePath(core, file), Parse(File.ReadAllText(file)));
        }

        trees.Add("Planted.cs", Parse(Switch));
        string platform = (string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!;
        IEnumerable<MetadataReference> references = platform.Split(Path.PathSeparator)
            .Where(p => !Path.GetFileName(p).StartsWith("AxleRisk", StringComparison.Ordinal))
                .Select(p => MetadataReference.CreateFromFile(p));
        compilation = CSharpCompilation.Create(
            "AxleRisk.Core", trees.Values, references,
            new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, nullableContextOptions: NullableContextOptions.Enable,
                allowUnsafe: true));
    }

    /// <summary>Plants <paramref name="count"/> errors in the copy and writes their list beside it.</summary>
    /// <param name="repository">The copy, built once; its sources are overwritten.</param>
    /// <param name="count">How many.</param>
    /// <param name="seed">The seed of the draw.</param>
    /// <param name="list">The file that takes the list.</param>
    public static void Plant(string repository, int count, ulong seed, string list)
    {
        var planter = new MutantPlanter(repository);
        Mutant[] all = planter.Candidates();
        List<Mutant> chosen = planter.Choose(all, count, seed);
        foreach (IGrouping<string, (Mutant Mutant, int Number)> ofFile in Numbered(chosen))
        {
            File.WriteAllText(Path.Combine(planter.core, ofFile.Key), planter.TextWith(ofFile));
        }

        File.WriteAllText(Path.Combine(planter.core, "Planted.cs"), Switch);
        File.WriteAllLines(list, chosen.Select((m, i) => $"{i + 1}\t{m.File}:{m.Line}\t{m.Kind}\t{OneLine(m.Before)}\t{OneLine(m.After)}"));
        Console.WriteLine($"{all.Length} possible, {chosen.Count} planted, seed {seed}: {list}");
    }

    private Mutant[] Candidates()
    {
        var all = new List<Mutant>();
        foreach ((string file, SyntaxTree tree) in trees.Where(t => Folders.Contains(t.Key.Split(Path.DirectorySeparatorChar)[0]))
            .OrderBy(t => t.Key, StringComparer.Ordinal))
        {
            var finder = new MutantFinder(file, compilation.GetSemanticModel(tree));
            finder.Visit(tree.GetRoot());
            all.AddRange(finder.Found);
        }

        return [.. all];
    }

    // In random order, each that overlaps none before it; then those that the compiler refuses are replaced until it takes all.
    private List<Mutant> Choose(Mutant[] all, int count, ulong seed)
    {
        var order = new Queue<Mutant>(Shuffled(all, seed));
        var chosen = new List<Mutant>();
        while (true)
        {
            while (chosen.Count < count && order.TryDequeue(out Mutant? next))
            {
                if (!chosen.Any(c => c.File == next.File && c.Span.OverlapsWith(next.Span)))
                {
                    chosen.Add(next);
                }
            }

            HashSet<int> refused = Refused(chosen);
            if (refused.Count == 0)
            {
                return chosen;
            }

            chosen = [.. chosen.Where((_, i) => !refused.Contains(i + 1))];
        }
    }

    private HashSet<int> Refused(List<Mutant> chosen)
    {
        CSharpCompilation planted = compilation;
        foreach (IGrouping<string, (Mutant Mutant, int Number)> ofFile in Numbered(chosen))
        {
            planted = planted.ReplaceSyntaxTree(trees[ofFile.Key], Parse(TextWith(ofFile)).WithFilePath(ofFile.Key));
        }

        var refused = new HashSet<int>();
        foreach (Diagnostic error in planted.GetDiagnostics().Where(d => d.Severity == DiagnosticSeverity.Error))
        {
            string[] lines = error.Location.SourceTree!.ToString().Split('\n');
            FileLinePositionSpan span = error.Location.GetLineSpan();
            int[] near = [.. Numbers(string.Join('\n', lines[span.StartLinePosition.Line..(span.EndLinePosition.Line + 1)]))];

            // A declaration in doubt is reported elsewhere: then all of the file go.
            refused.UnionWith(near.Length > 0 ? near : Numbers(string.Join('\n', lines)));
            if (near.Length == 0 && !Numbers(string.Join('\n', lines)).Any())
            {
                throw new InvalidOperationException(error.ToString());
            }
        }

        return refused;
    }

    private string TextWith(IEnumerable<(Mutant Mutant, int Number)> ofFile)
    {
        string file = ofFile.First().Mutant.File;
        SourceText text = trees[file].GetText();
        return text.WithChanges(ofFile.OrderBy(m => m.Mutant.Span.Start)
            .Select(m => new TextChange(m.Mutant.Span, m.Mutant.Switched(m.Number)))).ToString();
    }

    private static IEnumerable<IGrouping<string, (Mutant Mutant, int Number)>> Numbered(List<Mutant> chosen) =>
        chosen.Select((m, i) => (Mutant: m, Number: i + 1)).GroupBy(m => m.Mutant.File);

    private static IEnumerable<int> Numbers(string text) =>
        SwitchNumber().Matches(text).Select(m => int.Parse(m.Groups[1].ValueSpan));

    private static SyntaxTree Parse(string text) =>
        CSharpSyntaxTree.ParseText(SourceText.From(text, Encoding.UTF8), new CSharpParseOptions(LanguageVersion.Preview));

    private static string OneLine(string text) =>
        string.Join(' ', text.Split((char[])['\r', '\n', '\t', ' '], StringSplitOptions.RemoveEmptyEntries));

    private static Mutant[] Shuffled(Mutant[] all, ulong seed)
    {
        var stream = new RandomStream(new StreamKey(seed, "mutants"));
        ulong[] keys = [.. all.Select((_, i) => stream.Word(i, lane: 0))];
        Array.Sort(keys, all);
        return all;
    }

    [GeneratedRegex(@"Planted\.On\((\d+)\)")]
    private static partial Regex SwitchNumber();
}
