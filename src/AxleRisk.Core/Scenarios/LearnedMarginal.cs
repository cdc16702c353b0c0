using System.Collections.Immutable;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using MathNet.Numerics.RootFinding;

namespace AxleRisk.Core.Scenarios;

/// <summary>
/// What is known of one continuous factor by itself after data have taught of it: the stated distribution of a score that is a mixture
/// of normals, one for each combination of the states of unknown choices.
/// </summary>
internal sealed class LearnedMarginal : Distribution
{
    private const double Reach = 12;

    private readonly Distribution stated;
    private readonly ImmutableArray<(double Probability, double Mean, double Deviation)> parts;
    private readonly Lazy<(double Mean, double Deviation)> moments;

    /// <summary>The marginal of a column.</summary>
    /// <param name="stated">Its stated distribution.</param>
    /// <param name="learned">What was learned.</param>
    /// <param name="column">Its place among the columns of that.</param>
    public LearnedMarginal(Distribution stated, Learned learned, int column)
    {
        this.stated = stated;
        parts = [.. learned.States.Select(s => (s.Probability, s.Mean[column], s.Deviation(column)))];
        moments = new(() =>
        {
            // By the middles of equal parts of the probability.
            const int steps = 1000;
            double[] x = [.. Enumerable.Range(0, steps).Select(i => Quantile((i + 0.5) / steps))];
            double mean = x.Average();
            return (mean, Math.Sqrt(x.Average(v => (v - mean) * (v - mean))));
        });
    }

    /// <inheritdoc/>
    public override string Family => stated.Family;

    /// <inheritdoc/>
    public override ImmutableArray<Parameter> Parameters => stated.Parameters;

    /// <inheritdoc/>
    public override double Minimum => stated.Minimum;

    /// <inheritdoc/>
    public override double Maximum => stated.Maximum;

    /// <inheritdoc/>
    public override double Mean => moments.Value.Mean;

    /// <inheritdoc/>
    public override double StandardDeviation => moments.Value.Deviation;

    /// <inheritdoc/>
    public override double Density(double x)
    {
        double z = ScoreOf(x);
        return stated.Density(x) / StandardNormal.Density(z)
            * parts.Sum(p => p.Probability * StandardNormal.Density((z - p.Mean) / p.Deviation) / p.Deviation);
    }

    /// <inheritdoc/>
    public override double Cumulative(double x) =>
        ScoreOf(x) is var z ? parts.Sum(p => p.Probability * StandardNormal.Cumulative((z - p.Mean) / p.Deviation)) : 0;

    /// <inheritdoc/>
    public override double Upper(double x) =>
        ScoreOf(x) is var z ? parts.Sum(p => p.Probability * StandardNormal.Upper((z - p.Mean) / p.Deviation)) : 0;

    /// <inheritdoc/>
    public override double Quantile(double p)
    {
        double z = ScoreAt(p);
        return z < 0 ? stated.Quantile(StandardNormal.Cumulative(z)) : stated.UpperQuantile(StandardNormal.Upper(z));
    }

    /// <summary>The score of the stated distribution below which it lies with a probability.</summary>
    public double ScoreAt(double p) => p <= 0 ? -GreatestScore : p >= 1 ? GreatestScore
        : Brent.FindRoot(
            s => parts.Sum(part => part.Probability * StandardNormal.Cumulative((s - part.Mean) / part.Deviation)) - p,
            parts.Min(part => part.Mean - (Reach * part.Deviation)), parts.Max(part => part.Mean + (Reach * part.Deviation)), 1e-12, 200);

    private double ScoreOf(double x)
    {
        double p = stated.Cumulative(x), q = stated.Upper(x);
        return Math.Clamp(p < q ? StandardNormal.Quantile(p) : -StandardNormal.Quantile(q), -GreatestScore, GreatestScore);
    }
}
