using System.Collections.Immutable;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Randomness;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Studies;
using MathNet.Numerics.LinearAlgebra;

namespace AxleRisk.Core.Analyses.Fits;

/// <summary>Fits every continuous family of the scenario format to measured values, some of which may be censored.</summary>
public static class FitAnalysis
{
    /// <summary>Fewer values make no fit.</summary>
    public const int LeastValues = 3;

    private const double Tolerance = 1e-11;

    /// <summary>Accuracy of a fit to a sample of a bootstrap: far below what chance does to it.</summary>
    private const double RoughTolerance = 1e-7;

    /// <summary>
    /// Values of a bootstrap sample at most: beyond some hundred the distribution of the statistic no longer depends on their
    /// number (Stephens 1974).
    /// </summary>
    private const int LargestSample = 500;

    /// <summary>
    /// What a fitted end must gain to stand first, in AIC. An end laid on the outermost value makes the likelihood look better
    /// than it is, and says that nothing beyond can happen.
    /// </summary>
    private const double CostOfEnds = 10;

    private const int MostReplicates = 999, LeastReplicates = 199;
    private const int ValuesOfReplicates = 100_000;

    /// <summary>Fits the families.</summary>
    /// <param name="observations">What was measured.</param>
    /// <param name="seed">The seed of the bootstrap.</param>
    /// <param name="options">Threads and cancellation.</param>
    /// <exception cref="StudyException">There are too few values to fit anything, or all are the same.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static FitResult Run(IEnumerable<Observation> observations, ulong seed, RunOptions options) =>
        Run(observations, seed, options, MostReplicates);

    /// <summary>The same with another greatest number of samples for a p-value.</summary>
    internal static FitResult Run(IEnumerable<Observation> observations, ulong seed, RunOptions options, int mostReplicates)
    {
        var data = new FitData(observations);
        Refuse(data);
        int size = (int)Math.Min(LargestSample, data.Count);
        int replicates = Math.Min(mostReplicates, Math.Max(ValuesOfReplicates / size, LeastReplicates));
        List<(FamilyFit Fit, FitFamily Family, FitForm Form, double[] Free)> found = [];
        foreach (FitFamily family in FitFamilies.All)
        {
            options.Cancellation.ThrowIfCancellationRequested();
            if (family.FormFor(data) is { } form && MaximumLikelihood.Find(form, data, null, Tolerance, !family.HasEnds) is { } free)
            {
                found.Add((FitOf(family, form, free, data), family, form, free));
            }
        }

        var ordered = found.OrderBy(f => double.IsNaN(f.Fit.CorrectedAic))
            .ThenBy(f => f.Fit.CorrectedAic + (f.Family.HasEnds ? CostOfEnds : 0)).ThenByDescending(f => f.Fit.LogLikelihood)
            .Select(f => f with
            {
                Fit = Tested(f.Fit, f.Family, f.Free, data, size, f.Family.HasEnds ? Math.Min(replicates, LeastReplicates)
                    : replicates, seed, options),
            }).ToList();
        int best = ordered.FindIndex(f => !f.Family.HasEnds);
        return new FitResult
        {
            Observations = data.Observations,
            Count = data.Count,
            IsExact = data.IsExact,
            Fits = [.. ordered.Select(f => f.Fit)],
            Predictive = best < 0 ? null
                : Predictor.Of(ordered[best].Fit, ordered[best].Family, ordered[best].Form, ordered[best].Free, data, seed, options),
            ReplicateSize = size,
            Seed = seed,
        };
    }

    /// <summary>One family fitted; null where the data do not allow it, or determine no parameters.</summary>
    internal static FamilyFit? Of(string family, FitData data)
    {
        FitFamily one = FitFamilies.Of(family);
        return one.FormFor(data) is { } form && MaximumLikelihood.Find(form, data, null, Tolerance, !one.HasEnds) is { } free
            ? FitOf(one, form, free, data) : null;
    }

