using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Files.Format;

/// <summary>The words of the scenario file and what they stand for, the default first.</summary>
internal static class FormatWords
{
    public static IReadOnlyDictionary<string, Knowledge> KnowledgeKinds { get; } = new Dictionary<string, Knowledge>
    {
        ["varies"] = Knowledge.Varies,
        ["unknown"] = Knowledge.Unknown,
    };

    public static IReadOnlyDictionary<string, SectionShape> Shapes { get; } = new Dictionary<string, SectionShape>
    {
        ["tube"] = SectionShape.Tube,
        ["box"] = SectionShape.Box,
        ["given"] = SectionShape.Given,
    };

    public static IReadOnlyDictionary<string, BearingKind> Bearings { get; } = new Dictionary<string, BearingKind>
    {
        ["ball"] = BearingKind.Ball,
        ["roller"] = BearingKind.Roller,
    };

    public static IReadOnlyDictionary<string, CycleCounting> Countings { get; } = new Dictionary<string, CycleCounting>
    {
        ["dirlik"] = CycleCounting.Dirlik,
        ["narrow-band"] = CycleCounting.NarrowBand,
        ["tovo-benasciutti"] = CycleCounting.TovoBenasciutti,
    };

    /// <summary>What failures a decision counts; whether they are those under the warranty.</summary>
    public static IReadOnlyDictionary<string, bool> DecisionSpans { get; } = new Dictionary<string, bool>
    {
        ["distance"] = false,
        ["warranty"] = true,
    };

    /// <summary>What a look for the crack has found; whether that is a crack.</summary>
    public static IReadOnlyDictionary<string, bool> Sightings { get; } = new Dictionary<string, bool>
    {
        ["nothing"] = false,
        ["crack"] = true,
    };

    public static IReadOnlyDictionary<string, char> RoadClasses { get; } = "ABCDEFGH".ToDictionary(c => c.ToString());

    /// <summary>The modes of failure that can be left out.</summary>
    public static ImmutableArray<string> Modes { get; } = ["yield", Quantities.BearingSection];

    /// <summary>The words as a kind of key.</summary>
    public static KeyKind.Word Of<T>(IReadOnlyDictionary<string, T> words) => new([.. words.Keys]);
}
