using System.Collections.Immutable;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Numerics.Vectors;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Studies;

/// <summary>
/// Whether a row has failed by a distance, once every factor is known but those that scatter alone: Miner sum and S-N scatter of
/// fatigue, the
/// scatter of each further mode. Given the factors the modes are independent, so their cumulated hazards (-ln of survival) add
/// up. Every method
/// takes rows of a workspace last evaluated; the batch forms have one-row twins.
/// </summary>
internal sealed class FailureChances
{
    private readonly LifeScale scale;
    private readonly ImmutableArray<ModeChance> chances;
    private readonly ImmutableArray<string> scatters;

    internal FailureChances(Scenario scenario, FactorSet factors, ModeSet modes, LifeScale scale)
    {
        this.scale = scale;
        Modes = modes.Modes;
        IsExact = scale.IsNormalGivenDamage;
        List<ModeChance> all = [new ModeChance.Fatigue(scale)];
        foreach (FurtherMode mode in modes.Further)
        {
            Input input = mode.ScatterIn(scenario);
            all.Add(mode.ChanceOf(input.Value));
            IsExact &= input.Value is Value.Certain || factors.IsAlone(factors.Find(input.Name)!);
        }

        chances = [.. all];
        scatters = [.. modes.Further.Select(m => m.ScatterIn(scenario).Name)];
    }

    private FailureChances(FailureChances from, LifeScale scale, IEnumerable<ModeChance> chances)
    {
        (this.scale, Modes, IsExact, scatters) = (scale, from.Modes, from.IsExact, from.scatters);
        this.chances = [.. chances];
    }

    /// <summary>The modes that are on.</summary>
    public ImmutableArray<FailureMode> Modes { get; }

    /// <summary>
    /// Whether the chance that is left is known exactly: its factors are independent of all others, and those of fatigue
    /// lognormal.
    /// </summary>
    public bool IsExact { get; }

    /// <summary>The place among <see cref="Modes"/> of the mode whose chance a factor is; -1 for any other factor.</summary>
    public int ModeOf(Factor factor) =>
        LifeScale.Contains(factor) ? 0 : scatters.IndexOf(factor.Name) is >= 0 and var place ? place + 1 : -1;

    /// <summary>What is left to chance in a mode.</summary>
    internal ModeChance Of(int mode) => chances[mode];

    /// <summary>The same of the mode whose chance a factor is, with that held at a value in its own unit.</summary>
    internal ModeChance Holding(Factor factor, double value) =>
        ModeOf(factor) == 0 ? new ModeChance.Fatigue(scale.Hold(factor, value)) : new ModeChance.Certain(value);

    /// <summary>The same with some of the chances known.</summary>
    /// <param name="known">Factors that are chances, and their values in their own units.</param>
    internal FailureChances Holding(IReadOnlyCollection<(Factor Factor, double Value)> known)
    {
        LifeScale held = known.Where(k => LifeScale.Contains(k.Factor)).Aggregate(scale, (s, k) => s.Hold(k.Factor, k.Value));
        ILookup<int, double> further = known.ToLookup(k => ModeOf(k.Factor), k => k.Value);
        return new FailureChances(this, held, chances.Select((chance, mode) =>
            mode == 0 ? new ModeChance.Fatigue(held) : further[mode].Any() ? new ModeChance.Certain(further[mode].First()) : chance));
    }

    /// <summary>The same with what is left to chance of fatigue as another says.</summary>
    internal FailureChances With(ModeChance fatigue) => new(this, scale, [fatigue, .. chances.Skip(1)]);

    /// <summary>
    /// What a mode has used up by a distance, in units of its scatter: damage, expected yields, rating lives. Nothing by 0,
    /// however fatal the road.
    /// </summary>
    /// <param name="mode">Its place among <see cref="Modes"/>.</param>
    /// <param name="of">The workspace.</param>
    /// <param name="row">The row.</param>
    /// <param name="km">The distance, km.</param>
    public static double Used(int mode, Workspace of, int row, double km) =>
        of.Rates is { } rates ? rates.Curves[mode].Used(row, km) : km > 0 ? of.DamagePerKm[row] * km : 0;

    /// <summary>What each mode has used up by a distance.</summary>
    public static void FillUsed(Workspace of, int row, double km, Span<double> used)
    {
        for (int mode = 0; mode < used.Length; mode++)
        {
            used[mode] = Used(mode, of, row, km);
        }
    }

