using System.Collections.Immutable;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>
/// What evidence and explanations may speak of: the uncertain inputs, category and environment, and the legs' shares of an uncertain mix.
/// </summary>
internal sealed class EvidenceNames
{
    private readonly ErrorLog errors;
    private readonly InputCollector inputs;
    private readonly bool detailIsWrong;
    private readonly Dictionary<string, Target?> targets;

    /// <param name="errors">Where errors go.</param>
    /// <param name="inputs">The inputs read.</param>
    /// <param name="detail">The detail; null where it is wrong and reported already.</param>
    /// <param name="sections">The further checked sections.</param>
    /// <param name="mixedLegs">The legs whose shares are uncertain; none where the mix is certain.</param>
    public EvidenceNames(
        ErrorLog errors, InputCollector inputs, Detail? detail, ImmutableArray<CheckedSection> sections, ImmutableArray<Leg> mixedLegs)
    {
        this.errors = errors;
        this.inputs = inputs;
        detailIsWrong = detail is null;
        targets = inputs.InOrder().ToDictionary(i => i.Name, Of);
        foreach (string name in Change.WordNames)
        {
            targets[name] = Choice(name, detail);
        }

        foreach ((CheckedSection section, string name) in sections.SelectMany(s => s.WordNames.Select(n => (s, n))))
        {
            targets[name] = Choice(name, section.Detail);
        }

        foreach (Leg leg in mixedLegs.Length > 1 ? mixedLegs : [])
        {
            string name = $"legs.{leg.Name}.share";
            targets[name] = new Target(name, null, [], []);
        }
    }

    /// <summary>Whether what stands under a name is wrong and reported already.</summary>
    public bool IsWrong(string name) => inputs.IsWrong(name);

    /// <summary>The uncertain thing of a name; null, with the error logged, where there is none.</summary>
    public Target? Find(string name, Position at)
    {
        if (targets.TryGetValue(name, out Target? target) && target is not null)
        {
            return target;
        }

        if (inputs.IsWrong(name) || (Change.WordNames.Contains(name) && detailIsWrong))
        {
            return null;
        }

        if (targets.ContainsKey(name))
        {
            errors.Add(at, $"{name} is certain in this scenario; evidence and explanations can speak only of what is uncertain");
        }
        else
        {
            errors.Add(at, $"there is no input {MessageText.Quote(name)}{HintFor(name)}");
        }

        return null;
    }

    /// <summary>The uncertain thing of a name; null where there is none, and what is said of that.</summary>
    public Target? Known(string name, out string? fault)
    {
        fault = targets.TryGetValue(name, out Target? target)
            ? target is null ? $"{name} is certain in this scenario; only what is uncertain can be measured on a vehicle" : null
            : $"there is no input {MessageText.Quote(name)}{HintFor(name)}";
        return target;
    }

    private static Target? Choice(string name, Detail? detail) =>
        detail?.Find(CheckedSection.FirstName(name)) is { Only: null } choice ? new Target(name, null, [], choice.Words) : null;

    private static Target? Of(Input input) => input.Value is Value.Uncertain uncertain
        ? new Target(input.Name, input.Quantity, uncertain.Distribution is NumberChoice choice ? choice.Values : [], [])
        : null;

    private string HintFor(string name) =>
        name == MixFactor.FactorName ? "; name the share of a leg, such as \"legs.gravel.share\""
        : targets.Keys.Any(k => k.StartsWith(name + ".", StringComparison.Ordinal))
            ? "; a name with dots stands in quotes: \"axle.wall_mm\""
        : NearestName.Find(name, targets.Keys) is string near ? $"; did you mean \"{near}\"?"
        : "";

    /// <summary>An uncertain thing.</summary>
    /// <param name="Name">Its name.</param>
    /// <param name="Quantity">Its quantity; null for a choice among words and for a share.</param>
    /// <param name="Numbers">The numbers it is a choice of, if it is one.</param>
    /// <param name="Words">The words it is a choice of, if it is one.</param>
    internal sealed record Target(string Name, Quantity? Quantity, ImmutableArray<double> Numbers, ImmutableArray<string> Words)
    {
        public bool IsChoice => !Numbers.IsEmpty || !Words.IsEmpty;

        /// <summary>The states it can have, for messages.</summary>
        public string States =>
            Words.IsEmpty ? MessageText.List([.. Numbers.Select(n => n.ToString("R"))], "or")
            : MessageText.List([.. Words.Select(MessageText.Quote)], "or");

        /// <summary>The value of a state: the number chosen or the index of the word; null where it has no such state.</summary>
        public double? StateOf(TomlNode node) => node switch
        {
            TomlNumber { Number: double number } when Numbers.Contains(number) => number,
            TomlText { Text: string text } when Words.Contains(text) => Words.IndexOf(text),
            _ => null,
        };
    }
}