    /// <summary>A sample of a fit, and the same family fitted to it.</summary>
    internal static (double[] Sorted, FitForm? Form, double[]? Free) Replicate(
        FamilyFit fit, FitFamily family, int size, ulong seed, string purpose, long number)
    {
        var values = new double[size];
        SamplingPlan.FromName(SamplingPlan.Names[0], size)
            .Fill(new StreamKey(seed, $"fit/{family.Name}/{purpose}/{number}"), 0, 0, values);
        fit.Distribution.Quantiles(values, values);
        Array.Sort(values);
        var data = new FitData(values.Select(v => Observation.At(v)));
        FitForm? form = family.FormFor(data);
        return (values, form, form is null ? null : MaximumLikelihood.Find(form, data, null, RoughTolerance, isSmooth: false));
    }

    private static void Refuse(FitData data)
    {
        if (data.Count < LeastValues)
        {
            throw new StudyException($"there are {data.Count:0} values; a fit needs {LeastValues} at least, and some 10 to mean much");
        }

        if (!(data.Greatest > data.Least))
        {
            throw new StudyException("all values are the same: there is no spread to fit");
        }
    }

    private static FamilyFit FitOf(FitFamily family, FitForm form, double[] free, FitData data)
    {
        double[] natural = form.Natural(free);
        Distribution distribution = form.Make(natural);
        double log = MaximumLikelihood.Log(distribution, data.Observations);
        int k = natural.Length;
        double left = data.Count - k - 1;
        double aic = left > 0 ? (2 * k) - (2 * log) + (2 * k * (k + 1) / left) : double.NaN;
        return new FamilyFit(
            distribution, [.. family.Parameters.Zip(natural, (name, value) => new Parameter(name, value))],
            family.HasEnds ? [.. natural.Select(_ => double.NaN)] : ErrorsOf(form, free, data), log, aic, double.NaN, double.NaN);
    }

    /// <summary>The standard errors: the inverse of the observed information, carried over by the first derivatives.</summary>
    private static ImmutableArray<double> ErrorsOf(FitForm form, double[] free, FitData data)
    {
        Matrix<double> covariance = CovarianceOf(form, free, data);
        return
        [
            .. form.Natural(free).Select((_, i) =>
            {
                Vector<double> slope = Vector<double>.Build.Dense(free.Length, j =>
                {
                    const double h = 1e-6;
                    double[] up = [.. free], down = [.. free];
                    (up[j], down[j]) = (free[j] + h, free[j] - h);
                    return (form.Natural(up)[i] - form.Natural(down)[i]) / (2 * h);
                });
                return Math.Sqrt(slope * covariance * slope);
            }),
        ];
    }

    /// <summary>The asymptotic covariance of the free parameters.</summary>
    internal static Matrix<double> CovarianceOf(FitForm form, double[] free, FitData data) =>
        MaximumLikelihood.Hessian(x => MaximumLikelihood.MinusLog(form, data, x), free).Inverse();

    private static FamilyFit Tested(
        FamilyFit fit, FitFamily family, double[] free, FitData data, int size, int replicates, ulong seed, RunOptions options)
    {
        if (!data.IsExact || free.Length >= data.Count)
        {
            return fit;
        }

        double[] sorted = [.. data.Observations.SelectMany(o => Enumerable.Repeat(o.Low, (int)Math.Min(int.MaxValue, o.Count)))];
        double statistic = AndersonDarling.Of(fit.Distribution, sorted);
        if (!double.IsFinite(statistic))
        {
            return fit;
        }

        BlockRun<int> run = BlockRunner.Run(replicates, 16, options with { Progress = null }, () => 0, (none, first, count) =>
        {
            int above = 0;
            for (long number = first; number < first + count; number++)
            {
                options.Cancellation.ThrowIfCancellationRequested();
                (double[] values, FitForm? form, double[]? fitted) = Replicate(fit, family, size, seed, "test", number);
                above += form is null || fitted is null || AndersonDarling.Of(form.Make(form.Natural(fitted)), values) >= statistic ? 1 : 0;
            }

            return above;
        });
        options.Cancellation.ThrowIfCancellationRequested();
        return fit with { Statistic = statistic, PValue = (1.0 + run.Blocks.Sum()) / (1 + replicates), Replicates = replicates };
    }
}
