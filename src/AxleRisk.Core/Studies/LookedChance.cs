using System.Collections.Immutable;
using System.Runtime.Intrinsics;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Numerics.Vectors;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Studies;

/// <summary>
/// What is left to chance of the fatigue of one vehicle that was looked at for its crack: each survival is that of a vehicle and of
/// what was seen of it, so that ratios are conditional on that. Of a row at a time: a thread's own.
/// </summary>
/// <param name="scale">Miner sum and S-N scatter, lognormal together.</param>
/// <param name="looks">The looks, by rising distance.</param>
internal sealed class LookedChance(LifeScale scale, ImmutableArray<CrackLook> looks) : ModeChance
{
    private readonly LifeNodes nodes = new();
    private readonly double[] used = new double[looks.Length];
    private readonly List<double> cuts = [];
    private CrackDepth depth;

    /// <summary>Takes over a vehicle: what fatigue had used up by each look, and the depth of its crack.</summary>
    public void Take(ReadOnlySpan<double> usedAtLooks, CrackDepth of)
    {
        usedAtLooks.CopyTo(used);
        depth = of;
        cuts.Clear();
    }

    /// <inheritdoc/>
    public override double Hazard(double used) => -Math.Log(Survival(used));

    /// <inheritdoc/>
    public override double Survival(double used) => Between(used, double.PositiveInfinity);

    /// <inheritdoc/>
    public override double Fails(double before, double after) => after > before ? Between(before, after) : 0;

    /// <inheritdoc/>
    public override void FillHazards(ReadOnlySpan<double> used, Span<double> hazard)
    {
        for (int i = 0; i < used.Length; i++)
        {
            hazard[i] = Hazard(used[i]);
        }
    }

    /// <summary>The score of the limit at a share of the probability between two scores.</summary>
    public double Draw(double low, double high, double uniform)
    {
        double all = Fill(low, high), sum = 0;
        if (!(all > 0))
        {
            return double.IsFinite(low) ? low : high;
        }

        // Between the middles of the points' weights the score goes straight.
        (double below, double score) = (0, Math.Max(low, nodes.Scores[0]));
        for (int i = 0; i < nodes.Count; i++)
        {
            double middle = sum + (nodes.Weights[i] / 2);
            if (middle >= uniform * all)
            {
                double part = middle > below ? ((uniform * all) - below) / (middle - below) : 1;
                return Math.Clamp(score + (part * (nodes.Scores[i] - score)), low, high);
            }

            (below, score) = (middle, nodes.Scores[i]);
            sum += nodes.Weights[i];
        }

        return score;
    }

    /// <summary>
    /// Multiplies the weights of points by how likely what was seen is there; the scores are those of the logarithm of the limit.
    /// </summary>
    /// <param name="points">The points.</param>
    /// <param name="mean">The mean of that logarithm.</param>
    /// <param name="sigma">Its standard deviation.</param>
    public void Weigh(LifeNodes points, double mean, double sigma)
    {
        for (int i = 0; i < points.Count; i += Vector512<double>.Count)
        {
            Vector512<double> perLimit = VectorExponential.Of(
                Vector512.Create(-mean) - (sigma * Vector512.LoadUnsafe(in points.Scores[i])));
            Vector512<double> weight = Vector512.LoadUnsafe(in points.Weights[i]);
            for (int look = 0; look < looks.Length; look++)
            {
                Vector512<double> fraction = used[look] * perLimit;
                weight = Vector512.ConditionalSelect(
                    Vector512.LessThanOrEqual(fraction, Vector512<double>.One), weight * looks[look].Likelihood(depth.LnAt(fraction)),
                    Vector512<double>.Zero);
            }

            weight.CopyTo(points.Weights, i);
        }
    }

    /// <summary>How likely what was seen is, given the limit.</summary>
    public static double Likelihood(ReadOnlySpan<double> used, double limit, ImmutableArray<CrackLook> looks, CrackDepth depth)
    {
        double likelihood = 1;
        for (int i = 0; i < looks.Length && likelihood > 0; i++)
        {
            likelihood *= used[i] > limit ? 0 : looks[i].Likelihood(depth.At(used[i] / limit));
        }

        return likelihood;
    }

    /// <summary>Cuts panels where what was seen bends.</summary>
    public void Cut(LifeNodes panels)
    {
        if (cuts.Count == 0)
        {
            FindCuts();
        }

        foreach (double score in cuts)
        {
            panels.Cut(score);
        }
    }

    private void FindCuts()
    {
        const double wide = 3, narrow = 1; // standard deviations of a detection curve and of a measured depth
        Span<double> at = stackalloc double[3]; // how far above the score of what was used up; of looks done alike the same
        for (int i = 0; i < used.Length; i++)
        {
            (double score, DetectionCurve look) = (ScoreOf(used[i]), looks[i].Method.Detection);
            for (int side = -1; side <= 1 && !(i > 0 && look == looks[i - 1].Method.Detection); side++)
            {
                at[1 + side] = AboveScore(look.A50Mm * Math.Exp(side * wide * look.Sigma));
            }

            foreach (double above in at)
            {
                cuts.Add(score + above);
            }

            for (int side = -4; looks[i].DepthMm is { } read && side <= 4; side++)
            {
                cuts.Add(score + AboveScore(read + (side * narrow * looks[i].StandardDeviationMm)));
            }
        }
    }

    // How far above the score of what was used up that of a limit lies at which the crack has a depth; not a number for none.
    private double AboveScore(double mm) =>
        depth.FractionAt(mm) is > 0 and < 1 and var fraction ? -Math.Log(fraction) / scale.Sigma : double.NaN;

    private double Between(double from, double to) => Fill(ScoreOf(from), ScoreOf(to));

    private double ScoreOf(double used) => scale.Standardised(1, used);

    // The weights of the points between two scores are made those of the vehicle and of what was seen; gives their sum.
    private double Fill(double low, double high)
    {
        nodes.Clear();
        Cut(nodes);
        nodes.Fill(Math.Max(low, used.Length > 0 ? ScoreOf(used[^1]) : low), high); // it was whole at the last
        Weigh(nodes, scale.Mu, scale.Sigma);
        double sum = 0;
        for (int i = 0; i < nodes.Count; i++)
        {
            sum += nodes.Weights[i];
        }

        return sum;
    }
}
