using AxleRisk.Core.Modes;
using AxleRisk.Core.Numerics.Vectors;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Learning;

/// <summary>
/// Adds evaluated vehicles to a life curve, with what is left to chance averaged exactly where it can be. A chance that is itself
/// unknown, such as a Miner sum that all vehicles share, is held at its value.
/// </summary>
internal sealed class CurveFiller
{
    /// <summary>Standard deviation of ln life over which counted lives are spread where nothing is left to chance.</summary>
    public const double CountedSpread = 0.1;

    /// <summary>Half of the difference of ln distance that gives a density.</summary>
    public const double DifferenceOfLn = 1e-3;
    private const double InverseSqrt2Pi = 0.3989422804014327;

    private readonly LifeModel model;
    private readonly Factor[] unknownChances;
    private readonly bool isPlain;
    private readonly bool isCounted;
    private readonly double mu;
    private readonly double sigma;
    private readonly double[] first;
    private readonly double[] second;
    private FailureChances chances;
    private double shift;

    public CurveFiller(LifeModel model, Unknowns unknowns, int capacity)
    {
        this.model = model;
        unknownChances = [.. model.Factors.Factors.Where(f => unknowns.IsUnknown[f.FirstColumn] && model.Chances.ModeOf(f) >= 0)];
        isPlain = model.Modes.IsPlain;
        LifeScale rest = unknownChances.Where(LifeScale.Contains).Aggregate(model.Scale, (s, f) => s.Hold(f, f.Distribution!.Median));
        isCounted = !model.Chances.IsExact || !(rest.Sigma > 0);
        (mu, sigma) = isCounted ? (0, CountedSpread) : (rest.Mu, rest.Sigma);
        chances = model.Chances;
        (HeldScale, HeldChances) = (model.Scale, model.Chances);
        first = new double[capacity];
        second = new double[capacity];
    }

    /// <summary>What is left to chance of fatigue of the vehicles begun with.</summary>
    public LifeScale HeldScale { get; private set; }

    /// <summary>That of all modes.</summary>
    public FailureChances HeldChances { get; private set; }

    /// <summary>Whether lives are counted, and not known exactly given the damage.</summary>
    public bool IsCounted => isCounted;

    /// <summary>Prepares for vehicles with the unknown values of a row.</summary>
    public void Begin(double[][] unknownValues, int row)
    {
        if (unknownChances.Length == 0 || isCounted)
        {
            return;
        }

        (Factor Factor, double Value)[] known = [.. unknownChances.Select(f => (f, unknownValues[f.FirstColumn][row]))];
        HeldScale = known.Where(k => LifeScale.Contains(k.Factor)).Aggregate(model.Scale, (s, k) => s.Hold(k.Factor, k.Value));
        HeldChances = model.Chances.Holding(known);
        if (isPlain)
        {
            shift = HeldScale.Mu - mu;
        }
        else
        {
            chances = HeldChances;
        }
    }

    /// <summary>Adds rows of a workspace last evaluated, each with a weight.</summary>
    public void Add(Workspace workspace, int from, int count, double weight, LifeCurve curve)
    {
        for (int k = 0; k < curve.Nodes.Length; k++)
        {
            double km = curve.Nodes[k];
            if (isCounted)
            {
                AddLognormal(workspace.LifeKm, from, count, weight, curve, k, 1, -Math.Log(km));
            }
            else if (isPlain)
            {
                AddLognormal(workspace.DamagePerKm, from, count, weight, curve, k, -1, mu + shift - Math.Log(km));
            }
            else
            {
                AddModes(workspace, from, count, weight, curve, k, km);
            }
        }
    }

    // Life is lognormal: z = (ln distance - mean of ln life) / sigma, the mean being sign * ln x + offset + ln distance.
    private void AddLognormal(double[] of, int from, int count, double weight, LifeCurve curve, int node, int sign, double offset)
    {
        Span<double> hazard = first.AsSpan(0, count), part = second.AsSpan(0, count);
        ReadOnlySpan<double> x = of.AsSpan(from, count);
        double slope = -sign / sigma;
        VectorColumns.LognormalHazard(x, slope, -offset / sigma, hazard);
        VectorColumns.Failed(hazard, part);
        curve.Failed[node] += weight * Sum(part);
        VectorColumns.ScaledExp(hazard, -1, 1, part);
        curve.Whole[node] += weight * Sum(part);
        VectorColumns.Log(x, part);
        VectorColumns.Line(part, slope, -offset / sigma, part);
        VectorColumns.ScaledProduct(part, part, -0.5, part);
        VectorColumns.ScaledExp(part, 1, InverseSqrt2Pi / (sigma * curve.Nodes[node]), part);
        curve.Density[node] += weight * Sum(part);
    }

    // By age, or with several modes, a failure probability is a sum of hazards; its density is their difference.
    private void AddModes(Workspace workspace, int from, int count, double weight, LifeCurve curve, int node, double km)
    {
        double FailedBy(double distance)
        {
            chances.FillFailureProbabilities(workspace, from + count, 0, distance, first);
            return Sum(first.AsSpan(from, count));
        }

        double failed = FailedBy(km);
        curve.Failed[node] += weight * failed;
        curve.Whole[node] += weight * (count - failed);
        double step = Math.Exp(DifferenceOfLn);
        curve.Density[node] += weight * Math.Max(0, FailedBy(km * step) - FailedBy(km / step)) / (2 * DifferenceOfLn * km);
    }

    private static double Sum(ReadOnlySpan<double> x)
    {
        double a = 0, b = 0, c = 0, d = 0;
        int i = 0;
        for (; i <= x.Length - 4; i += 4)
        {
            a += x[i];
            b += x[i + 1];
            c += x[i + 2];
            d += x[i + 3];
        }

        for (; i < x.Length; i++)
        {
            a += x[i];
        }

        return a + b + (c + d);
    }
}
