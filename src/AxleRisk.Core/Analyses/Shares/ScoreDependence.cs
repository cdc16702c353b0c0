using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;

namespace AxleRisk.Core.Analyses.Shares;

/// <summary>
/// Players whose normal scores are correlated. Given the scores of some, a copy of the rest that is independent otherwise is
/// the rest of another sample, moved by the regression on what the two samples' given scores differ by (Matheron's rule;
/// Journel and Huijbregts 1978, Mining Geostatistics, VII.A.1). Without correlation nothing moves.
/// </summary>
internal sealed class ScoreDependence
{
    /// <summary>Regressions kept: one a subset of members, of which random orders may meet very many.</summary>
    private const int MostKept = 4096;

    private readonly Matrix<double> pearson;

    /// <summary>Creates the dependence.</summary>
    /// <param name="members">The players' numbers.</param>
    /// <param name="pearson">The correlations of their scores, positive definite.</param>
    public ScoreDependence(ImmutableArray<int> members, double[,] pearson)
    {
        Members = members;
        this.pearson = Matrix<double>.Build.DenseOfArray(pearson);
    }

    /// <summary>The players' numbers.</summary>
    public ImmutableArray<int> Members { get; }

    /// <summary>Whether a subset of players and the rest depend on one another.</summary>
    public bool Splits(UInt128 subset)
    {
        for (int i = 0; i < Members.Length; i++)
        {
            for (int j = 0; j < i; j++)
            {
                if (Has(subset, Members[i]) != Has(subset, Members[j]) && pearson[i, j] != 0)
                {
                    return true;
                }
            }
        }

        return false;
    }

    /// <summary>
    /// Fills the members' scores of one row: those of a subset from one sample, the rest conditional on them by way of another.
    /// </summary>
    /// <param name="subset">The players kept.</param>
    /// <param name="kept">The members' scores in the sample that the subset is kept from.</param>
    /// <param name="other">Their scores in the other, independent sample.</param>
    /// <param name="scores">Takes the scores.</param>
    /// <param name="regressions">One thread's store of regressions.</param>
    public void Fill(UInt128 subset, ReadOnlySpan<double> kept, ReadOnlySpan<double> other, Span<double> scores,
        Dictionary<UInt128, double[,]> regressions)
    {
        double[,]? regression = Splits(subset) ? Regression(subset, regressions) : null;
        for (int i = 0; i < Members.Length; i++)
        {
            bool isKept = Has(subset, Members[i]);
            scores[i] = isKept ? kept[i] : other[i];
            for (int j = 0; !isKept && regression is not null && j < Members.Length; j++)
            {
                scores[i] += regression[i, j] * (kept[j] - other[j]);
            }
        }
    }

    private static bool Has(UInt128 subset, int player) => (subset >> player & 1) == 1;

    /// <summary>R(rest, given) R(given, given)^-1, spread over all members; zero elsewhere.</summary>
    private double[,] Regression(UInt128 subset, Dictionary<UInt128, double[,]> regressions)
    {
        int[] given = [.. Enumerable.Range(0, Members.Length).Where(i => Has(subset, Members[i]))];
        int[] rest = [.. Enumerable.Range(0, Members.Length).Except(given)];
        UInt128 key = given.Aggregate(UInt128.Zero, (k, i) => k | (UInt128.One << i));
        if (regressions.TryGetValue(key, out double[,]? known))
        {
            return known;
        }

        var result = new double[Members.Length, Members.Length];
        Matrix<double> among = Matrix<double>.Build.Dense(given.Length, given.Length, (a, b) => pearson[given[a], given[b]]);
        Matrix<double> with = Matrix<double>.Build.Dense(given.Length, rest.Length, (a, b) => pearson[given[a], rest[b]]);
        Matrix<double> solved = among.Cholesky().Solve(with);
        for (int a = 0; a < given.Length; a++)
        {
            for (int b = 0; b < rest.Length; b++)
            {
                result[rest[b], given[a]] = solved[a, b];
            }
        }

        if (regressions.Count >= MostKept)
        {
            regressions.Clear();
        }

        return regressions[key] = result;
    }
}
