using System.Collections.Immutable;
using AxleRisk.Core.Distributions;

namespace AxleRisk.Core.Scenarios;

/// <summary>Something that could be done about a scenario: changes of its inputs under a name.</summary>
/// <param name="Name">A short name, unique in the scenario.</param>
/// <param name="Cost">What it costs, in the user's own unit; only printed. Null where it is not stated.</param>
/// <param name="Changes">What it changes, each input once.</param>
public sealed record Remedy(string Name, double? Cost, ImmutableArray<Change> Changes)
{
    /// <summary>
    /// The scenario with the remedy in place. A rank correlation of an input that is no longer a continuous uncertain one
    /// is dropped. Remedies may be applied one after the other; of two that state one input the later holds.
    /// </summary>
    public static Scenario Apply(Scenario scenario, Remedy remedy)
    {
        foreach (Change change in remedy.Changes)
        {
            scenario = change.ApplyTo(scenario);
        }

        return scenario with
        {
            // What states another distribution is not what was learned of; a factor on it is.
            Learned = remedy.Changes.Where(c => c is not Change.Times)
                .Aggregate(scenario.Learned, (learned, change) => learned?.Without(change.Input)),
            Correlations = [.. scenario.Correlations.Where(c => CanBeCorrelated(scenario, c.First)
            && CanBeCorrelated(scenario, c.Second))]
        };
    }

    private static bool CanBeCorrelated(Scenario scenario, string name) =>
        scenario.Inputs.Any(i => i.Name == name && i.Value is Value.Uncertain { Distribution.IsContinuous: true });
}

/// <summary>One change of a remedy.</summary>
/// <param name="Input">
/// The name of what is changed: an input of the scenario, or a choice among words, one of <see cref="Scenario.WordNames"/>.
/// </param>
public abstract record Change(string Input)
{
    /// <summary>The name of the weld detail's category among the inputs.</summary>
    public const string CategoryName = "detail.category";

    /// <summary>The name of what the weld lives in among the inputs.</summary>
    public const string EnvironmentName = "detail.environment";

    /// <summary>The names of the choices among words of the first section.</summary>
    public static ImmutableArray<string> WordNames { get; } = [CategoryName, EnvironmentName];

    /// <summary>What it comes to, for the reader: <c>= 40</c>, <c>x 0.8</c>.</summary>
    public abstract string Description { get; }

    /// <summary>The scenario with the change made.</summary>
    public abstract Scenario ApplyTo(Scenario scenario);

    private protected static Scenario Replace(Scenario scenario, string name, Func<Value, Value> change) => Stretches.IsNameOf(name)
        ? Stretches.Replace(scenario, name, change)
        : With(scenario, name, i => i with { Value = change(i.Value), IsDefault = false });

    private static Scenario With(Scenario scenario, string name, Func<Input, Input> change) => scenario with
    {
        Inputs = [.. scenario.Inputs.Select(i => i.Name == name ? change(i) : i)],
    };

    /// <summary>Another value or distribution.</summary>
    /// <param name="Input">The input's name.</param>
    /// <param name="Value">Its value with the remedy, in the quantity's unit.</param>
    public sealed record ToValue(string Input, Value Value) : Change(Input)
    {
        /// <inheritdoc/>
        public override string Description =>
            "= " + (Value is Value.Uncertain u ? u.Distribution.ToString() : Value.Nominal.ToString("G6"));

        /// <inheritdoc/>
        public override Scenario ApplyTo(Scenario scenario) => Replace(scenario, Input, _ => Value);
    }

    /// <summary>The value or distribution times a number.</summary>
    /// <param name="Input">The input's name.</param>
    /// <param name="Factor">The number, above 0.</param>
    public sealed record Times(string Input, double Factor) : Change(Input)
    {
        /// <inheritdoc/>
        public override string Description => $"x {Factor:G6}";

        /// <inheritdoc/>
        public override Scenario ApplyTo(Scenario scenario) => Replace(scenario, Input, v => Scale(v, Factor));

        /// <summary>A value times a number; its stated nominal with it.</summary>
        public static Value Scale(Value value, double factor) => value switch
        {
            Value.Uncertain u => u with
            {
                Distribution = Scaled.Of(u.Distribution, factor),
                StatedNominal = factor * u.StatedNominal,
                Stated = null,
            },
            _ => new Value.Certain(factor * value.Nominal),
        };
    }

    /// <summary>Another word, or several with weights: of the categories or environments of the same catalogue.</summary>
    /// <param name="Input">The choice's name, one of <see cref="Scenario.WordNames"/>.</param>
    /// <param name="Choice">The possible words.</param>
    public sealed record ToWord(string Input, WordChoice Choice) : Change(Input)
    {
        /// <inheritdoc/>
        public override string Description => $"= {Choice}";

        /// <inheritdoc/>
        public override Scenario ApplyTo(Scenario scenario) => scenario.With(Input, Choice);
    }

    /// <summary>Another share of the distance for a leg of use; only a stretch of the history changes it, and the shares are certain
    /// then.</summary>
    /// <param name="Leg">The leg's name.</param>
    /// <param name="Share">Its share.</param>
    public sealed record ToShare(string Leg, double Share) : Change($"legs.{Leg}.share")
    {
        /// <inheritdoc/>
        public override string Description => $"= {Share:G6}";

        /// <inheritdoc/>
        public override Scenario ApplyTo(Scenario scenario) => scenario with
        {
            MixConcentration = null,
            Legs = [.. scenario.Legs.Select(l => l.Name == Leg ? l with { Share = Share } : l)],
        };
    }

    /// <summary>A distribution that a stretch states, as a factor of its own.</summary>
    /// <param name="Input">The input's name.</param>
    /// <param name="Name">The factor's name.</param>
    /// <param name="Value">Its distribution.</param>
    internal sealed record ToOwn(string Input, string Name, Value.Uncertain Value) : Change(Input)
    {
        /// <inheritdoc/>
        public override string Description => new ToValue(Input, Value).Description;

        /// <inheritdoc/>
        public override Scenario ApplyTo(Scenario scenario) =>
            With(scenario, Input, i => i with { Name = Name, Value = Value, IsDefault = false });
    }

    /// <summary>A multiple of a factor's value, as it is drawn.</summary>
    /// <param name="Input">The input's name.</param>
    /// <param name="Factor">The number.</param>
    internal sealed record OfColumn(string Input, double Factor) : Change(Input)
    {
        /// <inheritdoc/>
        public override string Description => new Times(Input, Factor).Description;

        /// <inheritdoc/>
        public override Scenario ApplyTo(Scenario scenario) =>
            With(scenario, Input, i => i with { Value = Times.Scale(i.Value, Factor), OfColumn = Factor, IsDefault = false });
    }
}
