using AxleRisk.Core.Randomness;

namespace AxleRisk.Core.Analyses.RareEvents;

/// <summary>
/// The density importance sampling draws from: round normal densities of spread 1 about the design points, weighted by
/// their first-order probabilities, and two defensive parts about the origin, one nominal and one wide, so that a region
/// of failure no design point stands for shows up as a few large weights (Owen and Zhou 2000, defensive mixtures).
/// </summary>
internal sealed class NormalMixture
{
    private const double NominalShare = 0.05;
    private const double WideShare = 0.05;

    /// <summary>
    /// How far out the wide part reaches, in least distances of failure: half, because beyond that its weights for samples near a
    /// missed design point grow wild.
    /// </summary>
    private const double Reach = 0.5;

    private readonly int dimension;
    private readonly List<Part> parts = [];

    /// <summary>Creates the mixture.</summary>
    /// <param name="centres">The centres with their weights, at least one; further coordinates than <paramref name="dimension"/>
    /// are left out.</param>
    /// <param name="dimension">The number of coordinates.</param>
    public NormalMixture(IReadOnlyList<(double[] Centre, double Weight)> centres, int dimension)
    {
        this.dimension = dimension;
        double total = centres.Sum(c => c.Weight);
        foreach ((double[] centre, double weight) in centres)
        {
            parts.Add(new Part(centre[..dimension], 1, (1 - NominalShare - WideShare) * weight / total));
        }

        FirstOrder = total;

        var origin = new double[dimension];
        double farthest = parts.Max(p => PointVectors.Norm(p.Centre));
        parts.Add(new Part(origin, 1, NominalShare));
        parts.Add(new Part(origin, WideSpread(Reach * farthest, dimension), WideShare));
    }

    /// <summary>The sum of the centres' weights.</summary>
    public double FirstOrder { get; }

    /// <summary>The spread of a normal density about the origin whose samples typically lie beta farther out than nominal ones.</summary>
    public static double WideSpread(double beta, int dimension) => 1 + (Math.Max(0, beta) / Math.Sqrt(Math.Max(1, dimension)));

    /// <summary>
    /// A 95 % upper bound of the failure probability where none of <paramref name="samples"/> failed: the nominal part alone
    /// (rule of three).
    /// </summary>
    public static double BoundWithoutFailure(long samples) => Math.Min(1, 3 / (NominalShare * Math.Max(1, samples)));

    /// <summary>
    /// Draws the samples from <paramref name="first"/> on, by coordinate and row, and their weights: nominal density over this
    /// one.
    /// </summary>
    public void Draw(ulong seed, string stream, long first, int count, double[][] u, Span<double> weight)
    {
        var choice = new double[count];
        new RandomStream(new StreamKey(seed, $"{stream}/part")).FillUnit(first, choice);
        NormalDraws.Fill(seed, stream, first, count, u);
        for (int row = 0; row < count; row++)
        {
            Part part = Choose(choice[row]);
            for (int i = 0; i < dimension; i++)
            {
                u[i][row] = part.Centre[i] + (part.Spread * u[i][row]);
            }
        }

        var log = new double[parts.Count];
        for (int row = 0; row < count; row++)
        {
            for (int k = 0; k < log.Length; k++)
            {
                log[k] = parts[k].LogDensityOverNominal(u, row);
            }

            double greatest = log.Max();
            weight[row] = Math.Exp(-greatest) / log.Sum(l => Math.Exp(l - greatest));
        }
    }

    private Part Choose(double choice)
    {
        int k = 0;
        while (k < parts.Count - 1 && choice >= parts[k].Weight)
        {
            choice -= parts[k++].Weight;
        }

        return parts[k];
    }

    private sealed record Part(double[] Centre, double Spread, double Weight)
    {
        private readonly double logFactor = Math.Log(Weight) - (Centre.Length * Math.Log(Spread));

        public double LogDensityOverNominal(double[][] u, int row)
        {
            double near = 0;
            double nominal = 0;
            for (int i = 0; i < Centre.Length; i++)
            {
                double x = u[i][row];
                near += (x - Centre[i]) * (x - Centre[i]);
                nominal += x * x;
            }

            return logFactor + (0.5 * (nominal - (near / (Spread * Spread))));
        }
    }
}
