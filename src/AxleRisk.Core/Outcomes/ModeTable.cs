using System.Collections.Immutable;
using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Outcomes;

/// <summary>
/// Sums over evaluations, at fixed distances, of the exact failure probabilities given the factors: of the earliest mode, of each
/// mode as the
/// first, and of all modes but one. Joined by adding, like the summary it belongs to.
/// </summary>
public sealed class ModeTable
{
    /// <summary>Distances to a factor of e.</summary>
    public const int PerUnit = 8;

    /// <summary>The number of distances beside the bends: from a factor of e^-7 below the required distance to e^7 above it.</summary>
    public const int Nodes = 2 * Reach * PerUnit + 1;

    private const int Reach = 7;

    private readonly double[] km;
    private readonly bool[] isBend;

    /// <summary>An empty table.</summary>
    /// <param name="requiredKm">The required distance, which is one of the distances.</param>
    /// <param name="modes">The number of modes.</param>
    /// <param name="bendsKm">Distances where the use changes, km, rising: what was summed bends there, and they are distances too.</param>
    public ModeTable(double requiredKm, int modes, ImmutableArray<double> bendsKm)
    {
        RequiredKm = requiredKm;
        double[] regular =
            [.. Enumerable.Range(0, Nodes).Select(node => requiredKm * Math.Exp((double)(node - Reach * PerUnit) / PerUnit))];
        BendsKm = [.. bendsKm.Where(b => b > regular[0] && b < regular[^1])];
        km = [.. regular.Where(r => !BendsKm.Any(b => IsSame(r, b))).Concat(BendsKm).Order()];
        isBend = [.. km.Select(BendsKm.Contains)];
        Failed = new ExactSum[Count];
        Squares = new ExactSum[Count];
        First = [.. Enumerable.Range(0, modes).Select(_ => new ExactSum[Count])];
        Without = [.. Enumerable.Range(0, modes).Select(_ => new ExactSum[Count])];
        FirstCounts = [.. Enumerable.Range(0, modes).Select(_ => new LogHistogram())];
    }

    /// <summary>The required distance, km.</summary>
    public double RequiredKm { get; }

    /// <summary>The distances where the use changes, km.</summary>
    public ImmutableArray<double> BendsKm { get; }

    /// <summary>The number of distances.</summary>
    public int Count => km.Length;

    /// <summary>Sums of the probability that some mode has failed.</summary>
    public ExactSum[] Failed { get; }

    /// <summary>Sums of its squares.</summary>
    public ExactSum[] Squares { get; }

    /// <summary>Sums of the probability that a mode has failed, and first, by mode.</summary>
    public ExactSum[][] First { get; }

    /// <summary>Sums of the probability that some mode but one has failed, by that one.</summary>
    public ExactSum[][] Without { get; }

    /// <summary>Lives that were drawn, by the mode that failed first.</summary>
    public LogHistogram[] FirstCounts { get; }

    /// <summary>A distance, km.</summary>
    public double Km(int node) => km[node];

    /// <summary>An empty table like this.</summary>
    public ModeTable Empty() => new(RequiredKm, First.Length, BendsKm);

    /// <summary>Adds another table of the same scenario.</summary>
    public void Add(ModeTable other)
    {
        foreach ((ExactSum[] to, ExactSum[] from) in Sums().Zip(other.Sums()))
        {
            for (int i = 0; i < Count; i++)
            {
                to[i] = to[i].Plus(from[i]);
            }
        }

        foreach ((LogHistogram to, LogHistogram from) in FirstCounts.Zip(other.FirstCounts))
        {
            to.Add(from);
        }
    }

    /// <summary>Empties the table.</summary>
    public void Clear()
    {
        foreach (ExactSum[] sums in Sums())
        {
            Array.Clear(sums);
        }

        foreach (LogHistogram counts in FirstCounts)
        {
            counts.Clear();
        }
    }

    /// <summary>All sums, in a fixed order.</summary>
    public IEnumerable<ExactSum[]> Sums() => [Failed, Squares, .. First, .. Without];

    /// <summary>The mean at a distance of sums that rise with it from 0 to at most the number of evaluations.</summary>
    /// <param name="sums">One of the tables' sums.</param>
    /// <param name="evaluations">The number of evaluations.</param>
    /// <param name="km">The distance, km.</param>
    public double Mean(ExactSum[] sums, long evaluations, double km)
    {
        if (!BendsKm.IsEmpty)
        {
            return MeanBetweenBends(sums, evaluations, km);
        }

        double place = (Math.Log(km / RequiredKm) + Reach) * PerUnit;
        int near = (int)Math.Clamp(Math.Round(place), 0, Nodes - 1);
        double At(int i) => sums[i].Value / evaluations;
        if (!(place > 0 && place < Nodes - 1) || Math.Abs(place - near) < 1e-9)
        {
            return At(near);
        }

        // Cubic in the logarithms of distance and cumulated hazard; straight where a neighbour has no such logarithm.
        int i = (int)place;
        double t = place - i;
        Span<double> y = stackalloc double[4];
        for (int k = 0; k < 4; k++)
        {
            y[k] = Math.Log(-LogExp.LogP1(-At(Math.Clamp(i - 1 + k, 0, Nodes - 1))));
        }

        double ln = i > 0 && i + 2 < Nodes && double.IsFinite(y[0] + y[1] + y[2] + y[3])
            ? Cubic(y, t)
            : double.IsFinite(y[1] + y[2]) ? (1 - t) * y[1] + t * y[2] : double.NaN;
        return double.IsNaN(ln) ? (1 - t) * At(i) + t * At(i + 1) : -LogExp.ExpM1(-Math.Exp(ln));
    }

    // The same through the four distances nearest that no bend divides, or as many as there are.
    private double MeanBetweenBends(ExactSum[] sums, long evaluations, double at)
    {
        double At(int i) => sums[i].Value / evaluations;
        int right = Array.FindIndex(km, k => k >= at * (1 - 1e-12));
        if (right <= 0 || IsSame(km[right], at))
        {
            return At(right < 0 ? Count - 1 : right);
        }

        int first = right - 1, last = right;
        first -= first > 0 && !isBend[first] ? 1 : 0;
        last += last + 1 < Count && !isBend[last] ? 1 : 0;
        double x = Math.Log(at), ln = 0;
        for (int i = first; i <= last; i++)
        {
            double part = Math.Log(-LogExp.LogP1(-At(i)));
            for (int j = first; j <= last; j++)
            {
                part *= i == j ? 1 : (x - Math.Log(km[j])) / (Math.Log(km[i]) - Math.Log(km[j]));
            }

            ln += part;
        }

        double t = (x - Math.Log(km[right - 1])) / (Math.Log(km[right]) - Math.Log(km[right - 1]));
        return double.IsFinite(ln) ? -LogExp.ExpM1(-Math.Exp(ln)) : (1 - t) * At(right - 1) + t * At(right);
    }

    private static bool IsSame(double a, double b) => Math.Abs(a - b) <= 1e-9 * b;

    // Lagrange's polynomial through the values at -1, 0, 1, 2.
    private static double Cubic(ReadOnlySpan<double> y, double t) =>
        -t * (t - 1) * (t - 2) / 6 * y[0] + (t + 1) * (t - 1) * (t - 2) / 2 * y[1]
        - (t + 1) * t * (t - 2) / 2 * y[2] + (t + 1) * t * (t - 1) / 6 * y[3];
}
