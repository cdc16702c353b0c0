using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Numerics.Vectors;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

public class BatchKernelEdgeTests
{
    private const int Rows = 300;

    private static readonly SnCurve[] Curves = RandomVehicles.AllCurves;

    public static TheoryData<string, int> WidthsAndLengths
    {
        get
        {
            var data = new TheoryData<string, int>();
            foreach (VectorWidth width in VectorWidths.Supported)
            {
                foreach (int length in new[] { 0, 1, 3, 4, 5, 7, 8, 9, 15, 16, 17, 128, 255, 256, 257 })
                {
                    data.Add(width.ToString(), length);
                }
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(WidthsAndLengths))]
    public void A_rows_answer_does_not_depend_on_the_length_of_the_batch(string width, int length)
    {
        DamageColumns columns = RandomVehicles.Fill(Rows, Curves.Length);
        KernelAnswer all = KernelAnswer.Batch(columns, Rows, Curves, CountingMethod.Dirlik, Enum.Parse<VectorWidth>(width));
        KernelAnswer some = KernelAnswer.Batch(columns, length, Curves, CountingMethod.Dirlik, Enum.Parse<VectorWidth>(width));
        Assert.Equal(all.Total[..length], some.Total);
        for (int leg = 0; leg < some.ByLeg.Length; leg++)
        {
            Assert.Equal(all.ByLeg[leg][..length], some.ByLeg[leg]);
        }
    }

    [Fact]
    public void A_rows_answer_does_not_depend_on_its_neighbours()
    {
        DamageColumns columns = RandomVehicles.Fill(Rows, Curves.Length);
        DamageColumns alone = RandomVehicles.Fill(1, Curves.Length);
        double[] together = KernelAnswer.Batch(columns, Rows, Curves, CountingMethod.Dirlik, VectorWidths.Best).Total;
        for (int row = 0; row < Rows; row++)
        {
            RandomVehicles.CopyRow(columns, row, alone);
            Assert.Equal(together[row], KernelAnswer.Batch(alone, 1, Curves, CountingMethod.Dirlik, VectorWidths.Best).Total[0]);
        }
    }

    [Fact]
    public void Nothing_is_written_beyond_the_rows_asked_for()
    {
        DamageColumns columns = RandomVehicles.Fill(Rows, Curves.Length);
        double[][] byLeg = [.. columns.Legs.Select(_ => Enumerable.Repeat(-1.0, Rows).ToArray())];
        double[] total = [.. Enumerable.Repeat(-1.0, Rows)];
        new BatchKernel(Curves, CountingMethod.Dirlik, columns.Layout).Evaluate(columns, 130, byLeg, total);
        Assert.All(total[130..], x => Assert.Equal(-1, x));
        Assert.All(byLeg, leg => Assert.All(leg[130..], x => Assert.Equal(-1, x)));
        Assert.All(total[..130], x => Assert.NotEqual(-1, x));
    }

    [Theory]
    [InlineData("no wall")]
    [InlineData("no stress")]
    [InlineData("no road")]
    [InlineData("one leg not driven")]
    [InlineData("infinite on a leg not driven")]
    [InlineData("no number")]
    [InlineData("walking pace")]
    [InlineData("walking pace at first")]
    [InlineData("no damping")]
    public void Extremes_have_the_scalar_kernels_answer(string extreme)
    {
        DamageColumns columns = RandomVehicles.Fill(17, Curves.Length);
        const int Row = 5;
        if (extreme is "no wall" or "infinite on a leg not driven")
        {
            columns.StressPerForceMPaPerN[Row] = double.PositiveInfinity;
        }

        if (extreme is "no stress")
        {
            columns.StressPerForceMPaPerN[Row] = 0;
        }

        if (extreme is "no road")
        {
            columns.Legs[0].RoughnessM3[Row] = 0;
        }

        if (extreme is "one leg not driven" or "infinite on a leg not driven")
        {
            columns.Legs[1].Share[Row] = 0;
        }

        if (extreme is "no number")
        {
            columns.SpringNPerM[Row] = double.NaN;
        }

        if (extreme is "walking pace")
        {
            columns.Legs[2].SpeedMPerS[Row] = columns.ContactLengthM[Row] / 3;
        }

        if (extreme is "walking pace at first")
        {
            columns.Legs[0].SpeedMPerS[Row] = columns.ContactLengthM[Row] / 3;
        }

        if (extreme is "no damping")
        {
            columns.DamperNsPerM[Row] = columns.TyreDampingNsPerM[Row] = 0;
        }

        KernelAnswer expected = KernelAnswer.Scalar(columns, 17, Curves, CountingMethod.Dirlik);
        foreach (VectorWidth width in VectorWidths.Supported)
        {
            double[] differences = KernelAnswer.Batch(columns, 17, Curves, CountingMethod.Dirlik, width).DifferencesFrom(expected);
            Assert.InRange(differences[^1], 0, 1e-3);
        }
    }

    [Fact]
    public void It_allocates_nothing_once_made()
    {
        DamageColumns columns = RandomVehicles.Fill(Rows, Curves.Length);
        double[][] byLeg = [.. columns.Legs.Select(_ => new double[Rows])];
        var total = new double[Rows];
        var kernel = new BatchKernel(Curves, CountingMethod.Dirlik, columns.Layout);
        kernel.Evaluate(columns, Rows, byLeg, total);
        long before = GC.GetAllocatedBytesForCurrentThread();
        kernel.Evaluate(columns, Rows, byLeg, total);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }
}
