using AxleRisk.Core.Analyses.RareEvents;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Tests.Analyses.RareEvents;

/// <summary>Limit states with known failure probabilities, and the estimators run on one of them.</summary>
internal static class TestLimits
{
    public static LimitState Of(int dimension, Func<double[], double> g, double sigma = 0) => new Formula(dimension, g, sigma);

    /// <summary>g = beta sqrt(d) - sum u: P = Phi(-beta) in any dimension.</summary>
    public static LimitState Linear(double beta, int dimension) => Of(dimension, u => (beta * Math.Sqrt(dimension)) - u.Sum());

    /// <summary>The same with the last of the coordinates as the normal part.</summary>
    public static LimitState SmoothLinear(double beta, int dimension) =>
        Of(dimension - 1, u => beta - (u.Sum() / Math.Sqrt(dimension)), 1 / Math.Sqrt(dimension));

    /// <summary>g = beta + sum k u_i^2 / 2 - u_n, <paramref name="curved"/> coordinates of curvature k.</summary>
    public static LimitState Parabola(double beta, double k, int curved) =>
        Of(curved + 1, u => beta + (0.5 * k * u[..^1].Sum(x => x * x)) - u[^1]);

    /// <summary>The four-branch series system.</summary>
    public static LimitState FourBranches(double k) => Of(2, u =>
    {
        double sum = (u[0] + u[1]) / Math.Sqrt(2);
        double difference = u[0] - u[1];
        double curved = 3 + (0.1 * difference * difference);
        return Math.Min(
            Math.Min(curved - sum, curved + sum), Math.Min(difference, -difference) + (k / Math.Sqrt(2)));
    });

    /// <summary>R - S, lognormal with means 300 and 150 and coefficients of variation 0.1 and 0.2.</summary>
    public static LimitState LognormalDifference()
    {
        var strength = Lognormal.FromMeanAndCov(300, 0.1);
        var load = Lognormal.FromMeanAndCov(150, 0.2);
        return Of(2, u =>
            (strength.Median * Math.Exp(strength.StandardDeviationOfLn * u[0]))
                - (load.Median * Math.Exp(load.StandardDeviationOfLn * u[1])));
    }

    /// <summary>Fy Z - 1140 with Fy normal (38, 3.8) and Z normal (54, 2.7).</summary>
    public static LimitState SteelBeam() => Of(2, u => ((38 + (3.8 * u[0])) * (54 + (2.7 * u[1]))) - 1140);

    public static (StratifiedImportance Sampling, Stratum Stratum) Importance(LimitState state, double targetCov, long most = 20_000,
        ulong seed = 1, int threads = 2)
    {
        var stratum = new Stratum(1, state, seed, "test");
        var sampling = new StratifiedImportance([stratum], new RareEventSettings(seed) { TargetCov = targetCov, MaxEvaluations = most });
        sampling.Run(new RunOptions { Threads = threads });
        return (sampling, stratum);
    }

    private sealed class Formula(int dimension, Func<double[], double> g, double sigma) : LimitState
    {
        public override int Dimension => dimension;

        public override double Sigma => sigma;

        public override void Evaluate(double[][] u, int count, Span<double> result)
        {
            for (int row = 0; row < count; row++)
            {
                result[row] = g(PointVectors.Row(u, row));
            }
        }
    }
}
