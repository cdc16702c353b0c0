using System.Collections.Immutable;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Numerics.Vectors;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Modes;

/// <summary>
/// Steps that fill the damage model's columns, one after the other, each from columns of the sample, certain numbers and columns
/// filled before. A column that no factor reaches is filled once, when a worker starts.
/// </summary>
internal class ColumnSteps(Scenario scenario, FactorSet factors)
{
    private readonly Dictionary<string, int> columnOf =
        factors.ColumnNames.Select((name, i) => (name, i)).ToDictionary(x => x.name, x => x.i);

    private readonly List<Step> steps = [];

    /// <summary>Fills a column from another; all are of one length.</summary>
    internal delegate void OfOne(ReadOnlySpan<double> x, Span<double> to);

    /// <summary>Fills a column from two.</summary>
    internal delegate void OfTwo(ReadOnlySpan<double> x, ReadOnlySpan<double> y, Span<double> to);

    /// <summary>Fills a column from three.</summary>
    internal delegate void OfThree(ReadOnlySpan<double> x, ReadOnlySpan<double> y, ReadOnlySpan<double> z, Span<double> to);

    /// <summary>Fills a column from five.</summary>
    internal delegate void OfFive(
        ReadOnlySpan<double> x, ReadOnlySpan<double> y, ReadOnlySpan<double> z, ReadOnlySpan<double> u, ReadOnlySpan<double> v,
        Span<double> to);

    /// <summary>Fills a column from any, of vehicles that have driven a distance each, km; no distances stand for new ones.</summary>
    internal delegate void Formula(double[][] inputs, double[] ageKm, Span<double> to);

    /// <summary>The source of one quantity's column; the default where the scenario does not state it.</summary>
    public Source SourceOf(Quantity quantity, int? leg = null) => scenario.Find(quantity, leg) is not { } input
        ? Source.Sure(quantity.Default?.Nominal ?? 0) : SourceOf(input);

    /// <summary>The source of an input's column.</summary>
    public Source SourceOf(Input input) =>
        input.Value is Value.Uncertain ? SourceOf(input.Name, input.Value.Nominal, input.OfColumn) : Source.Sure(input.Value.Nominal);

    /// <summary>The column of a name; a number where no factor has it, for the factors may be another scenario's.</summary>
    internal Source SourceOf(string name, double otherwise, double scale = 1) =>
        columnOf.TryGetValue(name, out int column) ? new Source(column, 0, null, scale) : Source.Sure(otherwise);

    /// <summary>Fills the columns that are the same in every evaluation.</summary>
    /// <returns>The input columns of every step, for one thread: the constant ones filled, room for the others.</returns>
    public double[][][] Prepare(DamageColumns columns)
    {
        double[][][] inputs = [.. steps.Select(s => s.Sources.Select(x => x.Known(columns)).ToArray())];
        for (int s = 0; s < steps.Count; s++)
        {
            if (steps[s].IsConstant)
            {
                steps[s].Formula(inputs[s], [], steps[s].Target(columns).AsSpan(0, columns.Capacity));
            }
        }

        return inputs;
    }

    /// <summary>
    /// Fills the columns that factors or age reach, for the first <paramref name="count"/> rows of vehicles that are new.
    /// </summary>
    public void Fill(double[][] values, double[][][] inputs, DamageColumns columns, int count) =>
        Fill(values, inputs, columns, count, [], agedAlone: false);

    /// <summary>Fills anew the columns that change with age, of vehicles that have driven <paramref name="ageKm"/>, by row.</summary>
    public void FillAged(double[][] values, double[][][] inputs, DamageColumns columns, int count, double[] ageKm) =>
        Fill(values, inputs, columns, count, ageKm, agedAlone: true);

    /// <summary>Adds a step from one column.</summary>
    /// <returns>What it fills, for steps after it.</returns>
    internal Source Add(Func<DamageColumns, double[]> target, Source first, OfOne formula) =>
        Add(target, (x, _, to) => formula(x[0].AsSpan(0, to.Length), to), false, first);

    /// <summary>Adds a step from two columns.</summary>
    /// <inheritdoc cref="Add(Func{DamageColumns, double[]}, Source, OfOne)"/>
    internal Source Add(Func<DamageColumns, double[]> target, Source first, Source second, OfTwo formula) => Add(
        target, (x, _, to) => formula(x[0].AsSpan(0, to.Length), x[1].AsSpan(0, to.Length), to), false, first, second);

