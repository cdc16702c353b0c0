using System.Collections.Immutable;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Randomness;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Learning;

/// <summary>
/// A sample of what differs between vehicles, the same for every value of what is unknown, so that the likelihood is smooth in it.
/// Vehicles on which something was measured have a sample of their own, drawn given the measurement.
/// </summary>
internal sealed class VehicleSet
{
    private const int GridPoints = 801;
    private const double GridReach = 8;

    private readonly ImmutableArray<FieldMeasurement> ofUnknown;
    private readonly LifeModel model;

    private VehicleSet(LifeModel model, double[][] values, int rows, ImmutableArray<FieldMeasurement> ofUnknown,
        ImmutableArray<FieldRecord> records)
    {
        this.model = model;
        this.ofUnknown = ofUnknown;
        Values = values;
        Rows = rows;
        Records = records;
    }

    /// <summary>The values by column and row; those of unknown columns mean nothing.</summary>
    public double[][] Values { get; }

    /// <summary>The number of rows.</summary>
    public int Rows { get; }

    /// <summary>The records of such vehicles.</summary>
    public ImmutableArray<FieldRecord> Records { get; }

    /// <summary>The sets of a scenario: first that of vehicles of which nothing was measured, whether there are records of such or
    /// not.</summary>
    /// <param name="model">The scenario made ready.</param>
    /// <param name="unknowns">What is unknown of it.</param>
    /// <param name="rows">Rows of the first set, a power of 2.</param>
    /// <param name="seed">The seed.</param>
    /// <exception cref="StudyException">A measured factor is correlated with another, or a measurement lies where its factor
    /// cannot.</exception>
    /// <param name="replicate">The number of the independent sample.</param>
    public static ImmutableArray<VehicleSet> Of(LifeModel model, Unknowns unknowns, int rows, ulong seed, int replicate = 0)
    {
        string stream = replicate == 0 ? "learn" : $"learn/vehicles{replicate}";
        var byMeasured = model.Scenario.Field.Records.Where(r => !r.Measured.IsEmpty)
            .GroupBy(r => string.Join('\n', r.Measured.Select(m => m.ToString()))).ToArray();

        // Not more rows of all these together than some times those of the first.
        int ofMeasured = byMeasured.Length == 0 ? 0
            : Math.Clamp(1 << (int)Math.Log2(Math.Max(1, 4.0 * rows / byMeasured.Length)), 8, Math.Max(8, rows));
        return
        [
            Draw(model, unknowns, [], [.. model.Scenario.Field.Records.Where(r => r.Measured.IsEmpty)], rows, seed, stream),
            .. byMeasured.Select((g, i) => Draw(
                model, unknowns, g.First().Measured, [.. g], VariesFor(model, unknowns) ? ofMeasured : 1, seed, $"{stream}/measured{i}")),
        ];
    }

    /// <summary>Whether anything but what is left to chance differs between vehicles.</summary>
    public static bool VariesFor(LifeModel model, Unknowns unknowns) => model.Factors.Factors.Any(f =>
        !unknowns.IsUnknown[f.FirstColumn] && !Trip.IsNameOf(f.Name) && !(model.Chances.IsExact && model.Chances.ModeOf(f) >= 0));

    /// <summary>ln likelihood of the measurements of what is unknown, given its values in a row.</summary>
    public double LogOfMeasured(double[][] unknownValues, int row)
    {
        double log = 0;
        foreach (FieldMeasurement m in ofUnknown)
        {
            double value = unknownValues[model.Factors.ColumnNames.IndexOf(m.Factor)][row];
            double error = m.StandardDeviation > 0 ? (m.Value - value) / m.StandardDeviation : m.Value == value ? 0
                : double.PositiveInfinity;
            log -= 0.5 * error * error;
        }

        return log;
    }

