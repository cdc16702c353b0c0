using System.Collections.Immutable;
using System.Globalization;

namespace AxleRisk.Core.Scenarios;

/// <summary>
/// The history of a scenario as scenarios, one a stretch. What a stretch states anew is drawn anew, as a factor of its own; stretches
/// that state the same of an input share the draw, and one that states what the scenario states changes nothing.
/// </summary>
public static class Stretches
{
    /// <summary>What the names of the inputs that a stretch states anew begin with: <c>history.2.vehicle.tyre_n_per_mm</c>.</summary>
    public const string Prefix = "history.";

    /// <summary>The stretches in order, those that are alike joined; empty where all are as the scenario without a history.</summary>
    public static ImmutableArray<StretchScenario> Of(Scenario scenario)
    {
        if (scenario.History.IsEmpty)
        {
            return [];
        }

        Scenario plain = scenario with { History = [] };
        ImmutableArray<Change>[] changes = Known(scenario);
        var all = ImmutableArray.CreateBuilder<StretchScenario>();
        StretchAge age = new(0, 0, [], [], [.. scenario.Sections.Select(_ => ImmutableArray<AgeingPart>.Empty)]);
        for (int first = 0; first < changes.Length;)
        {
            int next = first + 1;
            while (next < changes.Length && !scenario.History[next].RenewsDampers && changes[next].SequenceEqual(changes[first]))
            {
                next++;
            }

            Scenario changed = changes[first].Aggregate(plain, (s, c) => c.ApplyTo(s));
            Stretch stated = scenario.History[first];
            age = After(age, stated, scenario.History[next - 1].ToKm, changed);
            all.Add(new StretchScenario(first + 1, age.FromKm, age.ToKm, changed with { Age = age }));
            first = next;
        }

        return all.Count == 1 && changes[0].IsEmpty ? [] : all.ToImmutable();
    }

    /// <summary>The distances where the use changes, km, rising.</summary>
    public static ImmutableArray<double> BendsKm(Scenario scenario) => [.. Of(scenario).Select(s => s.ToKm).Where(double.IsFinite)];

    /// <summary>The scenario as it is at a distance, by itself: its factors are its own.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="km">The distance, km; infinite for the last stretch.</param>
    public static Scenario At(Scenario scenario, double km) =>
        Of(scenario) is { IsEmpty: false } all ? Alone(all.Last(s => s.FromKm <= km || s.FromKm == 0).Scenario) : scenario;

    /// <summary>A stretch's scenario with factors of its own: what it takes from another's column is in its distributions.</summary>
    private static Scenario Alone(Scenario ofStretch) => ofStretch with
    {
        Inputs = [.. ofStretch.Inputs.Select(i => i with { OfColumn = 1 })],
        Age = ofStretch.Age is { IsOfNothing: true } ? null : ofStretch.Age,
    };

    /// <summary>
    /// The vehicle as it is in each stretch, on the roads, at the speeds and with the trip that the scenario states.
    /// </summary>
    internal static ImmutableArray<StretchScenario> VehiclesOf(Scenario whole) => Of(whole with
    {
        History = [.. whole.History.Select(s => s with { Changes = [.. s.Changes.Where(c => !IsOfUse(c.Input))] })],
    });

    /// <summary>The uncertain inputs that stretches state anew, each once.</summary>
    internal static IEnumerable<Input> OwnInputs(Scenario scenario) =>
        Of(scenario).SelectMany(s => s.Scenario.Inputs).Where(i => IsNameOf(i.Name)).DistinctBy(i => i.Name);

    /// <summary>Whether a quantity is one for the whole life, so that no stretch may change it: the Miner sum and the scatters.</summary>
    public static bool IsOfTheWholeLife(Quantity quantity) =>
        quantity == Quantities.MinerSum || quantity.Key.EndsWith("scatter", StringComparison.Ordinal);

    /// <summary>Whether an input's name is of a stretch.</summary>
    public static bool IsNameOf(string input) => input.StartsWith(Prefix, StringComparison.Ordinal);

    /// <summary>The place of the stretch that a name is of, from 1, and the name without it.</summary>
    internal static (int Place, string Input) PartsOf(string name)
    {
        int dot = name.IndexOf('.', Prefix.Length);
        return (int.Parse(name.AsSpan(Prefix.Length, dot - Prefix.Length), CultureInfo.InvariantCulture), name[(dot + 1)..]);
    }

    /// <summary>What is put behind the label of an input where it is that of a stretch.</summary>
    internal static string LabelOfPlace(int place) => $" in stretch {place}";

