using System.Numerics;

namespace AxleRisk.Core.Analyses.Shares;

/// <summary>
/// The event 'output plus independent normal parts is above a limit'. With g = (output - limit) / sigma, two rows that share
/// the part rho of the normal variance are both above it with Phi2(g, g'; rho).
/// </summary>
internal sealed class ScatterMoment : JointMoment
{
    private readonly double limit;
    private readonly double sigma;

    /// <summary>By subset of the parts that is shared: the probabilities; of none and of all it is a product and a minimum.</summary>
    private readonly BivariateTable[] tables;

    /// <summary>Creates the moment.</summary>
    /// <param name="limit">The limit of output plus normal parts, the parts with mean 0.</param>
    /// <param name="variances">The variances of the normal parts, each above 0.</param>
    public ScatterMoment(double limit, params double[] variances)
    {
        this.limit = limit;
        double total = variances.Sum();
        sigma = Math.Sqrt(total);
        tables = [.. Enumerable.Range(0, 1 << variances.Length)
            .Select(q => new BivariateTable(variances.Where((_, i) => (q >> i & 1) == 1).Sum() / total))];
    }

    /// <summary>Which of the numbers of a row is the output.</summary>
    public int Output { get; init; }

    /// <inheritdoc/>
    public override int ScalePlayers => BitOperations.Log2((uint)tables.Length);

    /// <inheritdoc/>
    public override void Fill(double[][] rows, int own, Range others, double[][] joint)
    {
        double g = (rows[Output][own] - limit) / sigma, ofG = Cubic.Phi(g);
        ReadOnlySpan<double> ofOthers = rows[Output].AsSpan(others);
        double[] h = new double[ofOthers.Length], ofH = new double[ofOthers.Length];
        for (int row = 0; row < h.Length; row++)
        {
            h[row] = (ofOthers[row] - limit) / sigma;
            ofH[row] = Cubic.Phi(h[row]);
        }

        for (int q = 1; q < tables.Length - 1; q++)
        {
            tables[q].Fill(g, h, joint[q]);
        }

        for (int row = 0; row < h.Length; row++)
        {
            joint[0][row] = ofG * ofH[row];
            joint[tables.Length - 1][row] = Math.Min(ofG, ofH[row]);
        }
    }
}
