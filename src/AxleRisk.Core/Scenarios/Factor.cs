using System.Collections.Immutable;
using AxleRisk.Core.Distributions;

namespace AxleRisk.Core.Scenarios;

/// <summary>
/// One uncertain thing of a scenario: a scalar, the detail category or the road mix. It owns one or more consecutive
/// columns of the sample and maps them from the unit interval to its values.
/// </summary>
public abstract class Factor
{
    private protected Factor(string name, string label, string unit, Knowledge knowledge, int firstColumn)
    {
        Name = name;
        Label = label;
        Unit = unit;
        Knowledge = knowledge;
        FirstColumn = firstColumn;
    }

    /// <summary>The factor's path in the scenario file.</summary>
    public string Name { get; }

    /// <summary>Its name in plain words, without the unit; unique in the scenario.</summary>
    public string Label { get; }

    /// <summary>Its unit as printed; empty for a pure number.</summary>
    public string Unit { get; }

    /// <summary>Whether it differs between vehicles or is one value nobody knows.</summary>
    public Knowledge Knowledge { get; }

    /// <summary>The index of its first column.</summary>
    public int FirstColumn { get; }

    /// <summary>The names of its columns; the random streams go by them.</summary>
    public abstract ImmutableArray<string> ColumnNames { get; }

    /// <summary>The names of its columns in plain words.</summary>
    public virtual ImmutableArray<string> ColumnLabels => [Label];

    /// <summary>Its distribution in words.</summary>
    public abstract string Description { get; }

    /// <summary>The distribution of a factor of one column; null for the road mix.</summary>
    public abstract Distribution? Distribution { get; }

    /// <summary>Its values in the base case, one a column.</summary>
    public abstract ImmutableArray<double> Nominal { get; }

    /// <summary>Its median, one value a column; the stated shares of a road mix, which has no median.</summary>
    public abstract ImmutableArray<double> Median { get; }

    /// <summary>
    /// Maps <paramref name="count"/> rows of its unit columns to its values; both arrays are indexed by the sample's column.
    /// </summary>
    public abstract void Map(double[][] unit, double[][] values, int count);

    /// <summary>The same from columns of standard normal scores.</summary>
    public abstract void MapScores(double[][] scores, double[][] values, int count);

    /// <summary>The name of one of its columns in plain words.</summary>
    /// <param name="column">One of <see cref="ColumnNames"/>.</param>
    public string LabelOf(string column) => ColumnLabels[ColumnNames.IndexOf(column)];

    /// <summary>A value as the user would write it: the number, or the category's name.</summary>
    public virtual string Show(double value) => value.ToString("G4");
}

/// <summary>A scalar with a distribution.</summary>
public sealed class ScalarFactor : Factor
{
    internal ScalarFactor(Input input, Value.Uncertain value, int column)
        : base(input.Name, input.Label, input.Quantity.Unit, value.Knowledge, column)
    {
        Input = input;
        Distribution = value.Distribution;
        Nominal = [value.Nominal];
        Median = [value.Distribution.Median];
    }

    /// <summary>The scenario's input.</summary>
    public Input Input { get; }

    /// <inheritdoc/>
    public override Distribution Distribution { get; }

    /// <inheritdoc/>
    public override ImmutableArray<string> ColumnNames => [Name];

    /// <inheritdoc/>
    public override string Description => Distribution.ToString();

    /// <inheritdoc/>
    public override ImmutableArray<double> Nominal { get; }

    /// <inheritdoc/>
    public override ImmutableArray<double> Median { get; }

    /// <inheritdoc/>
    public override void Map(double[][] unit, double[][] values, int count) =>
        Distribution.Quantiles(unit[FirstColumn].AsSpan(0, count), values[FirstColumn].AsSpan(0, count));

    /// <inheritdoc/>
    public override void MapScores(double[][] scores, double[][] values, int count) =>
        Distribution.OfScores(scores[FirstColumn].AsSpan(0, count), values[FirstColumn].AsSpan(0, count));
}

/// <summary>A choice among words that is uncertain, weld category or environment; the value is the index of the word.</summary>
public sealed class WordFactor : Factor
{
    private readonly WordChoice choice;

    internal WordFactor(string name, WordChoice choice, int column)
        : base(name, LabelOfName(name)!, "", choice.Knowledge, column)
    {
        this.choice = choice;
        Distribution = choice.Spread!;
        Nominal = [choice.NominalIndex];
    }

    /// <summary>The words, in the order of their indices.</summary>
    public ImmutableArray<string> Words => choice.Words;

