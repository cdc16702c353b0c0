using System.Collections.Immutable;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Studies;

/// <summary>
/// What was seen of one vehicle that is still whole: how far it has come, what looks for its crack have found, what was measured on it and
/// what is known of its choices. Of each vehicle drawn it tells how likely that is, so that averages can be of the vehicles like this one.
/// </summary>
internal sealed class SeenVehicle
{
    private readonly CrackModel? crack;
    private readonly (int Column, Measurement Reading)[] measured;
    private readonly (int Column, double State)[] known;

    /// <summary>Prepares the evidence of a scenario.</summary>
    /// <param name="model">The scenario made ready.</param>
    /// <param name="evidence">Of a vehicle that is whole.</param>
    public SeenVehicle(LifeModel model, Evidence evidence)
    {
        Model = model;
        Looks = evidence.Looks;
        WholeKm = evidence.LifeWithLooks is LifeEvidence.Survived(var km) ? km : 0;
        crack = model.Scenario.Crack is null ? null : new CrackModel(model);
        ImmutableArray<string> columns = model.Factors.ColumnNames;
        measured = [.. evidence.Measured.Select(m => (columns.IndexOf(m.Factor), m))];
        known = [.. evidence.Known.Select(k => (columns.IndexOf(k.Factor), k.Value))];
    }

    /// <summary>That of a scenario; null where it has no evidence, or of an axle that has failed.</summary>
    public static SeenVehicle? Of(LifeModel model) =>
        model.Scenario.Evidence.IsOfWhole ? new SeenVehicle(model, model.Scenario.Evidence) : null;

    /// <summary>The scenario made ready.</summary>
    public LifeModel Model { get; }

    /// <summary>The looks, by rising distance.</summary>
    public ImmutableArray<CrackLook> Looks { get; }

    /// <summary>The distance that it is known to have reached, km.</summary>
    public double WholeKm { get; }

    /// <summary>What the rows of a workspace last evaluated have to do with it.</summary>
    public SeenRows Rows(Workspace of, double[][] values, int count)
    {
        SeenRows rows = RowsOf(values, count);
        for (int row = 0; row < count; row++)
        {
            Span<double> used = rows.UsedOf(row);
            FailureChances.FillUsed(of, row, WholeKm, used[Looks.Length..]);
            for (int look = 0; look < Looks.Length; look++)
            {
                used[look] = FailureChances.Used(0, of, row, Looks[look].Km);
            }
        }

        return rows;
    }

    /// <summary>The same before it was driven or looked at.</summary>
    public SeenRows RowsOf(double[][] values, int count) => new(
        [.. Enumerable.Range(0, count).Select(row => WeightOf(values, row))],
        new double[count * (Looks.Length + Model.Modes.Modes.Length)],
        [.. Enumerable.Range(0, count).Select(row => crack?.Of(values, row) ?? default)]);

    // How likely what was measured and is known is; up to a constant.
    private double WeightOf(double[][] values, int row)
    {
        double log = 0;
        foreach ((int column, Measurement reading) in measured)
        {
            log += reading.LogLikelihood(values[column][row]);
        }

        return known.All(k => values[k.Column][row] == k.State) ? Math.Exp(log) : 0;
    }
}

/// <summary>What rows have to do with a vehicle that was seen.</summary>
/// <param name="Weights">How likely what was measured and is known is, by row.</param>
/// <param name="Used">What fatigue had used up by each look, and then each mode by the distance reached; by row.</param>
/// <param name="Depths">The depth of the crack, by row.</param>
internal sealed record SeenRows(double[] Weights, double[] Used, CrackDepth[] Depths)
{
    /// <summary>What one row had used up.</summary>
    public Span<double> UsedOf(int row) => Used.AsSpan(row * (Used.Length / Weights.Length), Used.Length / Weights.Length);
}