    /// <summary>The scenario with another value of an input that stretches state anew, in all that share it.</summary>
    internal static Scenario Replace(Scenario scenario, string name, Func<Value, Value> change)
    {
        ImmutableArray<Change>[] known = Known(scenario);
        return scenario with
        {
            History =
            [
                .. scenario.History.Select((stretch, i) => stretch with
                {
                    Changes = [.. stretch.Changes.Select(c => c is Change.ToValue to
                        && known[i].OfType<Change.ToOwn>().Any(o => o.Name == name && o.Input == c.Input)
                        ? new Change.ToValue(c.Input, change(to.Value)) : c)],
                }),
            ],
        };
    }

    // What each stretch changes, in the order of the inputs' names: the same instance where it is the same, and nothing that changes
    // nothing.
    private static ImmutableArray<Change>[] Known(Scenario scenario)
    {
        List<(Change Stated, Change Made)> seen = [];
        var known = new ImmutableArray<Change>[scenario.History.Length];
        for (int i = 0; i < known.Length; i++)
        {
            var made = ImmutableArray.CreateBuilder<Change>();
            foreach (Change change in scenario.History[i].Changes.OrderBy(c => c.Input, StringComparer.Ordinal))
            {
                if (ChangesNothing(change, scenario))
                {
                    continue;
                }

                Change? same = seen.Find(s => AreSame(s.Stated, change)).Made;
                if (same is null)
                {
                    seen.Add((change, same = InStretch(change, scenario, i + 1)));
                }

                made.Add(same);
            }

            known[i] = made.ToImmutable();
        }

        return known;
    }

    private static Change InStretch(Change change, Scenario scenario, int place) => change switch
    {
        Change.ToValue { Value: Value.Uncertain to } =>
            new Change.ToOwn(change.Input, $"{Prefix}{place.ToString(CultureInfo.InvariantCulture)}.{change.Input}", to),
        Change.Times times when Find(scenario, change.Input)?.Value is Value.Uncertain => new Change.OfColumn(change.Input, times.Factor),
        _ => change,
    };

    private static bool ChangesNothing(Change change, Scenario scenario) => change switch
    {
        Change.ToValue to => Find(scenario, change.Input) is not { } input || AreSame(to.Value, input.Value),
        Change.Times times => times.Factor == 1,
        Change.ToWord word => scenario.FindWords(change.Input)?.Only is { } only && only == word.Choice.Only,
        Change.ToShare share => scenario.MixConcentration is null
            && scenario.Legs.Any(l => l.Name == share.Leg && Math.Abs(l.Share - share.Share) <= 1e-15),
        _ => false,
    };

    private static bool AreSame(Change a, Change b) => a.Input == b.Input && (a, b) switch
    {
        (Change.ToValue x, Change.ToValue y) => AreSame(x.Value, y.Value),
        (Change.ToWord x, Change.ToWord y) => x.Choice.Only is { } only && only == y.Choice.Only,
        _ => a == b,
    };

    private static bool AreSame(Value a, Value b) => (a, b) switch
    {
        (Value.Uncertain x, Value.Uncertain y) => x.Knowledge == y.Knowledge && x.StatedNominal == y.StatedNominal
            && x.Distribution.IsSameAs(y.Distribution),
        (Value.Certain x, Value.Certain y) => x.Number == y.Number,
        _ => false,
    };

    private static StretchAge After(StretchAge before, Stretch stated, double toKm, Scenario changed) => new(
        stated.FromKm, toKm,
        Continued(stated.RenewsDampers ? [] : before.DamperWear, changed.Find(Quantities.DamperWear), stated.FromKm),
        Continued(before.Corrosion, changed.Find(Quantities.CorrosionRate), stated.FromKm),
        [
            .. changed.Sections.Select((s, i) => Continued(
                before.OfSections[i], Quantities.OfSection(Quantities.CorrosionRate.Key) is { } own ? changed.Find(own, s) : null, stated.FromKm)),
        ]);

    // The last part goes on where it is the same rate, else ends.
    private static ImmutableArray<AgeingPart> Continued(ImmutableArray<AgeingPart> parts, Input? rate, double fromKm) =>
        rate is null ? []
        : parts is [.., var last] && IsSameSource(last.Rate, rate) ? parts
        :
        [
            .. parts.Select((p, i) => i == parts.Length - 1 ? p with { ToKm = fromKm } : p),
            new AgeingPart(rate, fromKm, double.PositiveInfinity),
        ];

    private static bool IsSameSource(Input a, Input b) =>
        a.Name == b.Name && a.OfColumn == b.OfColumn && (a.Value is Value.Uncertain ? b.Value is Value.Uncertain : a.Value == b.Value);

    private static bool IsOfUse(string name) =>
        name.StartsWith("use.", StringComparison.Ordinal) || name.StartsWith("legs.", StringComparison.Ordinal);

    private static Input? Find(Scenario scenario, string name) => scenario.Inputs.FirstOrDefault(i => i.Name == name);
}
