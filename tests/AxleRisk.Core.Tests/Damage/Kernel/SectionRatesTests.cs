using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Numerics.Vectors;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

/// <summary>Further checked sections in vector code against their scalar twins.</summary>
public class SectionRatesTests
{
    private static readonly SnCurve[] Curves = [.. RandomVehicles.AllCurves, Fixtures.Curves.Of(25, new SnLine(3, 12.1))];

    public static TheoryData<string, bool> Widths => new(
        VectorWidths.Supported.SelectMany(w => new[] { (w.ToString(), false), (w.ToString(), true) }));

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
    public void They_agree_with_the_scalar_code_over_all_vehicles_and_roads(string width, bool withModes)
    {
        foreach (CountingMethod method in Enum.GetValues<CountingMethod>())
        {
            DamageColumns columns = RandomVehicles.FillWithSections(700, Curves, withModes);
            KernelAnswer scalar = KernelAnswer.Scalar(columns, 700, Curves, method);
            KernelAnswer batch = KernelAnswer.Batch(columns, 700, Curves, method, Enum.Parse<VectorWidth>(width));
            for (int section = 0; section < 2; section++)
            {
                double[] off = batch.DifferencesFrom(scalar, section, 1e-20);
                Assert.InRange(off[off.Length * 9 / 10], 0, 2e-5);
                Assert.InRange(off[^1], 0, 3e-3);
            }
        }
    }

    [Theory]
    [MemberData(nameof(WidthsAndLengths))]
    public void A_rows_rates_do_not_depend_on_the_length_of_the_batch(string width, int length)
    {
        DamageColumns columns = RandomVehicles.FillWithSections(300, Curves, withModes: true);
        columns.StressPerForceMPaPerN[2] = 0; // counted anew
        KernelAnswer all = KernelAnswer.Batch(columns, 300, Curves, CountingMethod.Dirlik, Enum.Parse<VectorWidth>(width));
        KernelAnswer some = KernelAnswer.Batch(columns, length, Curves, CountingMethod.Dirlik, Enum.Parse<VectorWidth>(width));
        for (int rate = 0; rate < all.Further.Length; rate++)
        {
            Assert.Equal(all.Further[rate][..length], some.Further[rate]);
        }
    }

    [Theory]
    [MemberData(nameof(Widths))]
    public void A_section_like_the_first_has_its_digits_and_changes_none(string width, bool withModes)
    {
        DamageColumns columns = RandomVehicles.FillWithSections(300, Curves, withModes);
        foreach (LegColumns leg in columns.Legs)
        {
            Array.Fill(leg.DamageRatio, 1);
        }

        Copy(columns.Sections[0], columns.Sections[1]);
        var alone = new DamageColumns(300, columns.Layout with { Sections = [], HasRatios = false });
        RandomVehicles.CopyRows(columns, alone, 300);
        for (int mode = 0; mode < columns.Modes.Length; mode++)
        {
            foreach ((double[] from, double[] to) in columns.Modes[mode].All.Zip(alone.Modes[mode].All))
            {
                from.CopyTo(to, 0);
            }
        }

        KernelAnswer answer = KernelAnswer.Batch(columns, 300, Curves, CountingMethod.Dirlik, Enum.Parse<VectorWidth>(width));
        KernelAnswer without = KernelAnswer.Batch(alone, 300, Curves, CountingMethod.Dirlik, Enum.Parse<VectorWidth>(width));
        Assert.Equal(answer.Total, answer.Further[0]);
        Assert.Equal(without.Total, answer.Total);
        Assert.Equal(without.ByLeg[1], answer.ByLeg[1]);
    }

    [Theory]
    [InlineData("no stress")]
    [InlineData("no wall")]
    [InlineData("first without stress")]
    [InlineData("first without wall")]
    [InlineData("no number")]
    [InlineData("one leg not driven")]
    [InlineData("one leg alone driven")]
    public void Extremes_have_the_scalar_codes_answer_and_leave_the_others_alone(string extreme)
    {
        const int Row = 5;
        DamageColumns columns = RandomVehicles.FillWithSections(17, Curves, withModes: true);
        KernelAnswer[] before = [.. VectorWidths.Supported.Select(w => KernelAnswer.Batch(columns, 17, Curves, CountingMethod.Dirlik, w))];
        switch (extreme)
        {
            case "no stress": columns.Sections[1].StressPerForceMPaPerN[Row] = 0; break;
            case "no wall": columns.Sections[1].StressPerForceMPaPerN[Row] = double.PositiveInfinity; break;
            case "first without stress": columns.StressPerForceMPaPerN[Row] = 0; break;
            case "first without wall": columns.StressPerForceMPaPerN[Row] = double.PositiveInfinity; break;
            case "no number": columns.Sections[1].StressPerForceMPaPerN[Row] = double.NaN; break;
            case "one leg not driven": columns.Legs[1].Share[Row] = 0; break;
            default:
                for (int leg = 0; leg < columns.Legs.Length; leg++)
                {
                    columns.Legs[leg].Share[Row] = leg == 1 ? 1 : 0;
                }

                break;
        }

        KernelAnswer expected = KernelAnswer.Scalar(columns, 17, Curves, CountingMethod.Dirlik);
        if (extreme is "no stress" or "no wall" or "no number")
        {
            double rate = extreme == "no stress" ? 0 : extreme == "no wall" ? double.PositiveInfinity : double.NaN;
            Assert.Equal(rate, expected.Further[0][Row]);
        }

        foreach ((VectorWidth width, KernelAnswer whole) in VectorWidths.Supported.Zip(before))
        {
            KernelAnswer batch = KernelAnswer.Batch(columns, 17, Curves, CountingMethod.Dirlik, width);
            Assert.InRange(batch.DifferencesFrom(expected, 0, 1e-20)[^1], 0, 1e-3);
            Assert.InRange(batch.DifferencesFrom(expected, 1, 1e-20)[^1], 0, 1e-3);
            if (extreme is "no stress" or "no wall" or "no number")
            {
                Assert.Equal(whole.Total, batch.Total); // a section changes no digit of the first
                Assert.Equal(whole.Further[1], batch.Further[1]);
                Assert.Equal(whole.Further[2], batch.Further[2]);
            }
        }
    }

    private static void Copy(SectionColumns from, SectionColumns to)
    {
        from.StressPerForceMPaPerN.CopyTo(to.StressPerForceMPaPerN, 0);
        from.ThicknessMm.CopyTo(to.ThicknessMm, 0);
        from.Category.CopyTo(to.Category, 0);
    }
}
