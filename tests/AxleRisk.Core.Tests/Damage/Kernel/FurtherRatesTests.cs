using AxleRisk.Core.Damage.Bearings;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Damage.Yields;
using AxleRisk.Core.Numerics.Vectors;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

/// <summary>Strikes, first yield and bearing in vector code against their scalar twins.</summary>
public class FurtherRatesTests
{
    private const int Yield = 0;
    private const int Bearing = 1;

    private static readonly SnCurve[] Curves =
    [
        .. RandomVehicles.AllCurves, Fixtures.Curves.Of(0, new(3.3, 12.4), new(5.2, 16.1), new(8, 20)),
        Fixtures.Curves.Of(25, new SnLine(3, 12.1)),
    ];

    public static TheoryData<string> Widths => [.. VectorWidths.Supported.Select(w => w.ToString())];

    public static TheoryData<string, int> WidthsAndLengths
    {
        get
        {
            var data = new TheoryData<string, int>();
            foreach (VectorWidth width in VectorWidths.Supported)
            {
                foreach (int length in new[] { 0, 1, 3, 4, 5, 7, 8, 9, 15, 16, 17, 256, 257 })
                {
                    data.Add(width.ToString(), length);
                }
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Widths))]
    public void They_agree_with_the_scalar_code_over_all_vehicles_and_roads(string width)
    {
        foreach (double exponent in new[] { BearingLife.BallExponent, BearingLife.RollerExponent })
        {
            DamageColumns columns = RandomVehicles.FillWithModes(1500, Curves.Length, exponent);
            KernelAnswer scalar = KernelAnswer.Scalar(columns, 1500, Curves, CountingMethod.Dirlik);
            KernelAnswer batch = KernelAnswer.Batch(columns, 1500, Curves, CountingMethod.Dirlik, Enum.Parse<VectorWidth>(width));

            Within(batch.DifferencesFrom(scalar), 1e-5, 2e-3);
            Within(batch.DifferencesFrom(scalar, Yield, 1e-15), 2e-5, 1e-2);
            // The twin's quadrature is that far off where loads change their sign.
            Within(batch.DifferencesFrom(scalar, Bearing, 1e-15), 1e-3, 4e-3);
        }
    }

    [Fact]
    public void The_vehicles_strike_yield_and_do_neither()
    {
        DamageColumns columns = RandomVehicles.FillWithModes(300, Curves.Length);
        var without = new DamageColumns(300, RandomVehicles.Legs);
        for (int row = 0; row < 300; row++)
        {
            Assert.True(columns.BumpClearanceM[row] > 0);
        }

        RandomVehicles.CopyRows(columns, without, 300);
        double[] with = KernelAnswer.Scalar(columns, 300, Curves, CountingMethod.Dirlik).Total;
        double[] plain = KernelAnswer.Scalar(without, 300, Curves, CountingMethod.Dirlik).Total;
        Assert.InRange(with.Zip(plain).Count(p => p.First > 1.01 * p.Second), 50, 250);
        double[] rates = KernelAnswer.Scalar(columns, 300, Curves, CountingMethod.Dirlik).Further[Yield];
        Assert.InRange(rates.Count(double.IsInfinity), 5, 150);
        Assert.InRange(rates.Count(r => r is > 1e-9 and < 1), 20, 250);
    }

    [Theory]
    [MemberData(nameof(WidthsAndLengths))]
    public void A_rows_rates_do_not_depend_on_the_length_of_the_batch(string width, int length)
    {
        DamageColumns columns = RandomVehicles.FillWithModes(300, Curves.Length);
        KernelAnswer all = KernelAnswer.Batch(columns, 300, Curves, CountingMethod.Dirlik, Enum.Parse<VectorWidth>(width));
        KernelAnswer some = KernelAnswer.Batch(columns, length, Curves, CountingMethod.Dirlik, Enum.Parse<VectorWidth>(width));
        Assert.Equal(all.Total[..length], some.Total);
        Assert.Equal(all.Further[Yield][..length], some.Further[Yield]);
        Assert.Equal(all.Further[Bearing][..length], some.Further[Bearing]);
    }

