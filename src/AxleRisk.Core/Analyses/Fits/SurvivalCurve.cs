using System.Collections.Immutable;
using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Analyses.Fits;

/// <summary>A step of a survival curve that the data alone give.</summary>
/// <param name="At">Where it steps down.</param>
/// <param name="Survival">The share that is left behind it, with a 95 % interval of each step by itself.</param>
public readonly record struct SurvivalStep(double At, Interval Survival);

/// <summary>
/// What the data alone say of survival, without a family: the product limit of Kaplan and Meier (1958) where values are known or
/// known to lie above something; else the self-consistent estimate of Turnbull (1976).
/// </summary>
public static class SurvivalCurve
{
    private const double TwoSided = 1.959963984540054;

    /// <summary>The steps, ascending; none where nothing has failed.</summary>
    public static ImmutableArray<SurvivalStep> Of(IEnumerable<Observation> observations, ulong seed)
    {
        Observation[] all = [.. observations];
        return all.All(o => o.IsExact || double.IsInfinity(o.High)) ? ProductLimit(all) : Turnbull.Of(all, seed);
    }

    /// <summary>
    /// The product limit; what is known to lie above a value counts as there when that value fails. Its bands are Greenwood's
    /// (1926), on the scale of ln(-ln S), where they stay between 0 and 1 (Kalbfleisch and Prentice 1980).
    /// </summary>
    private static ImmutableArray<SurvivalStep> ProductLimit(Observation[] all)
    {
        var steps = ImmutableArray.CreateBuilder<SurvivalStep>();
        double left = all.Sum(o => o.Count), survival = 1, variance = 0;
        foreach (var at in all.GroupBy(o => o.Low).OrderBy(g => g.Key))
        {
            double failed = at.Where(o => o.IsExact).Sum(o => o.Count);
            if (failed > 0)
            {
                survival *= 1 - (failed / left);
                variance += failed / (left * (left - failed));
                steps.Add(new SurvivalStep(at.Key, Banded(survival, variance)));
            }

            left -= at.Sum(o => o.Count);
        }

        return steps.ToImmutable();
    }

    private static Interval Banded(double survival, double variance)
    {
        if (!(survival > 0) || !double.IsFinite(variance))
        {
            return new Interval(Math.Max(0, survival), 0, 1);
        }

        double spread = Math.Exp(TwoSided * Math.Sqrt(variance) / -Math.Log(survival));
        return new Interval(survival, Math.Pow(survival, spread), Math.Pow(survival, 1 / spread));
    }
}
