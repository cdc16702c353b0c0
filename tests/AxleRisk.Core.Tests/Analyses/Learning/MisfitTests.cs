using AxleRisk.Core.Analyses.Learning;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Learning;

/// <summary>Records against a model of which next to nothing is unknown: expected failures are sums of -ln survival.</summary>
public class MisfitTests
{
    private static readonly Input Known = new("fatigue.damage_ratio", Quantities.DamageRatio, null,
        new Value.Uncertain(new Lognormal(LearnCase.Ratio, 1e-5), Knowledge.Unknown), false);

    // Three failures make one class of distance; chance alone draws Poisson counts, 400 of them: four standard errors are 0.1 at most.
    [Fact]
    public void Seen_expected_and_the_p_value_of_one_class_are_those_by_hand()
    {
        FieldRecord[] records =
        [
            Of(60_000, 60_000, 1, "a"), Of(85_000, 85_000, 1, "a"), Of(110_000, 110_000, 1, "b"),
            Of(80_000, double.PositiveInfinity, 50, "a"), Of(120_000, double.PositiveInfinity, 40, "b"),
        ];
        MisfitResult told = Run(records);
        double ofA = Hazard(60_000) + Hazard(85_000) + (50 * Hazard(80_000)), ofB = Hazard(110_000) + (40 * Hazard(120_000));
        MisfitCount only = Assert.Single(told.ByDistance);
        Assert.Equal((0, 120_000, 3), (only.FromKm, only.ToKm, only.Seen));
        Assert.Equal(ofA + ofB, only.Expected, 1e-3);
        Assert.Equal(PValue(3, ofA + ofB), told.PValue, 0.1);
        Assert.InRange(told.PValue, 0.1, 0.4);
        Assert.Equal(["a", "b"], told.ByGroup.Select(g => g.Name));
        Assert.Equal([52, 41], told.ByGroup.Select(g => g.Vehicles));
        Assert.Equal([2, 1], told.ByGroup.Select(g => g.Seen));
        Assert.Equal(ofA, told.ByGroup[0].Expected, 1e-3);
        Assert.Equal(ofB, told.ByGroup[1].Expected, 1e-3);
        Assert.Equal(PValue(2, ofA), told.ByGroup[0].PValue, 0.1);
        Assert.Equal(PValue(1, ofB), told.ByGroup[1].PValue, 0.1);
        Assert.InRange(told.ByGroup[1].PValue, 0, 0.12);
    }

    // Where in the interval from a to b a vehicle failed is even in F: the mean of -ln(1 - F) is (G(b) - G(a)) / (b - a),
    // G(F) = (1 - F) ln(1 - F) + F. Half of what is expected of six that stop at the middle lies before the end of the first class.
    [Fact]
    public void Failures_known_by_an_interval_lie_in_it_evenly()
    {
        const double From = 100_000, To = 140_000;
        MisfitResult told = Run([Of(From, To, 4, "a"), Of(From, To, 2, "b")]);
        static double G(double f) => ((1 - f) * Math.Log(1 - f)) + f;
        (double a, double b) = (Failed(From), Failed(To));
        Assert.Equal(6, told.Seen, 1e-9);
        Assert.Equal(6 * (G(b) - G(a)) / (b - a), told.Expected, 0.01); // 400 draws of the place: four standard errors
        Assert.Equal(2, told.ByDistance.Length);
        Assert.Equal([4, 2], told.ByGroup.Select(g => Math.Round(g.Seen, 9)));
        Assert.All(told.ByGroup, g => Assert.Equal(g.Vehicles * (G(b) - G(a)) / (b - a), g.Expected, 0.01));
        double end = told.ByDistance[0].ToKm, step = To / 200;
        Assert.InRange(Hazard(0.5 * (From + To)) / 2, Hazard(end - (2 * step)), Hazard(end + step));
        Assert.Equal(6 * Hazard(end), told.ByDistance[0].Expected, 0.01); // a vehicle that fails before the end is exposed for less
        Assert.Equal(6 * Math.Max(0, Failed(end) - a) / (b - a), told.ByDistance[0].Seen, 0.05);
        Assert.Equal((end, To), (told.ByDistance[1].FromKm, told.ByDistance[1].ToKm));
    }

    private static MisfitResult Run(FieldRecord[] records) => LearnAnalysis.Run(
        LearnCase.Model(new FieldData("f.csv", [.. records]), Known),
        new LearnQuestion([.. Enumerable.Range(1, 14).Select(i => 10_000.0 * i)]),
        new StudySettings(LearnAnalysis.LeastEvaluations, 1, "sobol"), new RunOptions()).Misfit;

    private static FieldRecord Of(double from, double to, double vehicles, string group) => new(from, to, vehicles, group, [], 2);

    private static double Failed(double km) => StandardNormal.Cumulative(Math.Log(km / LearnCase.MedianKm) / LearnCase.Sigma);

    private static double Hazard(double km) => -Math.Log(1 - Failed(km));

    // P(|N - mean| >= |seen - mean|), N of Poisson.
    private static double PValue(double seen, double mean)
    {
        double sum = 0, term = Math.Exp(-mean);
        for (int n = 0; n < 100; term *= mean / ++n)
        {
            sum += Math.Abs(n - mean) >= Math.Abs(seen - mean) ? term : 0;
        }

        return sum;
    }
}
