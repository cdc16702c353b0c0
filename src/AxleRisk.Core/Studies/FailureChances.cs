using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Studies;

/// <summary>
/// Whether a row has failed by a distance, once every factor is known but those that scatter alone: Miner sum and S-N scatter of fatigue, the
/// scatter of each further mode. Given the factors the modes are independent, so their cumulated hazards (-ln of survival) add up. Every method
/// takes rows of a workspace last evaluated; the batch forms have one-row twins.
/// </summary>
public sealed class FailureChances
{
    private readonly LifeScale scale;
    private readonly ImmutableArray<ModeChance> chances;

    internal FailureChances(Scenario scenario, FactorSet factors, ModeSet modes, LifeScale scale)
    {
        this.scale = scale;
        Modes = modes.Modes;
        IsExact = scale.IsNormalGivenDamage;
        List<ModeChance> all = [new ModeChance.Fatigue(scale)];
        foreach (FurtherMode mode in modes.Further)
        {
            Input input = scenario.Find(mode.Scatter)!;
            all.Add(input.Value is Value.Uncertain uncertain ? new ModeChance.Scatter(uncertain.Distribution) : new ModeChance.Certain(input.Value.Nominal));
            IsExact &= input.Value is Value.Certain || factors.Groups.Single(g => g.Any(f => f.Name == input.Name)).Length == 1;
        }

        chances = [.. all];
    }

    /// <summary>The modes that are on.</summary>
    public ImmutableArray<FailureMode> Modes { get; }

    /// <summary>Whether the chance that is left is known exactly: its factors are independent of all others, and those of fatigue lognormal.</summary>
    public bool IsExact { get; }

    /// <summary>What a mode has used up by a distance, in units of its scatter: damage, expected yields, rating lives.</summary>
    /// <param name="mode">Its place among <see cref="Modes"/>.</param>
    /// <param name="of">The workspace.</param>
    /// <param name="row">The row.</param>
    /// <param name="km">The distance, km.</param>
    public static double Used(int mode, Workspace of, int row, double km) =>
        of.Rates is { } rates ? rates.Curves[mode].Used(row, km) : of.DamagePerKm[row] * km;

    /// <summary>The cumulated hazard of one mode by a distance.</summary>
    public double Hazard(int mode, Workspace of, int row, double km) => chances[mode].Hazard(Used(mode, of, row, km));

    /// <summary>The cumulated hazards of one mode in the first rows.</summary>
    public void FillHazards(int mode, Workspace of, int count, double km, Span<double> hazard)
    {
        Span<double> used = hazard[..count];
        if (of.Rates is { } rates)
            rates.Curves[mode].FillUsed(count, km, used);
        else
            VectorColumns.Scale(of.DamagePerKm.AsSpan(0, count), km, used);
        chances[mode].FillHazards(used, used);
    }

    /// <summary>The probability that any mode has failed by a distance.</summary>
    public double FailureProbability(Workspace of, int row, double km)
    {
        if (of.Rates is null)
            return scale.FailureProbability(km, of.DamagePerKm[row]);
        double hazard = 0;
        for (int mode = 0; mode < chances.Length; mode++)
            hazard += Hazard(mode, of, row, km);
        return -NearZero.ExpMinusOne(-hazard);
    }

    /// <summary>The probabilities in the first rows that any mode fails between two distances, given that none has by the first.</summary>
    /// <param name="of">The workspace.</param>
    /// <param name="count">Rows.</param>
    /// <param name="fromKm">The first distance, km; 0 for all failures by the other.</param>
    /// <param name="toKm">The other, km.</param>
    /// <param name="failed">Takes the probabilities.</param>
    public void FillFailureProbabilities(Workspace of, int count, double fromKm, double toKm, Span<double> failed)
    {
        Span<double> sum = failed[..count];
        FillHazards(0, of, count, toKm, sum);
        double[] part = of.Hazards;
        for (int mode = 1; mode < chances.Length; mode++)
        {
            FillHazards(mode, of, count, toKm, part);
            VectorColumns.Add(part.AsSpan(0, count), sum);
        }

        for (int mode = 0; fromKm > 0 && mode < chances.Length; mode++)
        {
            FillHazards(mode, of, count, fromKm, part);
            for (int row = 0; row < count; row++)
                sum[row] = double.IsInfinity(sum[row]) ? sum[row] : sum[row] - part[row];
        }

        VectorColumns.Failed(sum, sum);
    }
}