    /// <summary>Adds a step from three columns.</summary>
    /// <inheritdoc cref="Add(Func{DamageColumns, double[]}, Source, OfOne)"/>
    internal Source Add(Func<DamageColumns, double[]> target, Source first, Source second, Source third, OfThree formula) => Add(
        target, (x, _, to) => formula(x[0].AsSpan(0, to.Length), x[1].AsSpan(0, to.Length), x[2].AsSpan(0, to.Length), to), false,
        first, second, third);

    /// <summary>Adds a step from five columns.</summary>
    /// <inheritdoc cref="Add(Func{DamageColumns, double[]}, Source, OfOne)"/>
    internal Source Add(
        Func<DamageColumns, double[]> target, Source first, Source second, Source third, Source fourth, Source fifth, OfFive formula) =>
        Add(
            target,
            (x, _, to) => formula(
                x[0].AsSpan(0, to.Length), x[1].AsSpan(0, to.Length), x[2].AsSpan(0, to.Length), x[3].AsSpan(0, to.Length),
                x[4].AsSpan(0, to.Length), to),
            false, first, second, third, fourth, fifth);

    /// <summary>Adds a step that multiplies a column by a number.</summary>
    internal void AddScaled(Func<DamageColumns, double[]> target, double scale, Source source) =>
        Add(target, source, (x, to) => VectorColumns.Scale(x, scale, to));

    /// <summary>Adds a step that multiplies two columns and a number.</summary>
    protected void AddScaledProduct(Func<DamageColumns, double[]> target, double scale, Source first, Source second) =>
        Add(target, first, second, (x, y, to) => VectorColumns.ScaledProduct(x, y, scale, to));

    /// <summary>Adds a step from any columns, and the distance driven where that makes a difference (<paramref name="ages"/>).</summary>
    /// <inheritdoc cref="Add(Func{DamageColumns, double[]}, Source, OfOne)"/>
    internal Source Add(Func<DamageColumns, double[]> target, Formula formula, bool ages, params ImmutableArray<Source> sources)
    {
        var step = new Step(target, sources, formula, ages);
        steps.Add(step);
        return new Source(null, 0, step);
    }

    private void Fill(double[][] values, double[][][] inputs, DamageColumns columns, int count, double[] ageKm, bool agedAlone)
    {
        for (int s = 0; s < steps.Count; s++)
        {
            Step step = steps[s];
            if (agedAlone ? !step.Ages : step.IsConstant)
            {
                continue;
            }

            double[][] ofStep = inputs[s];
            for (int i = 0; i < ofStep.Length; i++)
            {
                if (step.Sources[i] is { Column: { } column } source)
                {
                    if (source.Scale == 1)
                    {
                        ofStep[i] = values[column];
                    }
                    else
                    {
                        VectorColumns.Scale(values[column].AsSpan(0, count), source.Scale, ofStep[i]);
                    }
                }
            }

            step.Formula(ofStep, ageKm, step.Target(columns).AsSpan(0, count));
        }
    }

    /// <summary>Where values come from: a column of the sample, one number for every row, or a step.</summary>
    internal readonly struct Source(int? column, double constant, Step? step, double scale = 1)
    {
        public bool IsConstant => column is null && step is not { IsConstant: false };

        public bool Ages => step is { Ages: true };

        public int? Column => column;

        public double Constant => constant;

        /// <summary>By what a column is multiplied.</summary>
        public double Scale => scale;

        /// <summary>One number for every row.</summary>
        public static Source Sure(double number) => new(null, number, null);

        /// <summary>The values as far as they do not change from block to block, or the place where they come to stand.</summary>
        public double[] Known(DamageColumns columns)
        {
            if (step is not null)
            {
                return step.Target(columns);
            }

            double[] filled = column is null || scale != 1 ? new double[columns.Capacity] : [];
            Array.Fill(filled, constant);
            return filled;
        }
    }

    /// <summary>One step; nothing in it changes.</summary>
    internal sealed class Step(Func<DamageColumns, double[]> target, ImmutableArray<Source> sources, Formula formula, bool ages)
    {
        public Func<DamageColumns, double[]> Target => target;

        public ImmutableArray<Source> Sources => sources;

        public Formula Formula => formula;

        public bool Ages { get; } = ages || sources.Any(s => s.Ages);

        public bool IsConstant { get; } = !ages && sources.All(s => s.IsConstant);
    }
}
