using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.RareEvents;

/// <summary>
/// Finds the design points of a limit state: from the origin, then from failing samples of a widened normal density that
/// the points found so far do not explain, at last from the samples of a subset simulation.
/// </summary>
internal static class DesignPointFinder
{
    private const int PilotSamples = 128;
    private const int SubsetSamples = 500;
    private const int MostSearches = 12;

    /// <summary>Searches in a row that find nothing new before it is enough.</summary>
    private const int Patience = 2;

    // Where no point is known the pilot looks at a common rare event first, then at the rarest.
    private static readonly double[] BlindBetas = [3.5, 7];

    /// <summary>Finds the points of a limit state in joint form.</summary>
    /// <param name="state">The limit state, without a normal part of its own.</param>
    /// <param name="seed">The study's seed.</param>
    /// <param name="stream">The name of the streams, of this state alone.</param>
    public static FoundPoints Find(LimitState state, ulong seed, string stream)
    {
        var points = new DesignPointSet();
        (DesignPoint? first, int spent) = DesignPointSearch.From(state, new double[state.Dimension]);
        long evaluations = spent;
        if (first is not null)
        {
            points.Add(first);
        }

        List<double[]> failing = [];
        foreach (double beta in points.Beta is { } known ? [known] : BlindBetas)
        {
            failing = Pilot(state, beta, seed, $"{stream}/pilot {beta:F1}");
            evaluations += PilotSamples;
            evaluations += Explain(state, points, failing);
            if (failing.Count > 0)
            {
                break;
            }
        }

        if (points.Beta is not null || failing.Count > 0)
        {
            return new FoundPoints(points, failing, evaluations, null);
        }

        SubsetOutcome subset = SubsetRun.Run(state, SubsetSamples, seed, $"{stream}/subset", default);
        evaluations += subset.Evaluations + Explain(state, points, subset.Failing);
        return new FoundPoints(points, subset.Failing, evaluations, subset.Failing.Count == 0 ? subset.Probability : null);
    }

    /// <summary>Searches from a failing sample; true where it leads to a new point.</summary>
    public static (bool IsNew, int Evaluations) Follow(LimitState state, DesignPointSet points, double[] from)
    {
        (DesignPoint? point, int evaluations) = DesignPointSearch.From(state, from);
        return (point is not null && points.Add(point), evaluations);
    }

    /// <summary>Searches from those failing samples that no point explains, the least explained first.</summary>
    private static long Explain(LimitState state, DesignPointSet points, IReadOnlyList<double[]> failing)
    {
        long evaluations = 0;
        int inVain = 0;
        var left = failing.ToList();
        for (int search = 0; search < MostSearches && inVain < Patience; search++)
        {
            left.RemoveAll(u => points.Beyond(u) >= 0);
            if (left.Count == 0)
            {
                break;
            }

            double[] from = left.MinBy(u => points.Points.Select(p => Vectors.Dot(p.Alpha, u)).DefaultIfEmpty().Max() / Vectors.Norm(u))!;
            left.Remove(from);
            (bool isNew, int spent) = Follow(state, points, from);
            evaluations += spent;
            inVain = isNew ? 0 : inVain + 1;
        }

        return evaluations;
    }

    private static List<double[]> Pilot(LimitState state, double beta, ulong seed, string stream)
    {
        double[][] u = Workspace.Columns(state.Dimension, PilotSamples);
        NormalDraws.Fill(seed, stream, 0, PilotSamples, u);
        double spread = NormalMixture.WideSpread(beta, state.Dimension);
        foreach (double[] column in u)
        {
            for (int row = 0; row < PilotSamples; row++)
            {
                column[row] *= spread;
            }
        }

        var g = new double[PilotSamples];
        state.Evaluate(u, PilotSamples, g);
        return [.. Enumerable.Range(0, PilotSamples).Where(row => g[row] <= 0).Select(row => Vectors.Row(u, row))];
    }
}

/// <summary>What the search for design points gave.</summary>
/// <param name="Points">The points; none where no search converged.</param>
/// <param name="Failing">Failing samples met on the way.</param>
/// <param name="Evaluations">Evaluations spent.</param>
/// <param name="NotAbove">Where neither a point nor a failing sample was found: the probability down to which was looked.</param>
internal sealed record FoundPoints(DesignPointSet Points, IReadOnlyList<double[]> Failing, long Evaluations, double? NotAbove);
