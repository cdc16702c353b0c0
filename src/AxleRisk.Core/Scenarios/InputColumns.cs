using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Scenarios;

/// <summary>
/// A block of a scenario's inputs, by quantity and row, as a <see cref="DamageWorker"/> reads them: sampled where they are factors, the
/// stated number or the default in every row where they are certain.
/// </summary>
public sealed class InputColumns
{
    private readonly Scenario scenario;
    private readonly Dictionary<string, int> columnOf;
    private readonly Dictionary<(Quantity, int?), double[]> certain = [];
    private readonly int capacity;
    private double[][] values = [];

    /// <summary>Columns of a scenario.</summary>
    /// <param name="scenario">Where certain values come from.</param>
    /// <param name="factors">Where the columns are; those of the scenario, or of another with the same names.</param>
    /// <param name="capacity">The most rows of a block.</param>
    internal InputColumns(Scenario scenario, FactorSet factors, int capacity)
    {
        (this.scenario, this.capacity) = (scenario, capacity);
        columnOf = factors.ColumnNames.Select((name, i) => (name, i)).ToDictionary(x => x.name, x => x.i);
    }

    /// <summary>The number of rows of the block.</summary>
    public int Count { get; private set; }

    /// <summary>The distance that each vehicle has driven, km, by row; empty where the model does not age.</summary>
    public ReadOnlySpan<double> AgeKm => AgeColumn.AsSpan(0, AgeColumn.Length == 0 ? 0 : Count);

    private double[] AgeColumn { get; set; } = [];

    /// <summary>The values of a quantity, by row.</summary>
    /// <param name="quantity">The quantity; one that the scenario does not state has its default, or NaN where it has none.</param>
    /// <param name="leg">The leg's place, for a quantity of the legs.</param>
    public ReadOnlySpan<double> Of(Quantity quantity, int? leg = null)
    {
        Input? input = scenario.Find(quantity, leg);
        if (input?.Value is Value.Uncertain && columnOf.TryGetValue(input.Name, out int column))
        {
            return input.OfColumn == 1 ? values[column].AsSpan(0, Count) : Times(input.OfColumn, values[column]);
        }

        if (!certain.TryGetValue((quantity, leg), out double[]? filled))
        {
            filled = new double[capacity];
            Array.Fill(filled, (input?.Value ?? quantity.Default)?.Nominal ?? double.NaN);
            certain.Add((quantity, leg), filled);
        }

        return filled.AsSpan(0, Count);
    }

    /// <summary>The share of the use that a leg has in a row.</summary>
    /// <param name="leg">The leg's place.</param>
    /// <param name="row">The row.</param>
    public double ShareOf(int leg, int row) =>
        scenario.MixConcentration is not null && columnOf.TryGetValue(MixFactor.ColumnOf(scenario.Legs[leg]), out int column)
            ? values[column][row] : scenario.Legs[leg].Share;

    private double[] Times(double factor, double[] column)
    {
        var scaled = new double[Count];
        VectorColumns.Scale(column.AsSpan(0, Count), factor, scaled);
        return scaled;
    }

    /// <summary>Goes on to a block of factor values and, where the model ages, of distances driven.</summary>
    internal void Take(double[][] block, int count, double[] ageKm) => (values, Count, AgeColumn) = (block, count, ageKm);
}
