using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Randomness;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Tests.Fixtures;

/// <summary>
/// Single lives of the log-linear vehicle with a crack, drawn one by one: every look is drawn, and those are kept whose looks saw what the
/// evidence says. Brute force, by the formulas written out.
/// </summary>
internal static class SeenLives
{
    public static readonly InspectionMethod Dye = new("dye", new DetectionCurve(1.5, 4), 0.03, 20, []);

    /// <summary>The vehicle with a crack of 0.2 mm, and what was seen of it.</summary>
    public static Scenario Scenario(Evidence evidence) => LogLinear.Scenario with
    {
        Crack = new Crack(),
        Inputs = [.. LogLinear.Scenario.Inputs, new("crack.initial_depth_mm", Quantities.InitialDepth, null, new Value.Certain(0.2), false)],
        Inspections = [Dye],
        Evidence = evidence,
    };

    /// <summary>It has come so far whole, and looks found nothing.</summary>
    public static Evidence Clean(double wholeKm, params IEnumerable<double> looksKm) => new()
    {
        Life = new LifeEvidence.Survived(wholeKm),
        Looks = [.. looksKm.Select(km => new CrackLook(Dye, km, false, null, 0))],
    };

    /// <summary>The probability that a look finds the crack at a fraction of life.</summary>
    public static double Finds(double fraction)
    {
        double wall = LogLinear.Scenario.Find(Quantities.Wall)!.Value.Nominal;
        double mm = Math.Pow(Math.Pow(0.2, -0.5) + (fraction * (Math.Pow(wall, -0.5) - Math.Pow(0.2, -0.5))), -2);
        return StandardNormal.Cumulative(Math.Log(mm / 1.5) / (Math.Log(4 / 1.5) / 1.2815515655446004));
    }

    /// <summary>
    /// Draws lives and hands over those that were seen so: the life, the ratio that it has in common with a repaired one, km, and a uniform
    /// stream by number.
    /// </summary>
    public static void Draw(Evidence evidence, int lives, Action<double, double, Func<int, double>> take)
    {
        const int streams = 16;
        double[][] u = [.. Enumerable.Range(0, streams).Select(stream =>
        {
            var column = new double[lives];
            new RandomStream(new StreamKey(20261128, $"seen{stream}")).FillUnit(0, column);
            return column;
        })];
        ImmutableArray<CrackLook> looks = evidence.Looks;
        double whole = ((LifeEvidence.Survived)evidence.LifeWithLooks!).Km;
        for (int i = 0; i < lives; i++)
        {
            double median = LogLinear.MedianKm * Math.Exp(LogLinear.RatioSigma * StandardNormal.Quantile(u[0][i]));
            double life = median * Math.Exp(LogLinear.ScaleSigma * StandardNormal.Quantile(u[1][i]));
            bool isSo = life > whole;
            for (int k = 0; k < looks.Length && isSo; k++)
            {
                isSo = u[2 + k][i] < Finds(looks[k].Km / life) == looks[k].IsFound;
            }

            if (isSo)
            {
                int row = i;
                take(life, median, stream => u[2 + looks.Length + stream][row]);
            }
        }
    }

    /// <summary>A count among others within five standard errors of an estimate and half its interval.</summary>
    public static void Within(Interval told, double count, double of)
    {
        double p = count / of, error = (5 * Math.Sqrt(p * (1 - p) / of)) + (told.High - told.Low) + 1e-9;
        Xunit.Assert.InRange(told.Estimate, p - error, p + error);
    }
}
