using System.Collections.Immutable;

namespace AxleRisk.Core.Analyses.Trips;

/// <summary>
/// The speeds of all legs together with the least travel time under a target. About a combination the risk is nearly a sum of what
/// each leg brings alone; the best combination of that sum (a knapsack of one choice a leg, solved by its fronts) is judged by the
/// vehicles themselves, and the sum is made anew about it, until nothing gains; then every change of two legs is tried.
/// </summary>
/// <param name="vehicles">The vehicles.</param>
/// <param name="speeds">The speeds of each leg, km/h.</param>
/// <param name="km">Its mean distance, km.</param>
internal sealed class SpeedSearch(CardVehicles vehicles, ImmutableArray<ImmutableArray<double>> speeds, double[] km)
{
    private const int MostRounds = 12;

    /// <summary>Points of a front that are kept: more are not told apart.</summary>
    internal const int MostOfFront = 4000;

    private readonly double[] total = new double[vehicles.Used[0][0].Length];
    private readonly Dictionary<string, double> known = [];

    /// <summary>The travel time of a combination, h.</summary>
    public double Hours(int[] at) => at.Select((i, leg) => km[leg] / speeds[leg][i]).Sum();

    /// <summary>P(fails on the trip) of a combination.</summary>
    public double Risk(int[] at)
    {
        string key = string.Join(',', at);
        if (known.TryGetValue(key, out double risk))
        {
            return risk;
        }

        vehicles.Used[0][at[0]].CopyTo(total, 0);
        for (int leg = 1; leg < at.Length; leg++)
        {
            Numerics.Vectors.VectorColumns.Add(vehicles.Used[leg][at[leg]], total);
        }

        return known[key] = vehicles.Risk(total);
    }

    /// <summary>The combination with the least risk found, leg by leg.</summary>
    public int[] Least()
    {
        int[] at = new int[speeds.Length];
        for (bool moved = true; moved;)
        {
            moved = false;
            for (int leg = 0; leg < at.Length; leg++)
            {
                int best = Enumerable.Range(0, speeds[leg].Length).MinBy(i => Risk(With(at, leg, i)));
                moved |= Risk(With(at, leg, best)) < Risk(at);
                at = moved ? With(at, leg, best) : at;
            }
        }

        return at;
    }

    /// <summary>The fastest combination found that keeps a target; null where none does.</summary>
    public int[]? Fastest(double target)
    {
        int[] best = [.. speeds.Select(s => s.Length - 1)];
        if (Risk(best) <= target)
        {
            return best;
        }

        best = Least();
        if (Risk(best) > target)
        {
            return null;
        }

        int[] about = best;
        for (int round = 0; round < MostRounds; round++)
        {
            int[]? next = Candidates(about, target).FirstOrDefault(c => Hours(c) < Hours(best) && Risk(c) <= target);
            if (next is null)
            {
                break;
            }

            best = about = next;
        }

        return Exchanged(best, target);
    }

    // Combinations of the sum about one, those that keep the target first by their hours; a little beyond it, for it is a sum alone.
    private IEnumerable<int[]> Candidates(int[] about, double target)
    {
        double here = Risk(about);
        List<(double Hours, double Risk, int[] At)> front = [(0, here, [])];
        for (int leg = 0; leg < about.Length; leg++)
        {
            double[] more = [.. speeds[leg].Select((_, i) => Risk(With(about, leg, i)) - here)];
            front = Front(front.SelectMany(f => speeds[leg].Select((v, i) =>
                (f.Hours + (km[leg] / v), f.Risk + more[i], (int[])[.. f.At, i]))));
        }

        const double Beyond = 1.3;
        const int MostJudged = 60;
        return front.Where(f => f.Risk <= Beyond * target).OrderBy(f => f.Hours).Take(MostJudged).Select(f => f.At)
            .Concat(front.Where(f => f.Risk <= target).OrderBy(f => f.Hours).Take(MostJudged).Select(f => f.At));
    }

    internal static List<(double Hours, double Risk, int[] At)> Front(IEnumerable<(double Hours, double Risk, int[] At)> points)
    {
        List<(double Hours, double Risk, int[] At)> front = [];
        double least = double.PositiveInfinity;
        foreach ((double Hours, double Risk, int[] At) point in points.OrderBy(p => p.Hours).ThenBy(p => p.Risk))
        {
            if (point.Risk < least)
            {
                front.Add(point);
                least = point.Risk;
            }
        }

        int every = (front.Count + MostOfFront - 1) / MostOfFront;
        return every <= 1 ? front : [.. front.Where((_, i) => i % every == 0 || i == front.Count - 1)];
    }

    // One leg faster, or one faster and another slower, while that gains.
    private int[] Exchanged(int[] best, double target)
    {
        for (bool moved = true; moved;)
        {
            moved = false;
            for (int a = 0; a < best.Length; a++)
            {
                for (int b = 0; b < best.Length; b++)
                {
                    foreach (int i in Enumerable.Range(best[a] + 1, speeds[a].Length - best[a] - 1).Reverse())
                    {
                        int[] faster = With(best, a, i);
                        IEnumerable<int[]> tried = a == b ? [faster]
                            : Enumerable.Range(0, best[b]).Reverse().Select(j => With(faster, b, j));
                        if (tried.FirstOrDefault(t => Hours(t) < Hours(best) && Risk(t) <= target) is { } gained)
                        {
                            (best, moved) = (gained, true);
                            break;
                        }
                    }
                }
            }
        }

        return best;
    }

    private static int[] With(int[] at, int leg, int speed) => [.. at.Select((x, l) => l == leg ? speed : x)];
}
