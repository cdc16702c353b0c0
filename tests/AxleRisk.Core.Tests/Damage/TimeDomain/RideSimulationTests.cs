using System.Numerics;
using AxleRisk.Core.Damage.Rides;
using AxleRisk.Core.Damage.TimeDomain;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Randomness;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

/// <summary>Records of a random road through the simulation.</summary>
public class RideSimulationTests
{
    // Vehicle and road of the closed-form variances: class C at 20 m/s, no tyre damping.
    private static readonly RideParameters Car = new(750, 140, 45e3, 3800, 420e3, 0, 0);
    private const int Rate = 512;

    [Fact]
    public void The_profile_has_the_variance_of_its_density()
    {
        double[] amplitudes = Road(20);
        Complex[] coefficients = RoadRecord.Coefficients(amplitudes, Ones(), 1, 0);
        var profile = new double[RecordGrid.BaseSamples];
        RoadRecord.Fill(coefficients, profile);
        // All coefficients 1 + i: each sinusoid has its mean variance. The trapezoid sum and the exact integral of n^-2 over the band.
        double exact = 256e-6 * 0.01 * 20 * (1 / 0.25 - 1 / 50.0);
        Near.Relative(exact, profile.Sum(z => z * z) / profile.Length, 1e-3);
    }

    // The first state comes from the closed form in frequency, the last from the steps: two computations of one state. The cubic through
    // the samples is of fourth order, and the road's 50 Hz is the coarsest part of it: 2e-5 of the state at 512 Hz.
    [Fact]
    public void A_linear_ride_is_back_in_its_first_state_after_one_period()
    {
        double coarse = Gap(256), fine = Gap(512);
        Assert.True(fine < 5e-5, $"{fine}");
        Assert.True(fine < coarse / 8, $"{coarse} then {fine}");

        static double Gap(int rate)
        {
            (double[] input, double[] state) = Record(Car, rate, 1);
            double[] first = [.. state];
            RideSimulation.Run(Car, RideLimits.None, input, 1.0 / rate, state, [], [], []);
            return Math.Sqrt(first.Zip(state, (x, y) => (x - y) * (x - y)).Sum() / first.Sum(x => x * x));
        }
    }

    // Lyapunov equation of the two-mass ride on white road velocity, closed form: travel 10.878977 mm, tyre force 1980.4441 N, body
    // acceleration 1.3637594 m/s^2. The band 0.25 to 50 Hz holds all but 0.6 % of them; eight records of 64 s have a standard error of 1 %.
    [Fact]
    public void Random_records_have_the_closed_form_variances()
    {
        const int records = 8;
        double travel = 0, force = 0, acceleration = 0;
        for (int r = 0; r < records; r++)
        {
            (double[] input, double[] state) = Record(Car with { OutboardShare = 1 }, Rate, r);
            double[] f = new double[input.Length], d = new double[input.Length], t = new double[input.Length];
            RideSimulation.Run(Car with { OutboardShare = 1 }, RideLimits.None, input, 1.0 / Rate, state, f, d, t);
            travel += d.Average(x => x * x) / records;
            force += t.Average(x => x * x) / records;
            acceleration += f.Average(x => x * x) / (750 * 750.0) / records;
        }
        Near.Relative(10.878977e-3, Math.Sqrt(travel), 0.03);
        Near.Relative(1980.4441, Math.Sqrt(force), 0.03);
        Near.Relative(1.3637594, Math.Sqrt(acceleration), 0.03);
    }

    // The error of the piecewise linear ride is of second order in the step: a quarter at half of it.
    [Fact]
    public void The_ride_with_stop_and_lift_off_converges_with_the_step()
    {
        var limits = new RideLimits
        {
            BumpClearanceM = 0.03,
            BumpStopNPerM = 300e3,
            StaticTyreForceN = 6000,
            LiftsOff = true,
            BumpDamping = 0.7,
            ReboundDamping = 1.3,
        };
        double[] coarse = Forces(limits, 512), middle = Forces(limits, 1024), fine = Forces(limits, 2048);
        double first = Distance(coarse, middle), second = Distance(middle, fine);
        Assert.True(second < first / 3, $"{first} then {second}");
        Assert.True(second < 2e-3, $"{second} of the RMS at 1024 Hz");
    }

    private static double Distance(double[] a, double[] b)
    {
        int every = b.Length / a.Length;
        return Math.Sqrt(a.Select((x, i) => (x - b[i * every]) * (x - b[i * every])).Average() / a.Average(x => x * x));
    }

    private static double[] Forces(RideLimits limits, int rate)
    {
        (double[] input, double[] state) = Record(Car, rate, 3, 4);
        var force = new double[input.Length];
        RideCounts counts = RideSimulation.Run(Car, limits, input, 1.0 / rate, state, force, [], []);
        Assert.True(counts.BumpStrikes > 10 && counts.SamplesOffGround > 10);
        return force;
    }

    private static (double[] Input, double[] State) Record(in RideParameters ride, int rate, int record, double roughness = 1)
    {
        double[] amplitudes = [.. Road(20).Select(a => a * Math.Sqrt(roughness))];
        var normals = new double[2 * RecordGrid.Bins];
        new RandomStream(new StreamKey(1, $"test record {record}")).FillUnit(0, normals);
        StandardNormal.Quantiles(normals, normals);
        Complex[] coefficients = RoadRecord.Coefficients(amplitudes, normals, ride.TyreNPerM, ride.TyreDampingNsPerM);
        var input = new double[RecordGrid.Seconds * rate];
        RoadRecord.Fill(coefficients, input);
        var state = new double[RideMatrix.States];
        RoadRecord.FirstState(ride, coefficients, state);
        return (input, state);
    }

    private static double[] Road(double speed)
    {
        var amplitudes = new double[RecordGrid.Bins];
        RoadAmplitudes.Fill(speed, 0, 256e-6, 2, amplitudes);
        return amplitudes;
    }

    private static double[] Ones() => [.. Enumerable.Repeat(1.0, 2 * RecordGrid.Bins)];
}
