using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Learning;

/// <summary>What a sample of the posterior says of each unknown thing, and of pairs of them.</summary>
internal sealed class LearnSummary
{
    /// <summary>Correlations below are not told of.</summary>
    private const double Strong = 0.6;

    private const int MostPairs = 6;
    private const double Ln2 = 0.693147180559945309;

    private readonly Unknowns unknowns;
    private readonly PosteriorSample sample;
    private readonly CauseItem[] items;
    private readonly double[][] values;
    private readonly double[][] scores;

    private readonly (PosteriorSample Sample, double[][] Values)? before;

    /// <summary>The summary of a sample of the posterior.</summary>
    /// <param name="model">The scenario made ready.</param>
    /// <param name="unknowns">What is unknown.</param>
    /// <param name="sample">The sample.</param>
    /// <param name="prior">That of the prior: of a scenario that has learned before its distributions alone do not tell it.</param>
    public LearnSummary(LifeModel model, Unknowns unknowns, PosteriorSample sample, PosteriorSample prior)
    {
        (this.unknowns, this.sample) = (unknowns, sample);
        items = [.. CauseItem.Of(model).Where(i => unknowns.IsUnknown[i.Column])];
        double[][] all = ValuesOf(model, unknowns, sample);
        values = [.. items.Select(i => all[i.Column])];
        if (model.Factors.Learned is not null)
        {
            double[][] ofPrior = ValuesOf(model, unknowns, prior);
            before = (prior, [.. items.Select(i => ofPrior[i.Column])]);
        }

        scores = [.. items.Select((item, i) => item.Choice is null ? ScoresOf(item, values[i]) : values[i])];
    }

    /// <summary>The factors, that of which the data say most first.</summary>
    public ImmutableArray<LearnedFactor> Factors() =>
        [.. items.Select((item, i) => item.Choice is { } choice ? OfChoice(item, i, choice)
            : OfContinuous(item, i)).OrderByDescending(f => f.Bits)];

    /// <summary>What could not be told apart, the closest first.</summary>
    public ImmutableArray<Entanglement> Entangled()
    {
        List<Entanglement> found = [];
        for (int i = 0; i < items.Length; i++)
        {
            for (int j = 0; j < items.Length; j++)
            {
                // The shares of one mix make room for each other anyhow.
                if (i == j || items[i].Factor == items[j].Factor || items[j].Choice is not null)
                {
                    continue;
                }

                if (items[i].Choice is { } choice)
                {
                    found.Add(OfChoice(i, j, choice));
                }
                else if (i < j)
                {
                    found.Add(new Entanglement(items[i].Name, items[j].Name, Correlation(scores[i], scores[j]), false, []));
                }
            }
        }

        return [.. found.Where(e => Math.Abs(e.Strength) >= Strong).OrderByDescending(e => Math.Abs(e.Strength)).Take(MostPairs)];
    }

    private static double[][] ValuesOf(LifeModel model, Unknowns unknowns, PosteriorSample sample)
    {
        int rows = sample.LogWeight.Length;
        double[][] all = model.CreateColumns(rows);
        double[][] scores = model.CreateColumns(StudySettings.BlockSize), values = model.CreateColumns(StudySettings.BlockSize);
        for (int first = 0; first < rows;)
        {
            int count = 1;
            while (first + count < rows && count < StudySettings.BlockSize
                && sample.Combination[first + count] == sample.Combination[first])
            {
                count++;
            }

            unknowns.Map(sample.Combination[first], sample.Z, first, count, scores, values);
            for (int column = 0; column < all.Length; column++)
            {
                values[column].AsSpan(0, count).CopyTo(all[column].AsSpan(first));
            }

            first += count;
        }

        return all;
    }

    private static double[] ScoresOf(CauseItem item, double[] values) =>
    [
        .. values.Select(v =>
        {
            double p = item.Distribution.Cumulative(v), q = item.Distribution.Upper(v);
            return Math.Clamp(p < q ? StandardNormal.Quantile(p)
                : -StandardNormal.Quantile(q), -Distribution.GreatestScore, Distribution.GreatestScore);
        }),
    ];

    private LearnedFactor OfContinuous(CauseItem item, int i)
    {
        Distribution stated = item.Distribution;
        (double m, double s) = Moment(sample, scores[i]);
        (double m0, double s0) = before is { } b ? Moment(b.Sample, ScoresOf(item, b.Values[i])) : (0, 1);
        return new LearnedFactor
        {
            Name = item.Name,
            Factor = item.Factor,
            Prior = before is { } known ? MomentsOf(known.Sample, known.Values[i])
                : new Moments(stated.Mean, stated.StandardDeviation, stated.Quantile(0.05), stated.Median, stated.Quantile(0.95)),
            Posterior = MomentsOf(sample, values[i]),
            States = [],
            Bits = Math.Max(0, 0.5 * ((((s * s) + ((m - m0) * (m - m0))) / (s0 * s0)) - 1 - (2 * Math.Log(s / s0))) / Ln2),
        };
    }

    private LearnedFactor OfChoice(CauseItem item, int i, NumberChoice choice)
    {
        double[] after = [.. choice.Values.Select(v => sample.Mean(row => values[i][row] == v ? 1 : 0))];
        double[] first = before is { } b ? [.. choice.Values.Select(v => b.Sample.Mean(row => b.Values[i][row] == v ? 1 : 0))]
            : [.. choice.Weights];
        return new LearnedFactor
        {
            Name = item.Name,
            Factor = item.Factor,
            Prior = null,
            Posterior = null,
            States = [.. choice.Values.Select((v, k) => (item.Factor.Show(v), first[k], after[k]))],
            Bits = after.Select((p, k) => p > 0 ? p * Math.Log2(p / first[k]) : 0).Sum(),
        };
    }

    private Entanglement OfChoice(int i, int j, NumberChoice choice)
    {
        (double mean, double deviation) = Moment(scores[j]);
        double between = 0;
        List<(string State, double Probability, double Mean)> states = [];
        foreach (double value in choice.Values)
        {
            double p = sample.Mean(row => values[i][row] == value ? 1 : 0);
            if (p > 0)
            {
                double ofState = sample.Mean(row => values[i][row] == value ? scores[j][row] : 0) / p;
                between += p * (ofState - mean) * (ofState - mean);
                states.Add((items[i].Factor.Show(value), p, sample.Mean(row => values[i][row] == value ? values[j][row] : 0) / p));
            }
        }

        return new Entanglement(items[i].Name, items[j].Name, between / (deviation * deviation), true, [.. states]);
    }

    private double Correlation(double[] x, double[] y)
    {
        (double mx, double sx) = Moment(x);
        (double my, double sy) = Moment(y);
        return sample.Mean(row => (x[row] - mx) * (y[row] - my)) / (sx * sy);
    }

    private (double Mean, double Deviation) Moment(double[] x) => Moment(sample, x);

    private static (double Mean, double Deviation) Moment(PosteriorSample of, double[] x)
    {
        double mean = of.Mean(row => x[row]);
        return (mean, Math.Sqrt(Math.Max(1e-300, of.Mean(row => (x[row] - mean) * (x[row] - mean)))));
    }

    private static Moments MomentsOf(PosteriorSample of, double[] x)
    {
        double[] points = of.Quantiles(x, 0.05, 0.5, 0.95);
        (double mean, double deviation) = Moment(of, x);
        return new Moments(mean, deviation, points[0], points[1], points[2]);
    }
}
