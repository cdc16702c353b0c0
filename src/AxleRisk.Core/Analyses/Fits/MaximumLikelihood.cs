using AxleRisk.Core.Distributions;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;

namespace AxleRisk.Core.Analyses.Fits;

/// <summary>The greatest likelihood of a family: Nelder and Mead (1965), then Newton's steps where the likelihood is smooth.</summary>
internal static class MaximumLikelihood
{
    private const int MostIterations = 4000;
    private const int NewtonSteps = 4;

    /// <summary>Step of the differences, in free parameters: the error of the second differences is then about 1e-7.</summary>
    private const double Step = 1e-3;

    /// <summary>Free parameters beyond make no distribution that doubles can hold.</summary>
    private const double Reach = 60;

    private const double Impossible = 1e100;

    /// <summary>ln likelihood of a distribution; negative infinity where it rules an observation out.</summary>
    public static double Log(Distribution distribution, IEnumerable<Observation> observations)
    {
        double sum = 0;
        foreach (Observation o in observations)
        {
            double likelihood = o.IsExact ? distribution.Density(o.Low)
                : distribution.Cumulative(o.Low) > 0.5 ? distribution.Upper(o.Low) - distribution.Upper(o.High)
                : distribution.Cumulative(o.High) - distribution.Cumulative(o.Low);
            sum += o.Count * Math.Log(likelihood);
        }

        return sum;
    }

    /// <summary>The free parameters of the greatest likelihood; null where there is none to be found.</summary>
    /// <param name="form">The family over the data.</param>
    /// <param name="data">The data.</param>
    /// <param name="start">Where to begin; null for the form's own start.</param>
    /// <param name="tolerance">Relative, of the logarithm of the likelihood.</param>
    /// <param name="isSmooth">Whether Newton's steps follow.</param>
    public static double[]? Find(FitForm form, FitData data, IReadOnlyList<double>? start, double tolerance, bool isSmooth)
    {
        if (form.IsSolved)
        {
            return [.. form.Start];
        }

        double Minus(IReadOnlyList<double> free) => MinusLog(form, data, free);
        double[] from = [.. start ?? form.Start];
        if (!(Minus(from) < Impossible))
        {
            return null;
        }

        double[] best;
        try
        {
            Vector<double> first = Vector<double>.Build.DenseOfArray(from);
            best = NelderMeadSimplex.Minimum(
                ObjectiveFunction.Value(v => Minus(v.ToArray())), first, Vector<double>.Build.Dense(from.Length, 0.1), tolerance,
                    MostIterations)
                .MinimizingPoint.ToArray();
        }
        catch (MaximumIterationsException)
        {
            return null;
        }

        return isSmooth ? Polished(Minus, best) : best;
    }

    /// <summary>-ln likelihood at free parameters, large where they make no distribution or rule an observation out.</summary>
    public static double MinusLog(FitForm form, FitData data, IReadOnlyList<double> free)
    {
        if (!form.IsSolved && !free.All(x => Math.Abs(x) < Reach))
        {
            return Impossible;
        }

        try
        {
            double log = Log(form.Make(form.Natural(free)), data.Observations);
            return double.IsFinite(log) ? -log : Impossible;
        }
        catch (DistributionException)
        {
            return Impossible;
        }
    }

    /// <summary>The second derivatives at a point, by central differences.</summary>
    public static Matrix<double> Hessian(Func<IReadOnlyList<double>, double> of, IReadOnlyList<double> at)
    {
        double Moved(int i, double a, int j, double b)
        {
            double[] x = [.. at];
            x[i] += a * Step;
            x[j] += b * Step;
            return of(x);
        }

        double middle = of(at);
        return Matrix<double>.Build.Dense(at.Count, at.Count, (i, j) => i == j
            ? (Moved(i, 1, i, 0) - (2 * middle) + Moved(i, -1, i, 0)) / (Step * Step)
            : (Moved(i, 1, j, 1) - Moved(i, 1, j, -1) - Moved(i, -1, j, 1) + Moved(i, -1, j, -1)) / (4 * Step * Step));
    }

    private static double[] Polished(Func<IReadOnlyList<double>, double> of, double[] from)
    {
        double[] best = from;
        double least = of(best);
        for (int i = 0; i < NewtonSteps; i++)
        {
            double[] at = best;
            Vector<double> gradient = Vector<double>.Build.Dense(at.Length, j =>
            {
                double[] up = [.. at], down = [.. at];
                double h = Step / 10;
                (up[j], down[j]) = (at[j] + h, at[j] - h);
                return (of(up) - of(down)) / (2 * h);
            });
            double[] next = [.. (Vector<double>.Build.DenseOfArray(at) - Hessian(of, at).Solve(gradient))];
            double value = next.All(double.IsFinite) ? of(next) : double.PositiveInfinity;

            // At the bottom only rounding is left to tell them apart.
            if (!(value <= least + (1e-12 * Math.Abs(least))))
            {
                break;
            }

            (best, least) = (next, Math.Min(least, value));
        }

        return best;
    }
}
