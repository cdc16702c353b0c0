using System.Runtime.Intrinsics;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Numerics.Vectors;
using Xunit;

namespace AxleRisk.Core.Tests.Numerics.Vectors;

public sealed class VectorNormalTests
{
    /// <summary>The upper tail against that of MathNet.Numerics, which <see cref="StandardNormal"/> is tested by, down to 1e-300.</summary>
    [Fact]
    public void The_upper_tail_is_that_of_one_number()
    {
        for (double z = -40; z < 37; z += 0.37)
        {
            Vector512<double> upper = VectorNormal.Upper(Vector512.Create(z) + (Vector512<double>.Indices * 0.01));
            for (int lane = 0; lane < 8; lane++)
            {
                Assert.Equal(1, upper[lane] / StandardNormal.Upper(z + (0.01 * lane)), 2e-12);
            }
        }
    }

    [Fact]
    public void Beyond_all_numbers_there_is_nothing_or_everything_left()
    {
        Assert.Equal(1, VectorNormal.Upper(Vector512.Create(double.NegativeInfinity))[0]);
        Assert.Equal(0, VectorNormal.Upper(Vector512.Create(double.PositiveInfinity))[0], 1e-300);
    }
}
