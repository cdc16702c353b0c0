using System.Numerics;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Rides;
using AxleRisk.Core.Damage.Spectra;
using AxleRisk.Core.Damage.TimeDomain;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Numerics.Vectors;
using AxleRisk.Core.Randomness;
using Xunit;

namespace AxleRisk.Core.Tests.Damage;

/// <summary>The fast simulation against the plain one, and its damage against the spectral model's.</summary>
public class SurfaceSimulationTests
{
    private static readonly RideParameters Car = new(600, 90, 45e3, 4000, 300e3, 200, 0.5);
    private static readonly SnConstants Curve = SnCatalogue.Find("DNV-RP-C203", "E")!.Mean.Constants;
    private static readonly RandomStream Stream = new(new StreamKey(1, "test"));

    private static readonly RideLimits Pieces = new()
    {
        BumpClearanceM = 0.03,
        BumpStopNPerM = 300e3,
        ReboundClearanceM = 0.04,
        ReboundStopNPerM = 200e3,
        StaticTyreForceN = RideLimits.StaticTyreForce(Car),
        LiftsOff = true,
        BumpDamping = 0.7,
        ReboundDamping = 1.3,
    };

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Each_of_the_sixteen_records_is_the_plain_one(bool pieces)
    {
        RideLimits limits = pieces ? Pieces : RideLimits.None;
        const int rate = 512;
        double[] road = Amplitudes(1024e-6, 50 / 3.6);
        var batch = new RecordBatch(rate);
        batch.Draw(Stream, 2);
        var states = new AlignedBuffer<double>(RideMatrix.States * RecordBatch.Records);
        batch.Make(road, Car, rate, states);
        var ride = new LaneRide(Car, limits, rate);
        const int samples = rate * RecordGrid.Seconds;
        foreach (int record in (int[])[0, 5, 8, 15])
        {
            Complex[] coefficients = RoadRecord.Coefficients(road, NormalsOf(record, 2), Car.TyreNPerM, Car.TyreDampingNsPerM);
            double[] input = new double[samples], plain = new double[samples], state = new double[RideMatrix.States];
            RoadRecord.Fill(coefficients, input);
            RoadRecord.FirstState(Car, coefficients, state);
            RideCounts counts = RideSimulation.Run(Car, limits, input, 1.0 / rate, state, plain, [], []);

            var force = new double[samples * LaneFourier.Lanes];
            var tallies = new LaneTallies();
            var lanes = new AlignedBuffer<double>(states.Length);
            states.Span.CopyTo(lanes.Span);
            ride.Run(batch, record & 8, 0, 1000, lanes, force, tallies);
            ride.Run(batch, record & 8, 1000, samples - 1000, lanes, force.AsSpan(1000 * LaneFourier.Lanes), tallies);
            double scale = plain.Max(Math.Abs);
            for (int i = 0; i < samples; i++)
            {
                Assert.Equal(plain[i], force[i * LaneFourier.Lanes + (record & 7)], 1e-9 * scale);
            }

            Assert.Equal(pieces, counts.BumpStrikes > 0 && counts.SamplesOffGround > 0);
            if (pieces)
            {
                Assert.Equal(counts.BumpStrikes, tallies.BumpStrikes.At(record & 7));
                Assert.Equal(counts.ReboundStrikes, tallies.ReboundStrikes.At(record & 7));
                Assert.Equal(counts.SamplesOffGround, tallies.OffGround.At(record & 7));
            }
        }
    }

