using AxleRisk.Core.Distributions;

namespace AxleRisk.Core.Analyses.RareEvents;

/// <summary>
/// The search for a design point by the improved HL-RF method (Zhang and Der Kiureghian 1995, Two improved algorithms for
/// reliability analysis): the step of Hasofer, Lind, Rackwitz and Fiessler, shortened until the merit
/// |u|^2 / 2 + c |g| falls enough. Gradients are central differences.
/// </summary>
internal static class DesignPointSearch
{
    /// <summary>The greatest beta looked for, a probability of 6e-300: beyond it the tail of a normal score is no full double.</summary>
    public const double GreatestRadius = Distribution.GreatestScore;

    private const int MostIterations = 40;

    // For central differences: the kernel's single precision moves ln life by some 1e-6, so a shorter step would measure that.
    private const double Step = 1e-2;
    private const double Tolerance = 1e-4;

    /// <summary>Where a kink keeps the search from converging, a point this near, over beta, is good enough to sample about.</summary>
    private const double LooseTolerance = 0.05;

    /// <summary>A search that comes this near a known point is on its way there.</summary>
    private const double KnownDistance = 0.3;

    // The usual constants of Armijo's rule: accept a tenth of the promised gain, halve the step.
    private const double Armijo = 0.1;
    private static readonly double[] ShorterSteps = [0.5, 0.25, 0.125, 0.0625, 0.03125, 0.015625];

    /// <summary>Searches from a point; the design point is null where the search does not converge.</summary>
    /// <param name="state">The limit state, without a normal part of its own (<see cref="LimitState.Joint"/>).</param>
    /// <param name="start">Where to start.</param>
    /// <param name="known">Points already found: the search ends without result where it nears one.</param>
    public static (DesignPoint? Point, int Evaluations) From(LimitState state, double[] start, IReadOnlyList<DesignPoint>? known = null)
    {
        double[] u = start;
        double g = Values(state, [u])[0];
        int evaluations = 1;
        DesignPoint? near = null;
        for (int iteration = 0; iteration < MostIterations; iteration++)
        {
            if (known?.Any(p => !p.IsApproximate && PointVectors.Distance(p.U, u) < KnownDistance) == true)
            {
                return (null, evaluations);
            }

            double[] gradient = Gradient(state, u);
            evaluations += 2 * u.Length;
            double slope = PointVectors.Norm(gradient);
            if (!(slope > 0) || !double.IsFinite(slope))
            {
                break;
            }

            double[] alpha = PointVectors.Scaled(gradient, -1 / slope);
            double beta = PointVectors.Dot(alpha, u) + (g / slope);
            double[] target = PointVectors.Scaled(alpha, Math.Clamp(beta, -GreatestRadius, GreatestRadius));
            double away = PointVectors.Distance(target, u) / Math.Max(1, Math.Abs(beta));

            // The point taken is one step of the plain method further: its error is of the order of the distance squared.
            near = away <= LooseTolerance && Math.Abs(beta) < GreatestRadius ? new DesignPoint(target, beta, alpha) : null;
            if (away <= Tolerance)
            {
                break;
            }

            double[] direction = PointVectors.Moved(target, -1, u);
            var merit = Merit.At(u, g, slope, target, PointVectors.Dot(gradient, direction), PointVectors.Dot(u, direction));
            double[][] trials = [target];
            double[] values = Values(state, trials);
            evaluations++;
            int accepted = merit.Accepts(target, values[0], 1) ? 0 : -1;
            if (accepted < 0)
            {
                trials = [.. ShorterSteps.Select(step => PointVectors.Moved(u, step, direction))];
                values = Values(state, trials);
                evaluations += trials.Length;
                accepted = Array.FindIndex([.. ShorterSteps.Select((step, i) => merit.Accepts(trials[i], values[i], step))], ok => ok);
            }

            if (accepted < 0)
            {
                break;
            }

            (u, g) = (trials[accepted], values[accepted]);
        }

        return (near, evaluations);
    }

    private static double[] Values(LimitState state, double[][] points)
    {
        var g = new double[points.Length];
        state.Evaluate(PointVectors.Columns(points, state.Dimension), points.Length, g);
        return g;
    }

    private static double[] Gradient(LimitState state, double[] u)
    {
        var points = new double[2 * u.Length][];
        for (int i = 0; i < u.Length; i++)
        {
            points[2 * i] = [.. u];
            points[(2 * i) + 1] = [.. u];
            points[2 * i][i] -= Step;
            points[(2 * i) + 1][i] += Step;
        }

        double[] g = Values(state, points);
        var gradient = new double[u.Length];
        for (int i = 0; i < u.Length; i++)
        {
            gradient[i] = (g[(2 * i) + 1] - g[2 * i]) / (2 * Step);
        }

        return gradient;
    }

    /// <summary>The merit at the start of a step and its slope along it.</summary>
    private readonly record struct Merit(double Penalty, double Value, double Slope)
    {
        public static Merit At(double[] u, double g, double slope, double[] target, double gradientAlong, double uAlong)
        {
            // The penalty that makes the step a descent: above |u| / |gradient|, and large enough that the surface is worth reaching.
            double norm = PointVectors.Norm(u);
            double toSurface = Math.Abs(g) > Tolerance * slope ? PointVectors.Dot(target, target) / (2 * Math.Abs(g)) : 0;
            double penalty = 2 * Math.Max(norm / slope, toSurface);
            return new Merit(penalty, Of(norm, g, penalty), uAlong + (penalty * Math.Sign(g) * gradientAlong));
        }

        public bool Accepts(double[] u, double g, double step) =>
            Of(PointVectors.Norm(u), g, Penalty) <= Value + (Armijo * step * Math.Min(0, Slope));

        private static double Of(double norm, double g, double penalty) => (0.5 * norm * norm) + (penalty * Math.Abs(g));
    }
}
