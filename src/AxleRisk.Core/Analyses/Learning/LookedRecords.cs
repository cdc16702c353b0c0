using System.Collections.Immutable;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Learning;

/// <summary>
/// The likelihood of records of vehicles that were looked at for the crack, given what is unknown: the mean over a set of vehicles of
/// that of each, its scatter integrated over. Where life is lognormal given the damage and the crack the same in all, that is a smooth
/// function of the damage, and is computed at a few.
/// </summary>
internal sealed class LookedRecords
{
    private const double Near = 1e-3;
    private const int Nodes = 24;

    private readonly LifeModel model;
    private readonly CrackModel crack;
    private readonly (FieldRecord Record, double[] Sum)[] records;
    private readonly double[] before;
    private readonly double[] after;
    private readonly double[] at;
    private readonly double[] values = new double[Nodes];
    private (LookedChance Chance, FailureChances Chances)[] looked = [];

    public LookedRecords(LifeModel model, ImmutableArray<FieldRecord> records)
    {
        this.model = model;
        crack = new CrackModel(model);
        this.records = [.. records.Where(r => r.Look is not null).DistinctBy(KeyOf).Select(r => (r, new double[1]))];
        int modes = model.Modes.Modes.Length;
        (before, after, at) = (new double[modes], new double[modes], new double[modes]);
    }

    /// <summary>Forgets all vehicles, for those of other values of what is unknown.</summary>
    /// <param name="scale">What is left to chance of fatigue then.</param>
    /// <param name="chances">That of all modes.</param>
    public void Begin(LifeScale scale, FailureChances chances)
    {
        looked = [.. records.Select(r =>
        {
            var chance = new LookedChance(scale, [r.Record.Look!]);
            return (chance, chances.With(chance));
        })];
        foreach ((_, double[] sum) in records)
        {
            sum[0] = 0;
        }
    }

    /// <summary>Adds rows of a workspace last evaluated, each with a weight.</summary>
    public void Add(Workspace of, double[][] factors, int count, double weight)
    {
        CrackDepth first = crack.Of(factors, 0);
        bool isOne = model.Modes.IsPlain && Enumerable.Range(1, count - 1).All(row => crack.Of(factors, row) == first);
        for (int r = 0; r < records.Length; r++)
        {
            records[r].Sum[0] += weight * (isOne && count > 2 * Nodes ? ByDamage(r, of.DamagePerKm.AsSpan(0, count), first)
                : Enumerable.Range(0, count).Sum(row => OfRow(r, of, row, crack.Of(factors, row))));
        }
    }

    /// <summary>ln likelihood of one vehicle of a record.</summary>
    public double LogOf(FieldRecord record) => Math.Log(records.First(r => KeyOf(r.Record) == KeyOf(record)).Sum[0]);

    private static (double, double, CrackLook?) KeyOf(FieldRecord record) => (record.FromKm, record.ToKm, record.Look);

    private double OfRow(int r, Workspace of, int row, CrackDepth depth)
    {
        FieldRecord record = records[r].Record;
        FailureChances.FillUsed(of, row, record.Look!.Km, at);
        looked[r].Chance.Take(at.AsSpan(0, 1), depth);
        FailureChances.FillUsed(of, row, record.IsExact ? record.FromKm * (1 - Near) : record.FromKm, before);
        if (!record.HasFailed)
        {
            return looked[r].Chances.Survival(before);
        }

        FailureChances.FillUsed(of, row, record.IsExact ? record.ToKm * (1 + Near) : record.ToKm, after);
        return looked[r].Chances.Fails(before, after) / (record.IsExact ? 2 * Near * record.ToKm : 1);
    }

    // The sum over damages by the cubic through the likelihood at even steps of their logarithm.
    private double ByDamage(int r, ReadOnlySpan<double> damage, CrackDepth depth)
    {
        (double least, double most) = (double.PositiveInfinity, 0);
        foreach (double d in damage)
        {
            (least, most) = (Math.Min(least, d), Math.Max(most, d));
        }

        (double low, double step) = (Math.Log(Math.Max(least, 1e-300)), 0);
        step = Math.Max(1e-9, (Math.Log(Math.Max(most, 1e-300)) - low) / (Nodes - 3));
        for (int i = 0; i < Nodes; i++)
        {
            values[i] = OfDamage(r, Math.Exp(low + ((i - 1) * step)), depth);
        }

        CompensatedSum sum = default;
        foreach (double d in damage)
        {
            double place = ((Math.Log(Math.Max(d, 1e-300)) - low) / step) + 1;
            int cell = Math.Clamp((int)place, 1, Nodes - 3);
            double t = place - cell, x = values[cell - 1], y = values[cell], z = values[cell + 1], w = values[cell + 2];
            sum.Add(Math.Max(0, y + (t * (z - y)) - (t * (1 - t) / 6 * (((2 - t) * (x - (2 * y) + z)) + ((1 + t) * (y - (2 * z) + w))))));
        }

        return sum.Value;
    }

    private double OfDamage(int r, double damage, CrackDepth depth)
    {
        FieldRecord record = records[r].Record;
        looked[r].Chance.Take([damage * record.Look!.Km], depth);
        return !record.HasFailed ? looked[r].Chance.Survival(damage * record.FromKm)
            : record.IsExact ? looked[r].Chance.Fails(damage * record.FromKm * (1 - Near), damage * record.ToKm * (1 + Near))
                / (2 * Near * record.ToKm)
            : looked[r].Chance.Fails(damage * record.FromKm, damage * record.ToKm);
    }
}
