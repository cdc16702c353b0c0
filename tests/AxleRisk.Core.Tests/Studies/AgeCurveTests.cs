using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Damage;
using Xunit;

namespace AxleRisk.Core.Tests.Studies;

/// <summary>The integral of a rate that changes with age.</summary>
public class AgeCurveTests
{
    private const int Rows = 11;

    // The integral of a e^(b x) in closed form; its logarithm is straight, so that the curve follows it exactly.
    [Theory]
    [InlineData(0)]
    [InlineData(1e-9)]
    [InlineData(0.3)]
    [InlineData(-0.7)]
    [InlineData(2.5)]
    public void An_exponential_rate_has_its_closed_form(double growth)
    {
        AgeGrid ages = AgeGrid.At(0, 1, 2, 4, 10);
        AgeCurve curve = Of(ages, x => 3 * Math.Exp(growth * x));
        foreach (double km in new[] { 1e-6, 0.3, 0.5, 1, 1.7, 2, 3, 9.99, 10 })
        {
            Near.Relative(growth == 0 ? 3 * km : 3 * Math.Exp(growth * km / 2) * Math.Sinh(growth * km / 2) / (growth / 2),
                curve.Used(0, km), 1e-9);
        }

        Near.Relative(curve.Used(0, 10) + 5 * 3 * Math.Exp(growth * 10), curve.Used(0, 15), 1e-12);
    }

    // Rates as (1 - c x)^-5, a wall that rusts away under a slope of 5, and exp(-k/(1 + c x)^2), a level that comes nearer,
    // against 2000 slices. Nine
    // ages with straight lines in between (what stood here before) are off by 0.7 % and 27 %, 6 % and 10 %, 88 % and 710 %.
    [Theory]
    [InlineData("rust", 0.06, 0.0001, 0.002)]
    [InlineData("rust", 0.15, 0.0005, 0.12)]
    [InlineData("yield", 10, 0.006, 0.13)]
    [InlineData("yield", 40, 0.025, 0.5)]
    public void Five_ages_give_the_integral_of_rust_and_of_yield(string kind, double much, double toRequired, double toLast)
    {
        double Rate(double x) => kind == "rust" ? Math.Pow(1 - much * x, -5) : Math.Exp(-much / Math.Pow(1 + 0.2 * x, 2));
        AgeCurve curve = Of(AgeGrid.Over(1), Rate);
        foreach (double km in new[] { 0.25, 0.5, 0.75, 1 })
        {
            Near.Relative(Slices(Rate, km), curve.Used(0, km), toRequired);
        }

        foreach (double km in new[] { 1.5, 2, 3, 4, 5 })
        {
            Near.Relative(Slices(Rate, km), curve.Used(0, km), toLast);
        }
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(12)]
    [InlineData(47)]
    [InlineData(300)]
    public void The_distance_of_a_target_is_the_inverse_of_the_integral(double target)
    {
        AgeCurve curve = Of(AgeGrid.At(0, 5, 10, 20), x => x < 1 ? 1 : x < 6 ? 3 : x < 11 ? 2 : 0.5);
        Near.Relative(target, curve.Used(0, curve.Inverse(0, target)), 1e-9);
    }

    [Fact]
    public void All_rows_at_once_are_as_each_alone()
    {
        AgeGrid ages = AgeGrid.Over(100);
        var curve = new AgeCurve(ages, Rows);
        var ends = new double[16];
        for (int row = 0; row < Rows; row++)
        {
            ends[row] = row == 4 ? 130 : double.PositiveInfinity;
            for (int age = 0; age < ages.Km.Length; age++)
            {
                curve.Rates[age][row] = row == 4 && age > 2 ? double.PositiveInfinity : row == 3 ? 0 : Math.Exp(row - 5 + 0.3 * row * age);
            }
        }

        curve.Fill(Rows, ends);
        var used = new double[Rows];
        var targets = new double[16];
        var lives = new double[16];
        foreach (double target in new[] { 1e-6, 1, 30, 400, 3e4 })
        {
            Array.Fill(targets, target);
            curve.FillInverse(Rows, targets, lives);
            for (int row = 0; row < Rows; row++)
            {
                Assert.True(curve.Inverse(row, target).Equals(lives[row]) || Math.Abs(lives[row] / curve.Inverse(row, target) - 1) < 1e-12,
                    $"row {row}, {target}");
            }
        }

        foreach (double km in new[] { 0, 1, 40, 50, 77, 100, 131, 499, 500, 900 })
        {
            curve.FillUsed(Rows, km, used);
            for (int row = 0; row < Rows; row++)
            {
                Assert.True(curve.Used(row, km).Equals(used[row]) || Math.Abs(used[row] / curve.Used(row, km) - 1) < 1e-13,
                    $"row {row}, {km} km");
            }
        }
    }

    [Fact]
    public void No_wall_left_ends_the_life_at_that_distance_and_not_at_the_next_age()
    {
        AgeCurve curve = Of(AgeGrid.At(0, 5, 10), x => x < 10 ? 1 : double.PositiveInfinity, ends: 8);
        Assert.Equal(8, curve.Inverse(0, 1e6));
        Near.Relative(7.9, curve.Used(0, 7.9), 1e-12);
        Assert.Equal(double.PositiveInfinity, curve.Used(0, 8.1));
        Assert.Equal(double.PositiveInfinity, curve.Used(0, 11));
    }

    [Fact]
    public void A_vehicle_that_stays_as_it_is_has_one_rate()
    {
        AgeCurve curve = Of(AgeGrid.Unchanged, _ => 0.25);
        Assert.Equal(10, curve.Used(0, 40));
        Assert.Equal(40, curve.Inverse(0, 10));
        Assert.Equal(double.PositiveInfinity, Of(AgeGrid.Unchanged, _ => 0).Inverse(0, 1));
        Assert.Equal(0, Of(AgeGrid.Unchanged, _ => double.PositiveInfinity).Inverse(0, 1));
    }

    private static AgeCurve Of(AgeGrid ages, Func<double, double> rate, double ends = double.PositiveInfinity)
    {
        var curve = new AgeCurve(ages, 1);
        for (int age = 0; age < ages.Km.Length; age++)
        {
            curve.Rates[age][0] = rate(ages.Km[age]);
        }

        curve.Fill(1, double.IsFinite(ends) ? [.. Enumerable.Repeat(ends, 16)] : null);
        return curve;
    }

    private static double Slices(Func<double, double> rate, double km) =>
        Enumerable.Range(0, 2000).Sum(i => rate((i + 0.5) / 2000 * km)) / 2000 * km;
}
