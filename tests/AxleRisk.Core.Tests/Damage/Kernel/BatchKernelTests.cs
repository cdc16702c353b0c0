using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Numerics.Vectors;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

public class BatchKernelTests
{
    private const int Rows = 4000;

    // Measured over 20,000 rows: median 7.9E-7, 90 % 3.2E-6, 99 % 2.0E-5, greatest 8.0E-4.
    private const double Worst = 1e-3;
    private const double Typical = 1e-5;

    public static TheoryData<string> Widths => [.. VectorWidths.Supported.Select(w => w.ToString())];

    [Theory]
    [MemberData(nameof(Widths))]
    public void It_agrees_with_the_scalar_kernel_over_all_vehicles_roads_and_curves(string width) =>
        AssertClose(
            RandomVehicles.Fill(Rows, RandomVehicles.AllCurves.Length), RandomVehicles.AllCurves, CountingMethod.Dirlik, width);

    [Theory]
    [MemberData(nameof(Widths))]
    public void It_agrees_for_the_other_counting_methods(string width)
    {
        DamageColumns columns = RandomVehicles.Fill(1000, RandomVehicles.AllCurves.Length);
        AssertClose(columns, RandomVehicles.AllCurves, CountingMethod.NarrowBand, width);
        AssertClose(columns, RandomVehicles.AllCurves, CountingMethod.TovoBenasciutti, width);
    }

    [Fact]
    public void It_agrees_for_each_catalogue_alone()
    {
        foreach (string catalogue in SnCatalogue.Catalogues)
        {
            SnCurve[] curves = [.. RandomVehicles.AllCurves.Where(c => c.Catalogue == catalogue)];
            Assert.NotEmpty(curves);
            AssertClose(RandomVehicles.Fill(1000, curves.Length), curves, CountingMethod.Dirlik, VectorWidths.Best.ToString());
        }
    }

    [Theory]
    [MemberData(nameof(Widths))]
    public void It_agrees_closely_on_the_benchmark_case(string width)
    {
        DamageColumns columns = RandomVehicles.FillPickUps(1000);
        SnCurve[] curves = [SnCatalogue.Find("DNV-RP-C203", "E")!.Mean];
        double[] differences = KernelAnswer.Batch(columns, 1000, curves, CountingMethod.Dirlik, Enum.Parse<VectorWidth>(width))
            .DifferencesFrom(KernelAnswer.Scalar(columns, 1000, curves, CountingMethod.Dirlik));
        Assert.InRange(differences[^1], 0, 2.5e-4); // measured 1.6E-4, where the slowest leg's shift is at the reduced grid's limit
    }

    // Slopes that are no whole numbers, one slope, three slopes, a line through points, cut-offs: by table.
    [Theory]
    [MemberData(nameof(Widths))]
    public void It_agrees_closely_on_curves_of_any_lines(string width)
    {
        SnCurve[] curves =
        [
            RandomVehicles.AllCurves[3], Curves.Of(0, new(3.25, 12.6), new(5.5, 16.5)), Curves.Of(0, new SnLine(3, 12.1)),
            Curves.Of(20, new SnLine(4.2, 14.5)), Curves.Of(0, new(3, 12.2), new(5, 15.7), new(8, 19.9)),
            Curves.Of(30, SnLine.Through(1e4, 500, 1e6, 110), SnLine.Through(1e6, 110, 1e8, 45)),
        ];
        DamageColumns columns = RandomVehicles.Fill(2_000, curves.Length);
        AssertClose(columns, curves, CountingMethod.Dirlik, width);
        AssertClose(columns, curves, CountingMethod.TovoBenasciutti, width);
    }

    private static void AssertClose(DamageColumns columns, SnCurve[] curves, CountingMethod method, string width)
    {
        int rows = columns.Capacity;
        double[] differences = KernelAnswer.Batch(columns, rows, curves, method, Enum.Parse<VectorWidth>(width))
            .DifferencesFrom(KernelAnswer.Scalar(columns, rows, curves, method));
        Assert.InRange(differences[differences.Length * 9 / 10], 0, Typical);
        Assert.InRange(differences[^1], 0, Worst);
    }
}
