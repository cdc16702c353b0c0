namespace AxleRisk.Core.Numerics;

/// <summary>The two tails of a distribution at one point and the slope of the lower one over the solver's variable.</summary>
internal readonly record struct Tails(double Lower, double Upper, double Slope);

/// <summary>The logarithm of one tail as a function of the solver's variable.</summary>
internal interface ILogTail
{
    /// <summary>1 for the lower tail, which rises with u, and -1 for the upper.</summary>
    int Direction { get; }

    /// <summary>The logarithm, its derivative, and its second derivative over its first.</summary>
    (double Log, double Slope, double Bend) At(double u);
}

/// <summary>
/// Solves ln(tail(u)) = target. The tails of the gamma distribution over ln x and of the beta distribution over
/// ln(x / (1 - x)) are log-concave, so Newton's method converges from any start; Halley's correction makes it cubic.
/// </summary>
internal static class LogConcaveTail
{
    private const int Most = 200;

    /// <summary>The u at which the logarithm of the tail is <paramref name="target"/>.</summary>
    public static double Solve<T>(in T tail, double target, double start)
        where T : struct, ILogTail
    {
        double u = start;
        double stride = tail.Direction;
        for (int i = 0; i < Most; i++)
        {
            (double log, double slope, double bend) = tail.At(u);
            if (!double.IsFinite(log) || slope == 0)
            {
                // Either tail has underflowed: walk back to where neither has, however far, in shorter strides where it jumped across.
                if (log < target != (stride * tail.Direction > 0))
                {
                    stride *= i == 0 ? -1 : -0.5;
                }

                u += stride;
                continue;
            }

            double newton = (target - log) / slope;
            double step = Math.Clamp(newton / Math.Clamp(1 + (0.5 * newton * bend), 0.5, 2), -5, 5);
            u += step;

            // Cubic convergence: a step this small leaves an error below rounding.
            if (Math.Abs(step) * (1 + Math.Abs(slope)) < 1e-5)
            {
                break;
            }
        }

        return u;
    }
}