    /// <inheritdoc/>
    public override Distribution Distribution { get; }

    /// <inheritdoc/>
    public override ImmutableArray<string> ColumnNames => [Name];

    /// <inheritdoc/>
    public override string Description => $"choice({choice})";

    /// <inheritdoc/>
    public override ImmutableArray<double> Nominal { get; }

    /// <inheritdoc/>
    public override ImmutableArray<double> Median => Nominal;

    /// <summary>What is chosen under a name, in plain words; null for any other name.</summary>
    public static string? LabelOfName(string name) => name switch
    {
        Change.CategoryName => "weld category",
        Change.EnvironmentName => "environment of the weld",
        _ when name.Split('.') is [CheckedSection.Table, var section, _]
            && LabelOfName(CheckedSection.FirstName(name)) is { } label => $"{label} of {section}",
        _ => null,
    };

    /// <inheritdoc/>
    public override void Map(double[][] unit, double[][] values, int count) =>
        Distribution.Quantiles(unit[FirstColumn].AsSpan(0, count), values[FirstColumn].AsSpan(0, count));

    /// <inheritdoc/>
    public override void MapScores(double[][] scores, double[][] values, int count) =>
        Distribution.OfScores(scores[FirstColumn].AsSpan(0, count), values[FirstColumn].AsSpan(0, count));

    /// <inheritdoc/>
    public override string Show(double value) => choice.Words[(int)value];
}

/// <summary>
/// The road mix where it is uncertain: Dirichlet about the stated shares. Each share is a gamma variate over the sum of
/// all (Devroye, Non-Uniform Random Variate Generation, 1986, XI.4), so that no leg is treated unlike the others.
/// </summary>
public sealed class MixFactor : Factor
{
    /// <summary>The name of the factor; its columns carry the legs' names.</summary>
    public const string FactorName = "use.mix";

    /// <summary>The factor in plain words.</summary>
    public const string FactorLabel = "road mix";

    private readonly double concentration;
    private readonly Gamma[] gammas;

    internal MixFactor(ImmutableArray<Leg> legs, double concentration, Knowledge knowledge, int firstColumn)
        : base(FactorName, FactorLabel, "", knowledge, firstColumn)
    {
        this.concentration = concentration;
        Nominal = [.. legs.Select(l => l.Share)];
        ColumnNames = [.. legs.Select(ColumnOf)];
        ColumnLabels = [.. legs.Select(LabelOf)];
        gammas = [.. legs.Select(l => new Gamma(concentration * l.Share, 1))];
    }

    /// <inheritdoc/>
    public override Distribution? Distribution => null;

    /// <inheritdoc/>
    public override ImmutableArray<string> ColumnNames { get; }

    /// <inheritdoc/>
    public override ImmutableArray<string> ColumnLabels { get; }

    /// <inheritdoc/>
    public override string Description => $"Dirichlet(concentration {concentration:G4})";

    /// <inheritdoc/>
    public override ImmutableArray<double> Nominal { get; }

    /// <inheritdoc/>
    public override ImmutableArray<double> Median => Nominal;

    /// <inheritdoc/>
    public override void Map(double[][] unit, double[][] values, int count)
    {
        for (int leg = 0; leg < gammas.Length; leg++)
        {
            gammas[leg].Quantiles(unit[FirstColumn + leg].AsSpan(0, count), values[FirstColumn + leg].AsSpan(0, count));
        }

        SharesOfSum(values, count);
    }

    /// <inheritdoc/>
    public override void MapScores(double[][] scores, double[][] values, int count)
    {
        for (int leg = 0; leg < gammas.Length; leg++)
        {
            gammas[leg].OfScores(scores[FirstColumn + leg].AsSpan(0, count), values[FirstColumn + leg].AsSpan(0, count));
        }

        SharesOfSum(values, count);
    }

    /// <summary>The name of a leg's share.</summary>
    internal static string ColumnOf(Leg leg) => $"legs.{leg.Name}.share";

    /// <summary>A leg's share in plain words.</summary>
    internal static string LabelOf(Leg leg) => $"share of {leg.Name}";

    private void SharesOfSum(double[][] values, int count)
    {
        for (int row = 0; row < count; row++)
        {
            double sum = 0;
            for (int leg = 0; leg < gammas.Length; leg++)
            {
                sum += values[FirstColumn + leg][row];
            }

            for (int leg = 0; leg < gammas.Length; leg++)
            {
                values[FirstColumn + leg][row] /= sum;
            }
        }
    }
}
