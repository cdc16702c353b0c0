using System.Collections.Immutable;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Studies;

/// <summary>
/// The chance that is left once every other factor is known: Miner sum and S-N scatter of fatigue, the scatter of the largest load, that
/// of the bearing. Given the factors the modes are independent: the probability of survival is the product of theirs.
/// </summary>
public sealed class ModeChances
{
    private readonly LifeScale scale;
    private readonly double[] agesKm;
    private readonly Value?[] scatters = new Value?[Enum.GetValues<FailureMode>().Length];

    internal ModeChances(Scenario scenario, FactorSet factors, ModeSet modes, LifeScale scale)
    {
        this.scale = scale;
        agesKm = [.. modes.AgesKm];
        Modes = modes.Modes;
        IsExact = scale.IsNormalGivenDamage;
        foreach ((FailureMode mode, Quantity quantity) in new[] { (FailureMode.Yield, Quantities.YieldScatter), (FailureMode.Bearing, Quantities.BearingScatter) })
        {
            if (!Modes.Contains(mode))
                continue;
            Input input = scenario.Find(quantity)!;
            scatters[(int)mode] = input.Value;
            IsExact &= input.Value is Value.Certain || factors.Groups.Single(g => g.Any(f => f.Name == input.Name)).Length == 1;
        }
    }

    /// <summary>The modes that are on.</summary>
    public ImmutableArray<FailureMode> Modes { get; }

    /// <summary>Whether the chance that is left is known exactly: its factors are independent of all others, and those of fatigue lognormal.</summary>
    public bool IsExact { get; }

    /// <summary>What a mode has used up by a distance, in units of its scatter: damage, expected yields, rating lives.</summary>
    public double Used(FailureMode mode, LifeRates rates, int row, double km) => AgedRates.Cumulated(rates.Of(mode), agesKm, row, km);

    /// <summary>-ln of the probability that one mode has not failed by a distance, given a row's rates.</summary>
    public double Hazard(FailureMode mode, LifeRates rates, int row, double km)
    {
        double used = Used(mode, rates, row, km);
        if (mode == FailureMode.Fatigue)
        {
            double z = (Math.Log(used) - scale.Mu) / scale.Sigma;
            return z < 0 ? -NearZero.LogOnePlus(-StandardNormal.Cumulative(z)) : -Math.Log(StandardNormal.Upper(z));
        }

        Value value = scatters[(int)mode]!;
        if (value is not Value.Uncertain { Distribution: Distribution scatter })
            return used < value.Nominal ? 0 : double.PositiveInfinity;
        double failed = scatter.Cumulative(used);
        return failed < 0.5 ? -NearZero.LogOnePlus(-failed) : -Math.Log(scatter.Upper(used));
    }

    /// <summary>The probability that any mode has failed by a distance, given a row's rates.</summary>
    public double FailureProbability(LifeRates rates, int row, double km)
    {
        double hazard = 0;
        foreach (FailureMode mode in Modes)
            hazard += Hazard(mode, rates, row, km);
        return -NearZero.ExpMinusOne(-hazard);
    }
}
