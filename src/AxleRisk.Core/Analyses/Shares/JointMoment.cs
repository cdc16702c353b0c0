namespace AxleRisk.Core.Analyses.Shares;

/// <summary>
/// The expectation of the product of an output at two rows that share a subset of the factors. Averaged over rows it is the
/// variance that the subset explains, plus the square of the mean, which cancels from every share. Scale players are normal
/// parts of the output whose sharing is integrated exactly, so that they cost no evaluations.
/// </summary>
internal abstract class JointMoment
{
    /// <summary>The moments of one row with each of others, by the subset of scale players that the two share.</summary>
    /// <param name="own">The one row's output.</param>
    /// <param name="others">The other rows' outputs.</param>
    /// <param name="joint">Takes the moments: by subset of scale players, then by other row.</param>
    public abstract void Fill(double own, ReadOnlySpan<double> others, double[][] joint);
}

/// <summary>The output itself, plus independent normal parts.</summary>
/// <param name="centre">A number near the output's mean: taken off, it takes noise off.</param>
/// <param name="variances">The variances of the normal parts.</param>
internal sealed class AdditiveMoment(double centre, params double[] variances) : JointMoment
{
    private readonly double[] shared =
        [.. Enumerable.Range(0, 1 << variances.Length).Select(q => variances.Where((_, i) => (q >> i & 1) == 1).Sum())];

    /// <inheritdoc/>
    public override void Fill(double own, ReadOnlySpan<double> others, double[][] joint)
    {
        for (int q = 0; q < joint.Length; q++)
        {
            double[] to = joint[q];
            for (int row = 0; row < others.Length; row++)
            {
                to[row] = ((own - centre) * (others[row] - centre)) + shared[q];
            }
        }
    }
}

/// <summary>The event 'the output is above a limit', counted.</summary>
/// <param name="limit">The limit.</param>
internal sealed class CountedMoment(double limit) : JointMoment
{
    /// <inheritdoc/>
    public override void Fill(double own, ReadOnlySpan<double> others, double[][] joint)
    {
        for (int row = 0; row < others.Length; row++)
        {
            joint[0][row] = own > limit && others[row] > limit ? 1 : 0;
        }
    }
}
