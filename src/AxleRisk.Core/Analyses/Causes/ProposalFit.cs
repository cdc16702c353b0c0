using AxleRisk.Core.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace AxleRisk.Core.Analyses.Causes;

/// <summary>Moves the sampler to where a pilot's weights lie: weighted mean, covariance and state probabilities.</summary>
internal static class ProposalFit
{
    /// <summary>
    /// Variances are widened by this: a density too narrow gives wild weights in the tails, one too wide only costs rows.
    /// </summary>
    private const double Widening = 1.2;

    /// <summary>
    /// Halvings of the power in search of the size wanted: they end on the side that has it, which a solver would not promise.
    /// </summary>
    private const int Halvings = 40;

    /// <summary>The proposal fitted to a pilot; null where too few rows agree with the evidence at all.</summary>
    /// <remarks>
    /// Where few rows carry all the weight, the weights are first tempered: raised to the greatest power up to 1 at which the
    /// effective size suffices for a covariance. The next pilot then lies nearer and is tempered less.
    /// </remarks>
    public static Proposal? Of(EvidenceModel model, Pilot pilot)
    {
        int dimension = model.Normals.Length;
        double wanted = Math.Min(Math.Max(100, 10 * dimension), pilot.LogWeight.Length / 4);
        double power = PowerFor(pilot, wanted);
        double[] weights = [.. pilot.LogWeight.Select(log => pilot.Weight(log, power))];
        double total = weights.Sum();
        double size = pilot.EffectiveSize(power);
        if (!(size > Math.Min(wanted, dimension + 2) / 2))
        {
            return null;
        }

        double[] mean = [.. pilot.Normals.Select(u => Mean(u, weights, total))];

        // Shrunk toward the prior's unit covariance by as many rows as there are coordinates: never singular.
        var covariance = Matrix<double>.Build.Dense(dimension, dimension, (i, j) =>
            Widening * ((size * Covariance(pilot.Normals[i], mean[i], pilot.Normals[j], mean[j], weights, total))
                + (i == j ? dimension : 0))
                / (size + dimension));
        double[][] states = [.. model.States.Select((s, i) => s.Probabilities.Select((_, k) => Share(pilot.States[i], k, weights, total))
            .ToArray())];
        return CholeskyFactor.Of(covariance) is { } cholesky ? Proposal.Moved(model, mean, cholesky, states) : null;
    }

    private static double PowerFor(Pilot pilot, double wanted)
    {
        if (pilot.EffectiveSize() >= wanted)
        {
            return 1;
        }

        (double low, double high) = (0.0, 1.0);
        for (int i = 0; i < Halvings; i++)
        {
            double middle = 0.5 * (low + high);
            (low, high) = pilot.EffectiveSize(middle) >= wanted ? (middle, high) : (low, middle);
        }

        return low;
    }

    private static double Mean(double[] x, double[] w, double total)
    {
        double sum = 0;
        for (int i = 0; i < x.Length; i++)
        {
            sum += w[i] * x[i];
        }

        return sum / total;
    }

    private static double Covariance(double[] x, double meanX, double[] y, double meanY, double[] w, double total)
    {
        double sum = 0;
        for (int i = 0; i < x.Length; i++)
        {
            sum += w[i] * (x[i] - meanX) * (y[i] - meanY);
        }

        return sum / total;
    }

    private static double Share(double[] states, int state, double[] w, double total)
    {
        double sum = 0;
        for (int i = 0; i < states.Length; i++)
        {
            sum += states[i] == state ? w[i] : 0;
        }

        return sum / total;
    }
}