    // Dirlik's density against counted cycles of a linear ride: the prototype of the model found 1.01 to 1.02 at 20 to 80 km/h. Sixteen
    // records of 384 s have a standard error of 1 to 1.5 %.
    [Theory]
    [InlineData(1024, 20)]
    [InlineData(1024, 80)]
    [InlineData(256, 50)]
    public void A_linear_ride_has_the_damage_of_the_spectral_model_within_5_percent(double roughness, double speed)
    {
        const double stress = 0.012;
        double[] road = Amplitudes(roughness * 1e-6, speed / 3.6);
        SurfaceResult result = new SurfaceSimulation().Run(
            [new SurfaceQuestion(Car, RideLimits.None, road, stress, Curve)], Stream, 6, TestContext.Current.CancellationToken)[0];
        Span<double> ride = stackalloc double[FrequencyGrid.Points];
        ForceSpectrum.FillRide(Car, ride);
        SpectralMoments moments = ForceSpectrum.OnRoad(ride, speed / 3.6, 0.18, roughness * 1e-6, 2);
        double fast = DamageRate.PerSecond(moments, stress, Curve, CountingMethod.Dirlik);
        Near.Relative(moments.Rms, result.ForceRmsN, 0.01);
        Near.Relative(result.DamagePerSecond.Average(), fast, 0.05);
    }

    [Fact]
    public void A_turning_point_of_a_parabola_is_found_exactly()
    {
        double At(double t) => 3 - 2 * (t - 0.3) * (t - 0.3);
        Assert.Equal(3, LaneCycles.Vertex(At(-1), At(0), At(1)), 1e-14);
        Assert.Equal(5, LaneCycles.Vertex(5, 5, 4));
    }

    [Fact]
    public void Rides_over_the_same_roads_share_their_chances()
    {
        double[] road = Amplitudes(1024e-6, 50 / 3.6);
        var question = new SurfaceQuestion(Car, RideLimits.None, road, 0.012, Curve);
        var simulation = new SurfaceSimulation();
        SurfaceResult[] two = simulation.Run([question, question], Stream, 1, TestContext.Current.CancellationToken);
        Assert.Equal(two[0].DamagePerSecond, two[1].DamagePerSecond);
        Assert.Equal(two[0].DamagePerSecond,
            simulation.Run([question], Stream, 1, TestContext.Current.CancellationToken)[0].DamagePerSecond);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task A_long_record_ends_within_a_block_of_its_cancellation(bool pieces)
    {
        // Days of driving: minutes of work, of which a few blocks are done.
        const int periods = 5_000;
        var question = new SurfaceQuestion(Car, pieces ? Pieces : RideLimits.None, Amplitudes(1024e-6, 50 / 3.6), 0.012, Curve);
        var simulation = new SurfaceSimulation();
        using var source = new CancellationTokenSource();
        Task run = Task.Factory.StartNew(
            () => simulation.Run([question], Stream, periods, source.Token), CancellationToken.None, TaskCreationOptions.LongRunning,
                TaskScheduler.Default);
        Assert.True(SpinWait.SpinUntil(() => simulation.SamplesDone > 0 || run.IsCompleted, TimeSpan.FromMinutes(1)));
        source.Cancel();
        long atCancellation = simulation.SamplesDone;
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => run);

        // The block under way is finished, and no other begun.
        Assert.InRange(simulation.SamplesDone - atCancellation, 0, SurfaceSimulation.BlockSize);
        Assert.True(simulation.SamplesDone > 0);

        // Nothing of what was cut short is left behind.
        double[] Damage(SurfaceSimulation of) => of.Run([question], Stream, 1, TestContext.Current.CancellationToken)[0].DamagePerSecond;
        Assert.Equal(Damage(new SurfaceSimulation()), Damage(simulation));
    }

    // A batch draws, by sinusoid, the cosine numbers of its sixteen records and then the sine numbers.
    private static double[] NormalsOf(int record, long batch)
    {
        var all = new double[2 * RecordGrid.Bins * RecordBatch.Records];
        Stream.FillUnit(batch * all.Length, all);
        StandardNormal.Quantiles(all, all);
        return [.. Enumerable.Range(0, 2 * RecordGrid.Bins).Select(i => all[(i * RecordBatch.Records) + record])];
    }

    private static double[] Amplitudes(double roughness, double speed)
    {
        var amplitudes = new double[RecordGrid.Bins];
        RoadAmplitudes.Fill(speed, 0.18, roughness, 2, amplitudes);
        return amplitudes;
    }
}
