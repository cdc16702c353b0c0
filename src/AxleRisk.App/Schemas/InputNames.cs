using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;

namespace AxleRisk.App.Schemas;

/// <summary>How inputs are named in correlations, evidence, explanations and remedies.</summary>
internal static class InputNames
{
    /// <summary>The choices among words as inputs, with their keys.</summary>
    public static IEnumerable<(string Name, KeyFormat Key)> Words { get; } =
        [.. Change.WordNames.Select(n => (n, DetailFormat.Detail.Find(n[(n.IndexOf('.') + 1)..])!))];

    private const string Leg = KeyKind.PlainName.Form;

    /// <summary>The sections of inputs that there are once, with their keys.</summary>
    public static IEnumerable<IGrouping<string, KeyFormat>> Sections { get; } =
    [
        .. ScenarioFormat.All.Where(t => t.Path.Length > 0 && !t.Path.Contains('.') && t != SectionFormat.Section)
            .SelectMany(t => t.Keys.Where(k => k.Quantity is not null).Select(k => (t.Path, Key: k))).GroupBy(x => x.Path, x => x.Key),
    ];

    /// <summary>The keys of a usual leg that are inputs.</summary>
    public static IEnumerable<KeyFormat> OfLeg { get; } = [.. UseFormat.Leg.Keys.Where(k => k.Quantity is not null)];

    /// <summary>The keys of a leg of a trip that are inputs.</summary>
    public static IEnumerable<KeyFormat> OfTripLeg { get; } = [.. TripFormat.Leg.Keys.Where(k => k.Quantity is not null)];

    /// <summary>The keys of an event that are inputs.</summary>
    public static IEnumerable<KeyFormat> OfEvent { get; } = [.. UseFormat.Event.Keys.Where(k => k.Quantity is not null)];

    /// <summary>The keys of a further section that are inputs, those of its choices among words too.</summary>
    public static IEnumerable<KeyFormat> OfSection { get; } =
    [
        .. SectionFormat.Section.Keys.Where(k => k.Quantity is not null || k.Kind is KeyKind.Category or KeyKind.WordOrChoice),
    ];

    /// <summary>The names of a key of the further sections, as a regular expression.</summary>
    public static string SectionPattern(string key) => $"^{CheckedSection.Table}\\.{Leg}\\.{key}$";

    /// <summary>The names of a key of the events of legs, as a regular expression.</summary>
    public static string EventPattern(string key, string legs = "legs") => $"^{legs}\\.{Leg}\\.events\\.{Leg}\\.{key}$";

    /// <summary>The names that are the same in every scenario.</summary>
    public static IEnumerable<string> Fixed => Sections.SelectMany(s => s.Select(k => $"{s.Key}.{k.Key}"));

    /// <summary>The names of a key of the usual legs, as a regular expression.</summary>
    public static string LegPattern(string key) => $"^legs\\.{Leg}\\.{key}$";

    /// <summary>The names of a key of the trip's legs, as a regular expression.</summary>
    public static string TripLegPattern(string key) => $"^trip\\.{Leg}\\.{key}$";
}
