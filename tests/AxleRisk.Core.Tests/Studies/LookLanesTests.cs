using System.Runtime.Intrinsics;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Scenarios;
using Xunit;

namespace AxleRisk.Core.Tests.Studies;

/// <summary>Depths, detection and likelihoods of eight cracks at a time against those of one, which have tests of their own.</summary>
public sealed class LookLanesTests
{
    private static readonly Vector512<double> Fractions = Vector512.Create(0, 1e-6, 0.1, 0.37, 0.5, 0.81, 0.999, 1);

    public static TheoryData<string> Depths => ["Paris and Erdogan, m = 3", "m = 5", "m = 2", "the user's own"];

    [Theory]
    [MemberData(nameof(Depths))]
    public void A_depth_is_that_of_one_crack(string name)
    {
        CrackDepth depth = Named(name);
        Vector512<double> ln = depth.LnAt(Fractions);
        Assert.All(Enumerable.Range(0, 8), lane => Assert.Equal(Math.Log(depth.At(Fractions[lane])), ln[lane], 1e-13));
        Assert.Equal(Math.Log(depth.WallMm), depth.LnAt(Vector512.Create(7.0))[0], 1e-14);
    }

    [Theory]
    [InlineData(false, null, 0)]
    [InlineData(true, null, 0)]
    [InlineData(true, 3.0, 0.4)]
    public void A_likelihood_is_that_of_one_crack(bool isFound, double? depthMm, double deviation)
    {
        foreach (DetectionCurve curve in (DetectionCurve[])[new(1.5, 4), new(0.4, 0.41), new(2, 2)])
        {
            var look = new CrackLook(new InspectionMethod("dye", curve, 0, 0, []), 1, isFound, depthMm, deviation);
            foreach (string name in Depths.Select(d => d.Data))
            {
                CrackDepth depth = Named(name);
                Vector512<double> likelihood = look.Likelihood(depth.LnAt(Fractions));
                Assert.All(Enumerable.Range(0, 8), lane =>
                    Assert.Equal(look.Likelihood(depth.At(Fractions[lane])), likelihood[lane], 1e-11));
            }
        }
    }

    private static CrackDepth Named(string name) => name switch
    {
        "m = 5" => new(0.2, 6, 5),
        "m = 2" => new(0.2, 6, 2),
        "the user's own" => new(new CrackCurve([0, 0.3, 1], [0.2, 0.9, 6], "")),
        _ => new(0.2, 6, 3),
    };
}