    /// <summary>Whether any mode has used up more than it can, as drawn.</summary>
    public static bool Exceeds(ReadOnlySpan<double> used, ReadOnlySpan<double> limits)
    {
        for (int mode = 0; mode < used.Length; mode++)
        {
            if (used[mode] > limits[mode])
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The probability of surviving what each mode has used up.</summary>
    public double Survival(ReadOnlySpan<double> used)
    {
        double survival = 1;
        for (int mode = 0; mode < chances.Length; mode++)
        {
            survival *= chances[mode].Survival(used[mode]);
        }

        return survival;
    }

    /// <summary>
    /// The probability of surviving what each mode has used up before but not what it has after; no digits are lost where it is
    /// small.
    /// </summary>
    public double Fails(ReadOnlySpan<double> before, ReadOnlySpan<double> after)
    {
        // Mode by mode: those before it have survived all of it, those behind it its beginning.
        double fails = 0;
        for (int mode = 0; mode < chances.Length; mode++)
        {
            double part = chances[mode].Fails(before[mode], after[mode]);
            for (int other = 0; part > 0 && other < chances.Length; other++)
            {
                part *= other == mode ? 1 : chances[other].Survival(other < mode ? after[other] : before[other]);
            }

            fails += part;
        }

        return fails;
    }

    /// <summary>
    /// The standard normal score z of a mode's limit that is just used up: P(Z &lt; z) is the probability that the mode has
    /// failed.
    /// </summary>
    internal double ScoreOf(int mode, double used) => mode == 0 ? scale.Standardised(1, used) : -MarginOf(chances[mode].Hazard(used));

    /// <summary>The share of the variance of fatigue's chance that a factor brings; 0 for any but Miner sum and S-N scatter.</summary>
    internal double ShareOfFatigue(Factor factor) => scale.VarianceShare(factor);

    /// <summary>
    /// The standard normal score z with P(Z &gt; z) = P(some mode has failed), negative where that is above a half. Beyond what a
    /// double can tell fatigue alone gives it.
    /// </summary>
    internal double Margin(ReadOnlySpan<double> used)
    {
        double hazard = Hazard(used);
        return hazard > 0 && hazard < 700 ? MarginOf(hazard) : -scale.Standardised(1, used[0]) is var far && hazard > 0
            ? Math.Min(far, -37) : far;
    }

    /// <summary>The same of a cumulated hazard.</summary>
    internal static double MarginOf(double hazard) =>
        hazard < 0.5 ? -StandardNormal.Quantile(-LogExp.ExpM1(-hazard)) : StandardNormal.Quantile(Math.Exp(-hazard));

    /// <summary>The cumulated hazard of what each mode has used up.</summary>
    public double Hazard(ReadOnlySpan<double> used)
    {
        double hazard = 0;
        for (int mode = 0; mode < chances.Length; mode++)
        {
            hazard += chances[mode].Hazard(used[mode]);
        }

        return hazard;
    }

    /// <summary>The cumulated hazard of one mode by a distance.</summary>
    public double Hazard(int mode, Workspace of, int row, double km) => chances[mode].Hazard(Used(mode, of, row, km));

    /// <summary>The cumulated hazards of one mode in the first rows.</summary>
    public void FillHazards(int mode, Workspace of, int count, double km, Span<double> hazard)
    {
        Span<double> used = hazard[..count];
        if (of.Rates is { } rates)
        {
            rates.Curves[mode].FillUsed(count, km, used);
        }
        else
        {
            VectorColumns.Scale(of.DamagePerKm.AsSpan(0, count), km, used);
        }

        chances[mode].FillHazards(used, used);
    }

    /// <summary>The probability that any mode has failed by a distance.</summary>
    public double FailureProbability(Workspace of, int row, double km)
    {
        if (of.Rates is null)
        {
            return scale.FailureProbability(km, of.DamagePerKm[row]);
        }

        double hazard = 0;
        for (int mode = 0; mode < chances.Length; mode++)
        {
            hazard += Hazard(mode, of, row, km);
        }

        return -LogExp.ExpM1(-hazard);
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
            {
                sum[row] = double.IsInfinity(sum[row]) ? sum[row] : sum[row] - part[row];
            }
        }

        VectorColumns.Failed(sum, sum);
    }

    /// <summary>The probabilities in the first rows of rates that any mode has failed by a distance of each.</summary>
    /// <param name="rates">The rates.</param>
    /// <param name="km">The distances, km.</param>
    /// <param name="failed">Takes the probabilities.</param>
    /// <param name="part">Room for as many.</param>
    internal void FillFailureProbabilities(LifeRates rates, ReadOnlySpan<double> km, Span<double> failed, Span<double> part)
    {
        failed.Clear();
        for (int mode = 0; mode < chances.Length; mode++)
        {
            rates.Curves[mode].FillUsed(km, part);
            chances[mode].FillHazards(part, part);
            VectorColumns.Add(part, failed);
        }

        VectorColumns.Failed(failed, failed);
    }
}
