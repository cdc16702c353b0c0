using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Analyses.Ranking.Shares;

/// <summary>
/// The event 'output plus independent normal parts is above a limit'. With g = (output - limit) / sigma, two rows that share
/// the part rho of the normal variance are both above it with Phi2(g, g'; rho).
/// </summary>
internal sealed class ScatterMoment : JointMoment
{
    private readonly double limit;
    private readonly double sigma;
    private readonly double[] sharedPart;

    /// <summary>Creates the moment.</summary>
    /// <param name="limit">The limit of output plus normal parts, the parts with mean 0.</param>
    /// <param name="variances">The variances of the normal parts, at least one above 0.</param>
    public ScatterMoment(double limit, params double[] variances)
    {
        this.limit = limit;
        double total = variances.Sum();
        sigma = Math.Sqrt(total);
        sharedPart = [.. Enumerable.Range(0, 1 << variances.Length).Select(q =>
            q == (1 << variances.Length) - 1 ? 1 : variances.Where((_, i) => (q >> i & 1) == 1).Sum() / total)];
    }

    /// <inheritdoc/>
    public override void Fill(double own, ReadOnlySpan<double> others, double[][] joint)
    {
        double g = (own - limit) / sigma;
        var standardised = new double[others.Length];
        double least = g, most = g;
        for (int row = 0; row < others.Length; row++)
        {
            standardised[row] = (others[row] - limit) / sigma;
            least = Math.Min(least, standardised[row]);
            most = Math.Max(most, standardised[row]);
        }

        for (int q = 0; q < joint.Length; q++)
        {
            if (BivariateTable.NodesOf(least, most) < others.Length)
            {
                var table = new BivariateTable(g, sharedPart[q], least, most);
                for (int row = 0; row < others.Length; row++)
                {
                    joint[q][row] = table.At(standardised[row]);
                }
            }
            else
            {
                for (int row = 0; row < others.Length; row++)
                {
                    joint[q][row] = BivariateNormal.Cumulative(g, standardised[row], sharedPart[q]);
                }
            }
        }
    }
}
