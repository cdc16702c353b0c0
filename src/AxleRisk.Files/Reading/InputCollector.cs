using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Files.Reading;

/// <summary>
/// Gathers the inputs of a scenario in any order and hands them out in the order of <see cref="Quantities.All"/>, then of the
/// legs.
/// </summary>
internal sealed class InputCollector
{
    private readonly List<Input> inputs = [];

    private readonly HashSet<string> wrong = [];

    public void Add(Input input) => inputs.Add(input);

    /// <summary>Forgets the inputs of which something holds.</summary>
    public void Remove(Predicate<Input> which) => inputs.RemoveAll(which);

    /// <summary>Notes that what stands under a name (an input, a leg, a section) is wrong and reported already.</summary>
    public void MarkWrong(string name) => wrong.Add(name);

    /// <summary>Whether an input, or what it stands in, is wrong and reported already.</summary>
    public bool IsWrong(string name) => wrong.Contains(name) || (name.LastIndexOf('.') is > 0 and int dot && IsWrong(name[..dot]));

    /// <summary>These inputs and others.</summary>
    public InputCollector With(InputCollector others)
    {
        InputCollector both = new();
        both.inputs.AddRange([.. inputs, .. others.inputs]);
        both.wrong.UnionWith([.. wrong, .. others.wrong]);
        return both;
    }

    public Input? Find(string name) => inputs.Find(i => i.Name == name);

    public Input? Find(Quantity quantity) => inputs.Find(i => i.Quantity == quantity);

    // Those of further sections are read section by section, in order.
    public ImmutableArray<Input> InOrder() =>
    [
        .. inputs.Where(i => i.Section is null).OrderBy(i => Quantities.All.IndexOf(i.Quantity)).ThenBy(i => i.Leg ?? 0),
        .. inputs.Where(i => i.Section is not null),
    ];
}