    private static VehicleSet Draw(
        LifeModel model, Unknowns unknowns, ImmutableArray<FieldMeasurement> measured, ImmutableArray<FieldRecord> records,
            int rows, ulong seed,
        string stream)
    {
        FactorSet factors = model.Factors;
        double[][] scores = Workspace.Columns(factors.ColumnNames.Length, rows);
        double[][] values = model.CreateColumns(rows);
        SamplingPlan plan = SamplingPlan.FromName(ScrambledSobol.PlanName, rows);
        int dimension = 0;
        for (int column = 0; column < scores.Length; column++)
        {
            if (unknowns.IsUnknown[column])
            {
                continue;
            }

            plan.Fill(new StreamKey(seed, $"{factors.ColumnNames[column]}/{stream}"), dimension++ % plan.Dimensions, 0, scores[column]);
            StandardNormal.Quantiles(scores[column], scores[column]);
        }

        foreach (FieldMeasurement m in measured)
        {
            Factor factor = factors.Find(m.Factor)!;
            if (!unknowns.IsUnknown[factor.FirstColumn])
            {
                RefuseCorrelated(factors, factor);
                Condition(factor, m, scores[factor.FirstColumn]);
            }
        }

        factors.MapScores(scores, values, rows);
        return new VehicleSet(
            model, values, rows, [.. measured.Where(m => unknowns.IsUnknown[factors.Find(m.Factor)!.FirstColumn])], records);
    }

    /// <summary>Turns standard normal scores into those given a measurement: by the inverse of their distribution on a grid.</summary>
    private static void Condition(Factor factor, FieldMeasurement measured, double[] scores)
    {
        Distribution distribution = factor.Distribution!;
        if (distribution is NumberChoice choice)
        {
            scores.AsSpan().Fill(Unknowns.ScoreOf(factor, choice.Values.IndexOf(measured.Value)));
            return;
        }

        if (measured.StandardDeviation == 0)
        {
            double p = distribution.Cumulative(measured.Value), q = distribution.Upper(measured.Value);
            double z = p < q ? StandardNormal.Quantile(p) : -StandardNormal.Quantile(q);
            scores.AsSpan().Fill(Math.Clamp(z, -Distribution.GreatestScore, Distribution.GreatestScore));
            return;
        }

        var grid = new double[GridPoints];
        var below = new double[GridPoints];
        for (int i = 0; i < GridPoints; i++)
        {
            grid[i] = GridReach * ((2.0 * i / (GridPoints - 1)) - 1);
        }

        var values = new double[GridPoints];
        distribution.OfScores(grid, values);
        double best = values.Zip(grid, (v, z) => LogWeight(v, z, measured)).Max();
        for (int i = 1; i < GridPoints; i++)
        {
            below[i] = below[i - 1] + Math.Exp(LogWeight(values[i], grid[i], measured) - best)
                + Math.Exp(LogWeight(values[i - 1], grid[i - 1], measured) - best);
        }

        for (int row = 0; row < scores.Length; row++)
        {
            double wanted = StandardNormal.Cumulative(scores[row]) * below[^1];
            int at = Array.BinarySearch(below, wanted);
            at = Math.Clamp(at < 0 ? ~at : at, 1, GridPoints - 1);
            double part = below[at] > below[at - 1] ? (wanted - below[at - 1]) / (below[at] - below[at - 1]) : 0;
            scores[row] = grid[at - 1] + (part * (grid[at] - grid[at - 1]));
        }
    }

    private static double LogWeight(double value, double z, FieldMeasurement measured)
    {
        double error = (measured.Value - value) / measured.StandardDeviation;
        return -0.5 * ((z * z) + (error * error));
    }

    private static void RefuseCorrelated(FactorSet factors, Factor factor)
    {
        if (factors.Correlated.Contains(factor))
        {
            throw new StudyException(
                $"{factor.Name} is correlated with another input and was measured on vehicles of the field: this cannot be weighed yet; leave its column or the correlation out");
        }
    }
}
