using AxleRisk.Core.Numerics;
using Xunit;

namespace AxleRisk.Core.Tests.Numerics;

public sealed class SolverTests
{
    [Theory]
    [InlineData(0.1)]
    [InlineData(1.9)]
    [InlineData(0)] // on an end, and beyond both: the middle is taken
    [InlineData(2)]
    [InlineData(-7)]
    [InlineData(50)]
    [InlineData(double.NaN)]
    public void A_root_is_found_from_any_start_inside_the_bracket_alone(double start)
    {
        double root = RootFinder.Increasing(
            x =>
            {
                Assert.InRange(x, 0, 2);
                return ((x * x * x) - 2, 3 * x * x);
            },
            0, 2, start);
        Assert.Equal(Math.Cbrt(2), root, 1e-15);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1e-9)] // steps far beyond the bracket
    [InlineData(1e9)] // steps that hardly move: they count as an answer, so only the bracket's side is kept
    [InlineData(-3)]
    public void A_wrong_slope_still_closes_the_bracket(double slope)
    {
        int calls = 0;
        double root = RootFinder.Increasing(
            x =>
            {
                calls++;
                return (Math.Atan(x - 0.3), slope);
            },
            -4, 5, slope > 1 ? 0.3 : 4);
        Assert.Equal(0.3, root, slope < 0 ? 1e-3 : 1e-14);
        Assert.InRange(calls, 1, 200);
    }

    [Fact]
    public void Newton_needs_few_steps_and_the_root_itself_none()
    {
        int calls = 0;
        (double, double) Square(double x)
        {
            calls++;
            return ((x * x) - 4, 2 * x);
        }

        Assert.Equal(2, RootFinder.Increasing(Square, 0, 10, 2));
        Assert.Equal(1, calls);
        calls = 0;
        Assert.Equal(2, RootFinder.Increasing(Square, 0, 10, 3), 1e-15);
        Assert.InRange(calls, 3, 6); // digits double: 1, 0.17, 6e-3, 9e-6, 2e-11, 1e-22
    }

    // Of the least of many, P(X <= e^u) = 1 - exp(-e^u): both tails are log-concave over u and have closed inverses.
    [Theory]
    [InlineData(1e-300)]
    [InlineData(1e-12)]
    [InlineData(0.2)]
    [InlineData(0.5)]
    public void A_tail_is_met_from_any_start_and_far_from_all_doubles_that_have_one(double p)
    {
        foreach (double start in (double[])[-400, -50, -1, 0, 1, 3, 6.5, 9, 60])
        {
            double lower = Math.Log(-LogExp.LogP1(-p)), upper = Math.Log(-Math.Log(p));
            Assert.Equal(lower, LogConcaveTail.Solve(new Exponential(1, new()), Math.Log(p), start), 1e-13 * (1 + Math.Abs(lower)));
            Assert.Equal(upper, LogConcaveTail.Solve(new Exponential(-1, new()), Math.Log(p), start), 1e-13 * (1 + Math.Abs(upper)));
        }
    }

    [Fact]
    public void Halleys_correction_makes_it_cubic()
    {
        // From an error e of ln x the next is about e^3 / 12 or less: 0.5, 1e-2, 1e-7, and a last look.
        foreach (double p in (double[])[1e-6, 0.1, 0.4])
        {
            var calls = new List<double>();
            LogConcaveTail.Solve(new Exponential(-1, calls), Math.Log(p), Math.Log(-Math.Log(p)) + 0.5);
            Assert.InRange(calls.Count, 2, 4);
        }
    }

    private readonly struct Exponential(int direction, List<double> calls) : ILogTail
    {
        public int Direction => direction;

        public (double Log, double Slope, double Bend) At(double u)
        {
            calls.Add(u);
            double x = Math.Exp(u);
            double lower = -LogExp.ExpM1(-x), upper = Math.Exp(-x);
            double slope = direction > 0 ? x * upper / lower : -x;
            return (Math.Log(direction > 0 ? lower : upper), slope, direction > 0 ? 1 - x - slope : 1);
        }
    }
}
