using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Kernel;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

public class ScalarKernelTests
{
    private static readonly RoadLeg[] Legs = [new(0.7, 256, 60), new(0.3, 1024, 40, 0.4)];

    // Exact: a row's answer must not depend on its place or on how many come with it.
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(8)]
    [InlineData(9)]
    public void A_batch_of_any_length_gives_the_answers_of_single_rows(int count)
    {
        Vehicle[] vehicles =
        [
            .. Enumerable.Range(0, 10).Select(
                i => new Vehicle { WallMm = 5 + 0.2 * i, Waviness = 1.6 + 0.1 * i, SprungKg = 500 + 20 * i }),
        ];
        (double[] total, double[][] byLeg) = Rows.Evaluate(Rows.Of(vehicles, Legs), count, Rows.ClassE);
        for (int row = 0; row < count; row++)
        {
            (double[] one, double[][] oneByLeg) = Rows.Evaluate(Rows.Of([vehicles[row]], Legs), 1, Rows.ClassE);
            Assert.Equal(one[0], total[row]);
            Assert.Equal(oneByLeg.Select(l => l[0]), byLeg.Select(l => l[row]));
        }
        Assert.All(total[count..], d => Assert.Equal(0, d));
        Assert.All(byLeg, leg => Assert.All(leg[count..], d => Assert.Equal(0, d)));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void The_details_of_a_row_are_those_of_the_batch(int method)
    {
        DamageColumns columns = Rows.Of([new(), new() { WallMm = 5 }], Legs);
        (double[] total, double[][] byLeg) = Rows.Evaluate(columns, 2, Rows.ClassE, (CountingMethod)method);
        LegDetail[] details = ScalarKernel.LegDetails(columns, 1, [Rows.ClassE], (CountingMethod)method);
        Assert.Equal(byLeg.Select(l => l[1]), details.Select(d => d.DamagePerKmOfUse));
        Assert.Equal(total[1], details.Sum(d => d.DamagePerKmOfUse));
    }

    [Fact]
    public void Every_row_uses_the_curve_of_its_category()
    {
        SnCurve poor = SnCatalogue.Find("DNV-RP-C203", "W1")!.Mean;
        var total = new double[2];
        double[][] byLeg = [new double[2], new double[2]];
        ScalarKernel.Evaluate(
            Rows.Of([new() { Category = 1 }, new()], Legs), 2, [Rows.ClassE, poor], CountingMethod.Dirlik, byLeg, total);
        Assert.Equal(Rows.DamagePerKm(new(), poor, Legs), total[0]);
        Assert.Equal(Rows.DamagePerKm(new(), Rows.ClassE, Legs), total[1]);
    }

    [Fact]
    public void No_wall_left_is_infinite_damage_except_on_a_leg_that_is_not_driven()
    {
        DamageColumns columns = Rows.Of([new() { WallMm = 0 }], new RoadLeg(1, 256, 60, 0.5), new RoadLeg(0, 1024, 40));
        (double[] total, double[][] byLeg) = Rows.Evaluate(columns, 1, Rows.ClassE);
        Assert.Equal(double.PositiveInfinity, total[0]);
        Assert.Equal(double.PositiveInfinity, byLeg[0][0]);
        Assert.Equal(0, byLeg[1][0]);
        LegDetail detail = ScalarKernel.LegDetails(columns, 0, [Rows.ClassE], CountingMethod.Dirlik)[0];
        Assert.Equal(double.PositiveInfinity, detail.Plain.RmsMPa);
        Assert.InRange(detail.Plain.UpCrossingsPerSecond, 1, 15);
    }

    [Fact]
    public void A_perfectly_smooth_road_does_no_damage() => Assert.Equal(0, Rows.DamagePerKm(new(), new RoadLeg(1, 0, 60)));

    [Fact]
    public void Not_a_number_does_not_hide() => Assert.True(double.IsNaN(Rows.DamagePerKm(new() { SprungKg = double.NaN }, Legs)));

    [Fact]
    public void The_thickness_correction_is_a_factor_on_stress()
    {
        SnCurve thin = Rows.ClassE with { ThicknessReferenceMm = 3, ThicknessExponent = 0.25 };
        SnCurve none = thin with { ThicknessExponent = 0 };
        double factor = Math.Pow(2, 0.25);
        Near.Relative(Rows.DamagePerKm(new() { StressFactor = factor }, none, Legs), Rows.DamagePerKm(new(), thin, Legs), 1e-12);
    }

    [Fact]
    public void A_batch_allocates_nothing()
    {
        DamageColumns columns = Rows.Of([new(), new(), new()], Legs);
        var total = new double[3];
        double[][] byLeg = [new double[3], new double[3]];
        SnCurve[] curves = [Rows.ClassE];
        ScalarKernel.Evaluate(columns, 3, curves, CountingMethod.Dirlik, byLeg, total);
        long before = GC.GetAllocatedBytesForCurrentThread();
        ScalarKernel.Evaluate(columns, 3, curves, CountingMethod.Dirlik, byLeg, total);
        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
    }
}
