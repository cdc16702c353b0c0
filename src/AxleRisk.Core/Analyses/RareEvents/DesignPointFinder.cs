using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.RareEvents;

/// <summary>
/// Finds the design points of one limit state: from near the origin, then from failing samples of a widened normal density
/// that the points found so far do not explain, at last from the samples of a subset simulation.
/// </summary>
/// <param name="state">The limit state, without a normal part of its own.</param>
/// <param name="seed">The study's seed.</param>
/// <param name="stream">The name of the streams, of this state alone.</param>
internal sealed class DesignPointFinder(LimitState state, ulong seed, string stream)
{
    private const int PilotSamples = 256;
    private const int SubsetSamples = 500;
    private const int MostSearches = 12;
    private const int MostApproaches = 2;

    /// <summary>Searches in a row that find nothing new before it is enough.</summary>
    private const int Patience = 2;

    // Where no point is known the pilot looks at a common rare event first, then at the rarest.
    private static readonly double[] BlindBetas = [3.5, 7, 14, 28];

    /// <summary>Phi(-38) is the last that is not 0.</summary>
    private const double GreatestWeighed = 38;

    private int approaches;

    /// <summary>The points found so far.</summary>
    public DesignPointSet Points { get; } = new();

    /// <summary>Evaluations spent.</summary>
    public long Evaluations { get; private set; }

    /// <summary>Where no failure was found: the probability down to which was looked.</summary>
    public double? NotAbove { get; private set; }

    /// <summary>Finds the points.</summary>
    /// <param name="cancellation">Cuts the longest part short.</param>
    public void Find(CancellationToken cancellation)
    {
        // Not the origin itself: a symmetrical system has its kinks there, where a gradient means nothing.
        Search([.. Enumerable.Range(1, state.Dimension).Select(i => 0.05 * Math.Sin(i))]);
        foreach (double beta in Points.Beta is { } known ? [known] : BlindBetas)
        {
            Explain(Pilot(beta));
            if (Points.Beta is not null)
            {
                return;
            }
        }

        SubsetOutcome subset = SubsetRun.Run(state, SubsetSamples, seed, $"{stream}/subset", cancellation);
        Evaluations += subset.Evaluations;
        Explain(subset.Failing);
        NotAbove = subset.Failing.Count == 0 ? subset.Probability : null;
    }

    /// <summary>Takes in a failing sample that no point explains; true where it leads to a new point.</summary>
    public bool Follow(double[] from) => Follow(from, [from]);

    private bool Follow(double[] from, IReadOnlyList<double[]> unexplained)
    {
        if (Search(from))
        {
            return true;
        }

        List<double[]> clearly = [.. unexplained.Where(u => Points.Beyond(u) < -NearestFailing.Clear)];
        if (clearly.Count == 0 || approaches == MostApproaches)
        {
            return false;
        }

        Evaluations += NearestFailing.Evaluations;
        DesignPoint point = NearestFailing.Approach(state, Points, clearly, seed, $"{stream}/approach {approaches++}");

        // A sample about a true point at beta lies at about the root of beta^2 + dimension; but its weight must be a number.
        double farthest = Math.Min(Math.Sqrt((DesignPointSearch.GreatestRadius * DesignPointSearch.GreatestRadius) + state.Dimension),
            GreatestWeighed);
        return point.Beta < farthest && Points.Add(point);
    }

    private bool Search(double[] start)
    {
        (DesignPoint? point, int spent) = DesignPointSearch.From(state, start, Points.Points);
        Evaluations += spent;
        return point is not null && Points.Add(point);
    }

    /// <summary>Follows those failing samples that no point explains, the least explained first.</summary>
    private void Explain(IReadOnlyList<double[]> failing)
    {
        var left = failing.ToList();
        int inVain = 0;
        for (int search = 0; search < MostSearches && inVain < Patience; search++)
        {
            left.RemoveAll(u => Points.Beyond(u) >= 0);
            if (left.Count == 0)
            {
                return;
            }

            double[] from = left.MinBy(u => Points.Points.Select(p => PointVectors.Dot(p.Alpha, u)).DefaultIfEmpty()
                .Max() / PointVectors.Norm(u))!;
            inVain = Follow(from, left) ? 0 : inVain + 1;
            left.Remove(from);
        }
    }

    private List<double[]> Pilot(double beta)
    {
        double[][] u = Workspace.Columns(state.Dimension, PilotSamples);
        NormalDraws.Fill(seed, $"{stream}/pilot {beta:F1}", 0, PilotSamples, u);

        // A half-space at beta holds Phi(-beta / spread) of the samples. Where the first spread gives too few, in tens of
        // dimensions, the second still meets it.
        double[] spreads = [NormalMixture.WideSpread(beta, state.Dimension), NormalMixture.WideSpread(1.5 * beta, state.Dimension)];
        foreach (double[] column in u)
        {
            for (int row = 0; row < PilotSamples; row++)
            {
                column[row] *= spreads[row % 2];
            }
        }

        var g = new double[PilotSamples];
        state.Evaluate(u, PilotSamples, g);
        Evaluations += PilotSamples;
        return [.. Enumerable.Range(0, PilotSamples).Where(row => g[row] <= 0).Select(row => PointVectors.Row(u, row))];
    }
}
