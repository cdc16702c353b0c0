using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Analyses.Measurements;

/// <summary>
/// What it is worth to know one factor, perfectly or by a measurement, from the expected cost of each option given its value: the least
/// expected cost less the expected least cost (Raiffa and Schlaifer, Applied Statistical Decision Theory, 1961). The costs are known at
/// nodes of the factor's normal score; between them they are smooth, and are followed by cubics.
/// </summary>
internal sealed class InformationValue
{
    /// <summary>Nodes: the scores -4.8, -4.4 to 4.8.</summary>
    public const int Nodes = 25;

    private const double Reach = 4.8, Step = 0.4;

    // Points of an interval between nodes, and the errors of measurement that are averaged.
    private const int Parts = 10, Errors = 21, EveryOfSource = 3;

    private static readonly double[] Fine =
        [.. Enumerable.Range(0, ((Nodes - 1) * Parts) + 1).Select(i => -Reach + (i * Step / Parts))];

    private static readonly double[] FineWeights = Weights.Normalised([.. Fine.Select(StandardNormal.Density)]);

    private readonly double[][]? posteriors;
    private readonly double[]? sources;

    private InformationValue(double[][]? posteriors, double[]? sources) => (this.posteriors, this.sources) = (posteriors, sources);

    /// <summary>Perfect knowledge of the factor.</summary>
    public static InformationValue Perfect { get; } = new(null, null);

    /// <summary>The score of a node.</summary>
    public static double Score(int node) => -Reach + (node * Step);

    /// <summary>A measurement: its mean is the factor's value and a normal error.</summary>
    /// <param name="valueOf">The factor's value at a score.</param>
    /// <param name="deviation">The standard deviation of the error, above 0.</param>
    public static InformationValue Measured(Func<double, double> valueOf, double deviation)
    {
        double[] values = [.. Fine.Select(valueOf)];
        double[] source = Weights.Normalised([.. Fine.Where((_, i) => i % EveryOfSource == 0).Select(StandardNormal.Density)]);
        double[] errors = [.. Enumerable.Range(0, Errors).Select(e => Step * (e - (Errors / 2)))];
        double[] likely = Weights.Normalised([.. errors.Select(StandardNormal.Density)]);
        List<double[]> posteriors = [];
        List<double> weights = [];
        for (int i = 0; i < source.Length; i++)
        {
            for (int e = 0; e < Errors; e++)
            {
                double read = values[i * EveryOfSource] + (deviation * errors[e]);
                double[] logs =
                    [.. values.Select((v, m) => Math.Log(FineWeights[m]) - (0.5 * (read - v) * (read - v) / (deviation * deviation)))];
                double most = logs.Max();
                posteriors.Add(Weights.Normalised([.. logs.Select(l => Math.Exp(l - most))]));
                weights.Add(source[i] * likely[e]);
            }
        }

        return new InformationValue([.. posteriors], [.. weights]);
    }

    /// <summary>What it is worth.</summary>
    /// <param name="costs">The expected cost of each option at each node.</param>
    public double Of(double[][] costs)
    {
        double[][] fine = [.. costs.Select(Followed)];
        double[] means = [.. fine.Select(c => Weights.Sum(FineWeights, c))];
        if (posteriors is null)
        {
            double least = 0;
            for (int m = 0; m < Fine.Length; m++)
            {
                least += FineWeights[m] * fine.Min(c => c[m]);
            }

            return Math.Max(0, means.Min() - least);
        }

        // The means of the posteriors' costs are the costs' means but for the sums' errors: both sides are taken of the same sums.
        double[][] given = [.. fine.Select(c => posteriors.Select(p => Weights.Sum(p, c)).ToArray())];
        double[] before = [.. given.Select(g => Weights.Sum(sources!, g))];
        double after = 0;
        for (int x = 0; x < posteriors.Length; x++)
        {
            after += sources![x] * given.Min(g => g[x]);
        }

        return Math.Max(0, before.Min() - after);
    }

    /// <summary>The variance of a figure's expectation given what will be known.</summary>
    /// <param name="figure">The figure at each node.</param>
    public double Variance(double[] figure)
    {
        double[] fine = Followed(figure);
        double[] given = posteriors is null ? fine : [.. posteriors.Select(p => Weights.Sum(p, fine))];
        double[] weights = posteriors is null ? FineWeights : sources!;
        double mean = Weights.Sum(weights, given);
        return Weights.Sum(weights, [.. given.Select(g => (g - mean) * (g - mean))]);
    }

    // Cubics through four nodes, of three at the ends.
    private static double[] Followed(double[] nodes) => [.. Enumerable.Range(0, Fine.Length).Select(i =>
    {
        (int at, int part) = Math.DivRem(i, Parts);
        if (part == 0)
        {
            return nodes[at];
        }

        int first = Math.Clamp(at - 1, 0, Nodes - 4);
        double x = at - first + (part / (double)Parts), sum = 0;
        for (int a = 0; a < 4; a++)
        {
            double weight = 1;
            for (int b = 0; b < 4; b++)
            {
                weight *= a == b ? 1 : (x - b) / (a - b);
            }

            sum += weight * nodes[first + a];
        }

        return sum;
    })];
}
