using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Randomness;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Studies;
using MathNet.Numerics.LinearAlgebra;

namespace AxleRisk.Core.Analyses.Fits;

/// <summary>
/// The distribution of the next value where the parameters are known from few data. Parameters are drawn by the basic bootstrap:
/// as far from the estimate, in free parameters and on the other side, as a bootstrap's estimates lie from it (Davison and
/// Hinkley, Bootstrap Methods and their Application, 1997, section 5.2); with censored values from the asymptotic normal.
/// </summary>
internal static class Predictor
{
    private const int Draws = 999;

    /// <summary>Beyond so many values the parameters add next to nothing, and the asymptotic normal tells it.</summary>
    private const int FewValues = 200;

    private const double LowTail = 0.05;

    public static Prediction? Of(
        FamilyFit fit, FitFamily family, FitForm form, double[] free, FitData data, ulong seed, RunOptions options)
    {
        bool isBootstrap = data.IsExact && data.Count <= FewValues;
        Distribution[] drawn = isBootstrap ? ByBootstrap(fit, family, form, free, data, seed, options) : Asymptotic(form, free, data, seed);
        if (drawn.Length < Draws / 2)
        {
            return null;
        }

        (double low, double high) = (Quantile(drawn, LowTail, fit), Quantile(drawn, 1 - LowTail, fit));
        double ofFit = fit.Distribution.Quantile(1 - LowTail) - fit.Distribution.Quantile(LowTail);
        return new Prediction(fit, low, high, (high - low) / ofFit, isBootstrap, drawn.Length);
    }

    private static Distribution[] ByBootstrap(
        FamilyFit fit, FitFamily family, FitForm form, double[] free, FitData data, ulong seed, RunOptions options)
    {
        BlockRun<List<Distribution>> run = BlockRunner.Run(Draws, 16, options with { Progress = null }, () => 0, (none, first, count) =>
        {
            List<Distribution> of = [];
            for (long number = first; number < first + count; number++)
            {
                options.Cancellation.ThrowIfCancellationRequested();
                (_, FitForm? other, double[]? fitted) = FitAnalysis.Replicate(fit, family, (int)data.Count, seed, "predict", number);
                if (other is not null && fitted is not null)
                {
                    Add(of, form, [.. free.Zip(form.Free!(other.Natural(fitted)), (f, a) => (2 * f) - a)]);
                }
            }

            return of;
        });
        options.Cancellation.ThrowIfCancellationRequested();
        return [.. run.Blocks.SelectMany(b => b)];
    }

    private static Distribution[] Asymptotic(FitForm form, double[] free, FitData data, ulong seed)
    {
        Matrix<double> covariance = FitAnalysis.CovarianceOf(form, free, data);
        if (CholeskyFactor.Of(covariance) is not { } factor)
        {
            return [];
        }

        double[][] z = Workspace.Columns(free.Length, Draws);
        SamplingPlan plan = SamplingPlan.FromName(ScrambledSobol.PlanName, Draws);
        for (int i = 0; i < z.Length; i++)
        {
            plan.Fill(new StreamKey(seed, $"fit/predict/{i}"), i, 0, z[i]);
            StandardNormal.Quantiles(z[i], z[i]);
        }

        List<Distribution> drawn = [];
        for (int draw = 0; draw < Draws; draw++)
        {
            Add(drawn, form, [.. free.Select((f, i) => f + Enumerable.Range(0, i + 1).Sum(j => factor[i][j] * z[j][draw]))]);
        }

        return [.. drawn];
    }

    // Draws far out may make no distribution that doubles hold; they are few.
    private static void Add(List<Distribution> to, FitForm form, double[] free)
    {
        try
        {
            to.Add(form.Make(form.Natural(free)));
        }
        catch (DistributionException)
        {
        }
    }

    private static double Quantile(Distribution[] drawn, double p, FamilyFit fit)
    {
        double at = fit.Distribution.Quantile(p);
        double width = fit.Distribution.Quantile(0.75) - fit.Distribution.Quantile(0.25);
        double Above(double x) => drawn.Average(d => d.Cumulative(x)) - p;
        (double low, double high) = (at, at);
        for (int i = 0; Above(low) > 0 && i < 60; i++)
        {
            low = Math.Max(fit.Distribution.Minimum, low - (width * (1 << Math.Min(i, 20))));
        }

        for (int i = 0; Above(high) < 0 && i < 60; i++)
        {
            high += width * (1 << Math.Min(i, 20));
        }

        return high > low ? MathNet.Numerics.RootFinding.Brent.FindRoot(Above, low, high, 1e-9 * width, 200) : at;
    }
}
