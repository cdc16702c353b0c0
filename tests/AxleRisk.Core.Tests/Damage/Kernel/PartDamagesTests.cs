using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Numerics.Vectors;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

/// <summary>The closed forms in single precision against the incomplete gamma functions of the scalar code.</summary>
public class PartDamagesTests
{
    private const int Rows = 256;

    // Single precision, of which the difference at the knee may lose a factor of 40.
    private const double Tolerance = 2e-5;

    public static TheoryData<int, int, double> Slopes => new()
    {
        { 3, 5, 0 },
        { 3, 5, 0.549 },
        { 4, 5, 0 },
        { 5, 9, 0 },
        { 5, 9, 0.3 },
        { 2, 3, 0 },
        { 1, 8, 0.9 },
        { 6, 13, 0 },
    };

    [Theory]
    [MemberData(nameof(Slopes))]
    public void The_damage_of_a_part_is_that_of_the_scalar_code_from_far_below_the_knee_to_far_above(int above, int below, double cutOff)
    {
        // Knee at 1 MPa and damage 1 there: the units of the parts.
        var curve = Curves.TwoSlopes(above, 1, below, 1, 1, cutOff);
        foreach (int part in new[] { RangeParts.Exponential, RangeParts.FirstRayleigh })
        {
            int shape = part == RangeParts.Exponential ? 1 : 2;
            double[] scales = [.. Enumerable.Range(0, Rows).Select(i => Math.Pow(10, -2.5 + 5.0 * i / (Rows - 1)))];
            float[] damages = Damages<FloatLanes256>(scales, part, new(new(above, below), shape), (float)cutOff);
            Assert.Equal(damages, Damages<FloatLanes512>(scales, part, new(new(above, below), shape), (float)cutOff), Near);
            Assert.Equal(damages, Damages<FloatLanes128>(scales, part, new(new(above, below), shape), (float)cutOff), Near);
            for (int i = 0; i < Rows; i++)
            {
                double expected = 3 * WeibullRanges.DamagePerCycle((float)scales[i], shape, curve);

                // exp(-y) is not a normal number of single precision beyond y = 87; such ranges far below a cut-off do no damage
                // to speak of.
                if (expected > 1e-30)
                {
                    Assert.InRange(damages[i] / expected, 1 - Tolerance - Bent(scales[i], cutOff, shape),
                        1 + Tolerance + Bent(scales[i], cutOff, shape));
                }
                else
                {
                    Assert.InRange(damages[i], 0, 1e-29);
                }
            }
        }
    }

    private static bool Near(float a, float b) => Math.Abs(a - b) <= 2e-6 * Math.Abs(a) + 1e-35;

    // exp(-y) magnifies the rounding of its argument y = (cut-off / scale)^h by y, where it alone is left.
    private static double Bent(double scale, double cutOff, int shape) => 1e-6 * Math.Pow(cutOff / scale, shape);

    private static float[] Damages<T>(double[] scales, int part, PartIntegral integral, float cutOff)
        where T : struct, IFloatLanes<T>
    {
        var parts = new RangeParts(Rows);
        var cutOffs = new AlignedBuffer<float>(Rows);
        var sum = new AlignedBuffer<float>(Rows);
        for (int i = 0; i < Rows; i++)
        {
            (parts.Weight(part, i), parts.Scale(part, i), parts.Inverse(part, i)) = (3, (float)scales[i], 1 / (float)scales[i]);
            cutOffs.At(i) = cutOff;
        }

        PartDamages.Add<T>(parts, part, integral, ref cutOffs.At(0), cutOff > 0, Rows, ref sum.At(0));
        return sum.Span.ToArray();
    }
}
