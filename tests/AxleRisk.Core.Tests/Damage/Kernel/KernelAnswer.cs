using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Tests.Damage;

/// <summary>What a kernel says of some rows.</summary>
internal sealed record KernelAnswer(double[][] ByLeg, double[] Total, double[][] Further)
{
    // A life of 1e20 km: below it damage comes from stresses far out on the tails of the range density, where the slightest error of a
    // moment counts a hundredfold, and nobody does.
    private const double Negligible = 1e-20;

    public static KernelAnswer Scalar(DamageColumns columns, int count, SnCurve[] curves, CountingMethod method)
    {
        KernelAnswer answer = Empty(columns, count);
        ScalarKernel.Evaluate(columns, count, curves, method, answer.ByLeg, answer.Total, answer.Further);
        return answer;
    }

    public static KernelAnswer Batch(DamageColumns columns, int count, SnCurve[] curves, CountingMethod method, VectorWidth width)
    {
        KernelAnswer answer = Empty(columns, count);
        new BatchKernel(curves, method, columns.Layout, width).Evaluate(columns, count, answer.ByLeg, answer.Total, answer.Further);
        return answer;
    }

    /// <summary>Relative differences of all legs and totals, rising; NaN where only one of the two is NaN or infinite.</summary>
    public double[] DifferencesFrom(KernelAnswer other) =>
    [
        .. from pair in ByLeg.Append(Total).Zip(other.ByLeg.Append(other.Total))
           from both in pair.First.Zip(pair.Second)
           let difference = Difference(both.First, both.Second)
           orderby difference
           select difference,
    ];

    /// <summary>Relative differences of a further mode's rates, rising, with those below <paramref name="negligible"/> over that.</summary>
    public double[] DifferencesFrom(KernelAnswer other, int mode, double negligible) =>
    [
        .. from both in Further[mode].Zip(other.Further[mode])
           let difference = Difference(both.First, both.Second, negligible)
           orderby difference
           select difference,
    ];

    private static KernelAnswer Empty(DamageColumns columns, int count) =>
        new([.. columns.Legs.Select(_ => new double[count])], new double[count],
            [.. Enumerable.Range(0, columns.Layout.Further).Select(_ => new double[count])]);

    private static double Difference(double a, double b, double negligible = Negligible)
    {
        if (a.Equals(b))
        {
            return 0;
        }

        return double.IsFinite(a) && double.IsFinite(b) ? Math.Abs(a - b) / Math.Max(Math.Abs(b), negligible) : double.PositiveInfinity;
    }
}
