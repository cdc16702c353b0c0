using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Files.Writing;

/// <summary>The order in which new sections and keys are written. What is not named here comes last; nothing else depends on it.</summary>
internal static class Sections
{
    private static readonly ImmutableArray<string> InOrder =
        ["vehicle", "axle", "detail", "use", "use.legs", "fatigue", "correlations", "evidence", "evidence.measured", "evidence.known",
            "explanations", "remedies"];

    private static readonly Dictionary<string, ImmutableArray<string>> Keys = new()
    {
        [""] = ["title", "about", .. TitleBlock.Keys, "required_km", "currency"],
        ["vehicle"] = Of("vehicle"),
        ["axle"] = ["shape", .. Of("axle")],
        ["detail"] = ["catalogue", "category", "environment", "thickness_exponent"],
        ["use"] = [.. Of("use"), "mix_concentration", "mix_knowledge"],
        [Quantities.LegSection] = ["name", "share", "road_class", .. Of(Quantities.LegSection)],
        ["fatigue"] = ["counting", .. Of("fatigue")],
        ["correlations"] = ["between", "spearman"],
        ["remedies"] = ["name", "cost", "change"],
        ["explanations"] = ["name", "prior", "when"],
    };

    /// <summary>The place of a section among the sections; a section inside another has the other's.</summary>
    public static int Rank(string section) =>
        InOrder.IndexOf(section) is >= 0 and int rank ? rank
        : section.LastIndexOf('.') is > 0 and int dot ? Rank(section[..dot])
        : int.MaxValue;

    /// <summary>The place of a key in its section.</summary>
    public static int Rank(string section, string key) =>
        Keys.TryGetValue(section, out ImmutableArray<string> keys) && keys.IndexOf(key) is >= 0 and int rank ? rank : int.MaxValue;

    private static ImmutableArray<string> Of(string section) => [.. Quantities.All.Where(q => q.Section == section).Select(q => q.Key)];
}
