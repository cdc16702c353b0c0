namespace AxleRisk.Core.Analyses.Shares;

/// <summary>
/// The expectation of the product of an output at two rows that share a subset of the factors. Averaged over rows it is the
/// variance that the subset explains, plus the square of the mean, which cancels from every share. Scale players are parts of
/// chance whose sharing is integrated exactly, so that it does not matter here which row brings them.
/// </summary>
internal abstract class JointMoment
{
    /// <summary>The number of its scale players: the last of all players.</summary>
    public abstract int ScalePlayers { get; }

    /// <summary>The moments of one row with each of others, by the subset of scale players that the two share.</summary>
    /// <param name="rows">What all rows gave.</param>
    /// <param name="own">The one row.</param>
    /// <param name="others">The other rows.</param>
    /// <param name="joint">Takes the moments: by subset of scale players, then by other row.</param>
    public abstract void Fill(double[][] rows, int own, Range others, double[][] joint);
}

/// <summary>The output itself, plus independent normal parts.</summary>
/// <param name="centre">A number near the output's mean: taken off, it takes noise off.</param>
/// <param name="variances">The variances of the normal parts.</param>
internal sealed class AdditiveMoment(double centre, params double[] variances) : JointMoment
{
    private readonly double[] shared =
        [.. Enumerable.Range(0, 1 << variances.Length).Select(q => variances.Where((_, i) => (q >> i & 1) == 1).Sum())];

    /// <inheritdoc/>
    public override int ScalePlayers => variances.Length;

    /// <inheritdoc/>
    public override void Fill(double[][] rows, int own, Range others, double[][] joint)
    {
        double ofOwn = rows[0][own];
        ReadOnlySpan<double> ofOthers = rows[0].AsSpan(others);
        for (int q = 0; q < shared.Length; q++)
        {
            double[] to = joint[q];
            for (int row = 0; row < ofOthers.Length; row++)
            {
                to[row] = ((ofOwn - centre) * (ofOthers[row] - centre)) + shared[q];
            }
        }
    }
}

/// <summary>The event 'the output is above a limit', counted.</summary>
/// <param name="limit">The limit.</param>
internal sealed class CountedMoment(double limit) : JointMoment
{
    /// <inheritdoc/>
    public override int ScalePlayers => 0;

    /// <inheritdoc/>
    public override void Fill(double[][] rows, int own, Range others, double[][] joint)
    {
        bool isAbove = rows[0][own] > limit;
        ReadOnlySpan<double> ofOthers = rows[0].AsSpan(others);
        for (int row = 0; row < ofOthers.Length; row++)
        {
            joint[0][row] = isAbove && ofOthers[row] > limit ? 1 : 0;
        }
    }
}