    [Theory]
    [InlineData("no clearance")]
    [InlineData("infinite clearance")]
    [InlineData("no stop rate")]
    [InlineData("no wall")]
    [InlineData("static yield")]
    [InlineData("no nominal stress")]
    [InlineData("no road")]
    [InlineData("one leg not driven")]
    [InlineData("no number")]
    [InlineData("all corrugated")]
    [InlineData("hardly any travel")]
    [InlineData("soft tyre and hop")]
    public void Extremes_have_the_scalar_codes_answer(string extreme)
    {
        DamageColumns columns = RandomVehicles.FillWithModes(17, Curves.Length);
        const int Row = 5;
        var yield = (YieldColumns)columns.Modes[Yield];
        switch (extreme)
        {
            case "no clearance": columns.BumpClearanceM[Row] = 0; break;
            case "infinite clearance": columns.BumpClearanceM[Row] = double.PositiveInfinity; break;
            case "no stop rate": columns.BumpStopNPerM[Row] = 0; break;
            case "no wall": columns.StressPerForceMPaPerN[Row] = yield.NominalStressMPaPerN[Row] = double.PositiveInfinity; break;
            case "static yield": yield.YieldMPa[Row] = 1; break;
            case "no nominal stress": yield.NominalStressMPaPerN[Row] = 0; break;
            case "no road": columns.Legs[0].RoughnessM3[Row] = 0; break;
            case "one leg not driven": columns.Legs[1].Share[Row] = 0; break;
            case "no number": columns.SpringNPerM[Row] = double.NaN; break;
            case "all corrugated": columns.Legs[0].CorrugatedShare[Row] = 1; break;
            case "hardly any travel": columns.DamperNsPerM[Row] *= 100; break;
            default: columns.TyreNPerM[Row] /= 10; break;
        }

        KernelAnswer expected = KernelAnswer.Scalar(columns, 17, Curves, CountingMethod.Dirlik);
        if (extreme is "no wall" or "static yield")
        {
            Assert.Equal(double.PositiveInfinity, expected.Further[Yield][Row]);
        }

        foreach (VectorWidth width in VectorWidths.Supported)
        {
            KernelAnswer batch = KernelAnswer.Batch(columns, 17, Curves, CountingMethod.Dirlik, width);
            Assert.InRange(batch.DifferencesFrom(expected)[^1], 0, 1e-3);
            Assert.InRange(batch.DifferencesFrom(expected, Yield, 1e-15)[^1], 0, 1e-3);
            Assert.InRange(batch.DifferencesFrom(expected, Bearing, 1e-15)[^1], 0, 1e-3);
        }
    }

    [Fact]
    public void The_same_ride_need_not_be_evaluated_again()
    {
        DamageColumns columns = RandomVehicles.FillWithModes(256, Curves.Length);
        foreach (VectorWidth width in VectorWidths.Supported)
        {
            var kernel = new BatchKernel(Curves, CountingMethod.Dirlik, columns.Layout, width);
            double[][] byLeg = [.. columns.Legs.Select(_ => new double[256])];
            double[][] further = [new double[256], new double[256]];
            var total = new double[256];
            kernel.Evaluate(columns, 256, byLeg, total, further);
            for (int row = 0; row < 256; row++)
            {
                columns.StressPerForceMPaPerN[row] *= 1.1;
            }

            KernelAnswer anew = KernelAnswer.Batch(columns, 256, Curves, CountingMethod.Dirlik, width);
            kernel.Evaluate(columns, 256, byLeg, total, further, sameRide: true);
            Assert.Equal(anew.Total, total);
            Assert.Equal(anew.Further[Yield], further[Yield]);
        }
    }

    // E|X|^3 of a normal X in closed form (Winkelbauer 2012, arXiv:1209.4340): s^3 2^(3/2) Gamma(2)/sqrt(pi) 1F1(-3/2; 1/2;
    // -m^2/2s^2); here with
    // the normal distribution function, (m^3 + 3 m s^2)(2 Phi(m/s) - 1) + 2 s (m^2 + 2 s^2) phi(m/s), derived by parts.
    [Fact]
    public void The_third_absolute_moment_is_the_closed_form_at_every_spread()
    {
        var columns = new BearingColumns(1, BearingLife.BallExponent);
        Span<float> got = stackalloc float[4];
        foreach (double s in new[] { 0, 1e-3, 0.1, 0.25, 0.5, 1, 3, 100 })
        {
            double exact = s == 0 ? 1
                : (1 + 3 * s * s) * (2 * Core.Numerics.StandardNormal.Cumulative(1 / s) - 1)
                    + 2 * s * (1 + 2 * s * s) * Core.Numerics.StandardNormal.Density(1 / s);
            Core.Numerics.Vectors.FloatLanes128.Store(
                columns.MeanPower(Core.Numerics.Vectors.FloatLanes128.Create(1), Core.Numerics.Vectors.FloatLanes128.Create((float)s)),
                    ref got[0]);
            Near.Relative(exact, got[0], 1e-5);
        }
    }

    [Theory]
    [InlineData(BearingLife.BallExponent)]
    [InlineData(BearingLife.RollerExponent)]
    public void Loads_that_keep_their_sign_have_the_twins_moment(double exponent)
    {
        var columns = new BearingColumns(1, exponent);
        Span<float> got = stackalloc float[4];
        foreach (double s in new[] { 0, 0.01, 0.1, 0.2, 0.3, 0.35 })
        {
            Core.Numerics.Vectors.FloatLanes128.Store(
                columns.MeanPower(Core.Numerics.Vectors.FloatLanes128.Create(0.2f),
                    Core.Numerics.Vectors.FloatLanes128.Create((float)(0.2 * s))), ref got[0]);
            Near.Relative(BearingLife.MeanPower(0.2f, 0.2 * s, exponent), got[0], 1e-5);
        }
    }

    private static void Within(double[] differences, double typical, double worst)
    {
        Assert.InRange(differences[differences.Length * 9 / 10], 0, typical);
        Assert.InRange(differences[^1], 0, worst);
    }
}
