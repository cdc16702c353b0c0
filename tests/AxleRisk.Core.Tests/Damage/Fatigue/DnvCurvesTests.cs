using AxleRisk.Core.Damage.Fatigue;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

/// <summary>DNV-RP-C203 in air: check values recomputed from the table, 9 digits.</summary>
public class DnvCurvesTests
{
    private static SnCurve Class(string category) => SnCatalogue.Find("DNV-RP-C203", category)!;

    // Ranges at 1e7 cycles, MPa, of table 2-1 (2 decimals), and the FAT class at 2e6 cycles that the text relates each class to.
    [Theory]
    [InlineData("B1", 106.97, 160)]
    [InlineData("B2", 93.59, 140)]
    [InlineData("C", 73.10, 125)]
    [InlineData("C1", 65.50, 112)]
    [InlineData("C2", 58.48, 100)]
    [InlineData("D", 52.63, 90)]
    [InlineData("E", 46.78, 80)]
    [InlineData("F", 41.52, 71)]
    [InlineData("F1", 36.84, 63)]
    [InlineData("F3", 32.75, 56)]
    [InlineData("G", 29.24, 50)]
    [InlineData("W1", 26.32, 45)]
    [InlineData("W2", 23.39, 40)]
    [InlineData("W3", 21.05, 36)]
    public void Both_slopes_meet_the_tables_range_at_1e7_cycles(string category, double atKnee, double fat)
    {
        SnCurve c = Class(category);
        Assert.Equal(atKnee, c.Lines[0].RangeMPa(1e7), 0.03);
        Assert.Equal(atKnee, c.Lines[1].RangeMPa(1e7), 0.03);
        // The intercepts are rounded to 3 decimals, so their difference is good to 0.001, which the difference in slope divides.
        Near.Relative(atKnee, c.KneesMPa[0], 0.001 * Math.Log(10) / (c.Lines[1].Slope - c.Lines[0].Slope));
        Assert.Equal(fat, c.Lines[0].RangeMPa(2e6), 0.15);
    }

    [Theory]
    [InlineData("F", 32, 1.06365918, 595103.525)]
    [InlineData("D", 40, 1.09856054, 1100342.811)]
    public void A_thicker_plate_lives_shorter(string category, double thickness, double factor, double cycles)
    {
        Near.Relative(factor, Class(category).ThicknessFactor(thickness), 1e-8);
        Near.Relative(cycles, Class(category).CyclesToFailure(100 * factor), 1e-6);
    }

    [Theory]
    [InlineData(25)]
    [InlineData(6)]
    [InlineData(0)]
    public void Up_to_the_reference_thickness_nothing_is_corrected(double thickness) =>
        Assert.Equal(1, Class("F").ThicknessFactor(thickness));

    [Theory]
    [InlineData(25, 0.4074510942)]
    [InlineData(32, 0.5088214330)]
    public void Blocks_on_class_F_sum_to_the_known_damage(double thickness, double damage)
    {
        SnCurve c = Class("F");
        (double Range, double Cycles)[] blocks = [(100, 1e5), (60, 5e5), (30, 5e6), (15, 3e7)];
        Near.Relative(damage, blocks.Sum(b => b.Cycles / c.CyclesToFailure(b.Range * c.ThicknessFactor(thickness))), 1e-6);
    }

    [Fact]
    public void The_mean_curve_lives_2_51_times_longer_at_every_range_and_keeps_its_knee()
    {
        SnCurve design = Class("E");
        foreach (double range in (double[])[200, 50, 40, 10])
        {
            Near.Relative(2.5118864315, design.Mean.CyclesToFailure(range) / design.CyclesToFailure(range), 1e-9);
        }

        Near.Relative(design.KneesMPa[0], design.Mean.KneesMPa[0], 1e-12);
        Assert.Equal(design.Mean.Lines, design.Mean.Mean.Lines);
    }

    // Worked out from the tables' lines: N = 10^(log10 a - m log10 S).
    [Theory]
    [InlineData("seawater with protection", 80, 556839.5)]
    [InlineData("seawater with protection", 50, 3945935.5)]
    [InlineData("free corrosion", 50, 1910249.6)]
    public void Class_F_in_seawater_lives_so_long(string environment, double range, double cycles) =>
        Near.Relative(cycles, SnCatalogue.Find("DNV-RP-C203", "F", environment)!.CyclesToFailure(range), 1e-6);

    // How the tables in seawater come from those in air (DNV-RP-C203, 2.4, from memory): with protection the line below the knee is kept
    // and the knee moves to 1e6 cycles; in free corrosion a third of the life is left at the slope 3 of air, whatever the range.
    [Fact]
    public void The_curves_in_seawater_are_derived_from_those_in_air()
    {
        Assert.Equal(["air", "seawater with protection", "free corrosion"], SnCatalogue.Environments("DNV-RP-C203"));
        foreach (string category in SnCatalogue.Categories("DNV-RP-C203"))
        {
            SnCurve Of(string environment) => SnCatalogue.Find("DNV-RP-C203", category, environment)!;
            (SnCurve air, SnCurve cp, SnCurve free) = (Of("air"), Of("seawater with protection"), Of("free corrosion"));
            Assert.Equal(air.Lines[1], cp.Lines[1]);
            Assert.Equal(6 + (cp.Lines[0].Slope * (cp.Lines[1].Log10A - 6) / 5), cp.Lines[0].Log10A, 0.0011);
            if (air.Lines[0].Slope == 3)
            {
                Assert.Equal(air.Lines[0].Log10A - Math.Log10(3), Assert.Single(free.Lines).Log10A, 0.0011);
            }

            Assert.Equal(3, free.Lines[0].Slope);
            foreach (double range in (double[])[40, 100])
            {
                Assert.True(free.CyclesToFailure(range) < cp.CyclesToFailure(range));
                Assert.True(cp.CyclesToFailure(range) <= air.CyclesToFailure(range));
            }
        }
    }
}
