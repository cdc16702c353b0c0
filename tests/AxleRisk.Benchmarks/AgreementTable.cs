using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Rides;
using AxleRisk.Core.Damage.Roads;
using AxleRisk.Core.Damage.Sections;
using AxleRisk.Core.Damage.Spectra;
using AxleRisk.Core.Damage.TimeDomain;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Randomness;

namespace AxleRisk.Benchmarks;

/// <summary>The spectral model against simulation in time over road classes and speeds, as a Markdown table.</summary>
internal static class AgreementTable
{
    private const int Periods = 20;
    private const double ContactLength = 0.2;

    // 240 mm from a tube of 95 x 6 mm.
    private static readonly double Stress = BendingStress.PerForce(1, 240, SectionModulus.Tube(95, 6));
    private static readonly SnConstants Curve = SnCatalogue.Find("DNV-RP-C203", "E")!.Mean.Constants;

    /// <summary>Measures and prints.</summary>
    public static void Print()
    {
        RideParameters car = ReferenceTable.Car;
        double weight = RideLimits.StaticTyreForce(car);
        var linear = new RideLimits { StaticTyreForceN = weight };
        var simulation = new SurfaceSimulation();
        Console.WriteLine("| class | km/h | tyre force RMS over static | lift-offs a km (Rice) | off ground | fast over linear | lift-off over linear | fast over lift-off |");
        Console.WriteLine("| --- | --- | --- | --- | --- | --- | --- | --- |");
        foreach (char letter in "BCDE")
        {
            foreach (double speed in (double[])[20, 50, 80])
            {
                double roughness = RoadClass.Find(letter)!.MeanM3;
                SpectralMoments force = Moments(car, speed / 3.6, roughness),
                    tyre = Moments(car with { OutboardShare = 0 }, speed / 3.6, roughness);
                double fast = DamageRate.PerSecond(force, Stress, Curve, CountingMethod.Dirlik);
                var road = new double[RecordGrid.Bins];
                RoadAmplitudes.Fill(speed / 3.6, ContactLength, roughness, 2, road);
                var question = new SurfaceQuestion(car, linear, road, Stress, Curve);
                SurfaceResult[] results = simulation.Run(
                    [question, question with { Limits = linear with { LiftsOff = true } }],
                        new RandomStream(new StreamKey(1, $"{letter} {speed}")), Periods);
                double perKm = tyre.UpCrossingsPerSecond * Math.Exp(-0.5 * weight * weight / tyre.M0) * 3600 / speed;
                double[][] sums = [.. Enumerable.Range(0, RecordBatch.Records)
                    .Select(i => new[] { results[0].DamagePerSecond[i], results[1].DamagePerSecond[i] })];
                Console.WriteLine(
                    $"| {letter} | {speed} | {tyre.Rms / weight:0.000} | {(perKm < 0.001 ? "below 0.001" : perKm.ToString("0.000"))} | {100 * results[1].OffGroundShare:0.000} % | "
                    + $"{Show(Jackknife.Estimate(sums, s => fast * sums.Length / s[0]))} | {Show(Jackknife.Estimate(sums, s => s[1] / s[0]))} | "
                    + $"{Show(Jackknife.Estimate(sums, s => fast * sums.Length / s[1]))} |");
            }
        }
    }

    private static SpectralMoments Moments(in RideParameters ride, double speed, double roughness)
    {
        Span<double> spectrum = stackalloc double[FrequencyGrid.Points];
        ForceSpectrum.FillRide(ride, spectrum);
        return ForceSpectrum.OnRoad(spectrum, speed, ContactLength, roughness, 2);
    }

    private static string Show(Interval x) => $"{x.Estimate:0.000} ({x.Low:0.000} to {x.High:0.000})";
}
