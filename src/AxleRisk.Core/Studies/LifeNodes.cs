using System.Runtime.Intrinsics;
using AxleRisk.Core.Numerics.Vectors;
using MathNet.Numerics.Integration;

namespace AxleRisk.Core.Studies;

/// <summary>
/// Points and weights that integrate over what fatigue can use up, lognormal, from a point upward: Gauss-Legendre in panels of the standard
/// normal score, cut where the integrand bends. A thread's buffer.
/// </summary>
internal sealed class LifeNodes
{
    private const double Widest = 1;
    private const double Far = 8.5;
    private const double InverseSqrt2Pi = 0.39894228040143267794;
    private static readonly int Width = Vector512<double>.Count;

    private static readonly GaussLegendreRule[] Rules = [new(-1, 1, 4), new(-1, 1, 5), new(-1, 1, 8)];
    private static readonly double[][] Abscissas = [.. Rules.Select(r => r.Abscissas)];
    private static readonly double[][] RuleWeights = [.. Rules.Select(r => r.Weights)];

    private double[] cuts = new double[64];
    private int cutCount;

    /// <summary>The scores, ascending; with room behind them for a last vector.</summary>
    public double[] Scores { get; private set; } = new double[512];

    /// <summary>The weights: density times width.</summary>
    public double[] Weights { get; private set; } = new double[512];

    /// <summary>The number of points.</summary>
    public int Count { get; private set; }

    /// <summary>Forgets the cuts.</summary>
    public void Clear() => cutCount = 0;

    /// <summary>Cuts panels at a score.</summary>
    public void Cut(double score)
    {
        if (cutCount == cuts.Length)
        {
            Array.Resize(ref cuts, 2 * cuts.Length);
        }

        if (double.IsFinite(score))
        {
            cuts[cutCount++] = score;
        }
    }

    /// <summary>Fills the points between two scores.</summary>
    public void Fill(double low, double high)
    {
        Count = 0;
        (double from, double to) = Bounds(low, high);
        if (!(to > from))
        {
            return;
        }

        Span<double> sorted = cuts.AsSpan(0, cutCount);
        sorted.Sort();
        double start = from;
        foreach (double cut in sorted)
        {
            if (cut > start && cut < to)
            {
                AddPanels(start, cut);
                start = cut;
            }
        }

        AddPanels(start, to);
        for (int i = 0; i < Count; i += Width)
        {
            Vector512<double> z = Vector512.LoadUnsafe(in Scores[i]);
            (Vector512.LoadUnsafe(in Weights[i]) * (InverseSqrt2Pi * VectorExponential.Of(-0.5 * z * z))).CopyTo(Weights, i);
        }
    }

    // Beyond them there is less than 1e-17 of what lies between.
    private static (double From, double To) Bounds(double low, double high)
    {
        double from = high < 0 ? Math.Max(low, high - (40 / (Far / 2 - high))) : Math.Max(low, -Far);
        double to = low > 0 ? Math.Min(high, low + (40 / (Far / 2 + low))) : Math.Min(high, Far);
        return (from, to);
    }

    private void AddPanels(double from, double to)
    {
        int panels = Math.Max(1, (int)Math.Ceiling((to - from) / Widest));
        double half = (to - from) / (2 * panels);
        int rule = half < 0.1 ? 0 : half < 0.2 ? 1 : 2;
        (double[] at, double[] share) = (Abscissas[rule], RuleWeights[rule]);
        Reserve(Count + (panels * at.Length));
        for (int panel = 0; panel < panels; panel++)
        {
            double middle = from + (((2 * panel) + 1) * half);
            for (int i = 0; i < at.Length; i++, Count++)
            {
                Scores[Count] = middle + (half * at[i]);
                Weights[Count] = half * share[i];
            }
        }
    }

    private void Reserve(int count)
    {
        if (count + Width > Scores.Length)
        {
            (double[] scores, double[] weights) = (Scores, Weights);
            Array.Resize(ref scores, 2 * count);
            Array.Resize(ref weights, 2 * count);
            (Scores, Weights) = (scores, weights);
        }
    }
}
