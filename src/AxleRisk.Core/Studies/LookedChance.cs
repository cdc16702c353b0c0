using System.Collections.Immutable;
using AxleRisk.Core.Modes;
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
    private CrackDepth depth;

    /// <summary>Takes over a vehicle: what fatigue had used up by each look, and the depth of its crack.</summary>
    public void Take(ReadOnlySpan<double> usedAtLooks, CrackDepth of)
    {
        usedAtLooks.CopyTo(used);
        depth = of;
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

    /// <summary>How likely what was seen is, given ln of the limit.</summary>
    public double Likelihood(double lnLimit) => Likelihood(used, Math.Exp(lnLimit), looks, depth);

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
        const double wide = 3, narrow = 1; // standard deviations of a detection curve and of a measured depth
        for (int i = 0; i < used.Length; i++)
        {
            (double score, DetectionCurve look) = (ScoreOf(used[i]), looks[i].Method.Detection);
            for (int side = -1; side <= 1; side++)
            {
                CutAt(panels, score, look.A50Mm * Math.Exp(side * wide * look.Sigma));
            }

            for (int side = -4; looks[i].DepthMm is { } read && side <= 4; side++)
            {
                CutAt(panels, score, read + (side * narrow * looks[i].StandardDeviationMm));
            }
        }
    }

    private double Between(double from, double to) => Fill(ScoreOf(from), ScoreOf(to));

    private double ScoreOf(double used) => scale.Standardised(1, used);

    // The weights of the points between two scores are made those of the vehicle and of what was seen; gives their sum.
    private double Fill(double low, double high)
    {
        nodes.Clear();
        Cut(nodes);
        nodes.Fill(Math.Max(low, used.Length > 0 ? ScoreOf(used[^1]) : low), high); // it was whole at the last
        double sum = 0;
        for (int i = 0; i < nodes.Count; i++)
        {
            sum += nodes.Weights[i] *= Likelihood(scale.Mu + (scale.Sigma * nodes.Scores[i]));
        }

        return sum;
    }

    private void CutAt(LifeNodes panels, double score, double mm)
    {
        double fraction = depth.FractionAt(mm);
        if (fraction is > 0 and < 1)
        {
            panels.Cut(score - (Math.Log(fraction) / scale.Sigma));
        }
    }
}
