namespace AxleRisk.Core.Analyses.RareEvents;

/// <summary>
/// What divides failure from survival in the space of independent standard normals u: failure where
/// c(u) + sigma z &lt;= 0, z one more standard normal that is known to enter in this way. Given u the failure probability
/// is then exactly Phi(-c(u) / sigma). A state without such a part has sigma 0 and fails where c(u) &lt;= 0.
/// </summary>
internal abstract class LimitState
{
    /// <summary>The number of coordinates of u, at least 1.</summary>
    public abstract int Dimension { get; }

    /// <summary>The factor of the normal part z; 0 where there is none.</summary>
    public virtual double Sigma => 0;

    /// <summary>The same failure without a part of its own: z is the last coordinate.</summary>
    public LimitState Joint => Sigma > 0 ? new JointLimitState(this) : this;

    /// <summary>Computes c(u) of the first <paramref name="count"/> rows; may be called from many threads at once.</summary>
    /// <param name="u">The coordinates, by coordinate and row.</param>
    /// <param name="count">The number of rows.</param>
    /// <param name="g">Takes c(u).</param>
    public abstract void Evaluate(double[][] u, int count, Span<double> g);

    private sealed class JointLimitState(LimitState inner) : LimitState
    {
        public override int Dimension => inner.Dimension + 1;

        public override void Evaluate(double[][] u, int count, Span<double> g)
        {
            inner.Evaluate(u[..^1], count, g);
            for (int row = 0; row < count; row++)
            {
                g[row] += inner.Sigma * u[^1][row];
            }
        }
    }
}
