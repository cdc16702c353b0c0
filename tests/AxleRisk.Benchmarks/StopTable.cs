using AxleRisk.Core.Damage.BumpStops;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Rides;
using AxleRisk.Core.Damage.Roads;
using AxleRisk.Core.Damage.Spectra;
using AxleRisk.Core.Damage.TimeDomain;
using AxleRisk.Core.Randomness;

namespace AxleRisk.Benchmarks;

/// <summary>
/// The strikes on the bump stop: the fast model against simulation in time over roads, clearances and stops, as a Markdown table.
/// </summary>
internal static class StopTable
{
    private const int Periods = 4;
    private const double ContactLength = 0.18;
    private const double StressPerForce = 0.012;
    private static readonly double[] StopRates = [300e3, 800e3];
    private static readonly SnConstants Curve = SnCatalogue.Find("DNV-RP-C203", "E")!.Mean.Constants;

    /// <summary>Measures and prints.</summary>
    public static void Print()
    {
        Console.WriteLine("| class | km/h | clearance, mm | strikes a km, Rice | counted | fast over simulated, stop 300 N/mm | stop 800 N/mm | what strikes add, 800 N/mm |");
        Console.WriteLine("| --- | --- | --- | --- | --- | --- | --- | --- |");
        foreach (char letter in "DE")
        {
            foreach (double kmPerHour in (double[])[50, 80])
            {
                foreach (double clearanceMm in (double[])[40, 60, 80])
                {
                    Console.WriteLine(Row(letter, kmPerHour, clearanceMm));
                }
            }
        }
    }

    private static string Row(char letter, double kmPerHour, double clearanceMm)
    {
        RideParameters car = ReferenceTable.Car;
        double speed = kmPerHour / 3.6, roughness = RoadClass.Find(letter)!.MeanM3, kmPerSecond = kmPerHour / 3600;
        var road = new double[RecordGrid.Bins];
        RoadAmplitudes.Fill(speed, ContactLength, roughness, 2, road);
        var linear = new SurfaceQuestion(car, new RideLimits { BumpClearanceM = clearanceMm / 1000 }, road, StressPerForce, Curve);
        SurfaceResult[] simulated = new SurfaceSimulation().Run(
            [linear, .. StopRates.Select(rate => linear with { Limits = linear.Limits with { BumpStopNPerM = rate } })],
            new RandomStream(new StreamKey(1, $"strikes {letter} {kmPerHour}")), Periods);
        Span<double> spectrum = stackalloc double[FrequencyGrid.Points];
        ForceSpectrum.FillRide(car, spectrum);
        var gains = new RideGains[FrequencyGrid.Points];
        ModeMoments.FillGains(car, gains);
        ModeMoments moments = ModeMoments.OnRoad(gains, speed, ContactLength, roughness, 2);
        double plain = DamageRate.PerSecond(
            ForceSpectrum.OnRoad(spectrum, speed, ContactLength, roughness, 2), StressPerForce, Curve, CountingMethod.Dirlik);
        double Fast(double rate) =>
            plain + StrikeDamage.PerSecond(car, moments, new BumpStop(clearanceMm / 1000, rate), StressPerForce, Curve);
        double rice = new StrikeLoad(car, moments, new BumpStop(clearanceMm / 1000, 1)).PerSecond / kmPerSecond;
        string ratios = string.Join(" | ",
            StopRates.Select((rate, i) => $"{Fast(rate) / simulated[i + 1].DamagePerSecond.Average():0.000}"));
        double added = simulated[^1].DamagePerSecond.Average() / simulated[0].DamagePerSecond.Average() - 1;
        return $"| {letter} | {kmPerHour} | {clearanceMm} | {rice:0.0} | {simulated[0].BumpStrikesPerSecond / kmPerSecond:0.0} | {ratios} | {100 * added:0.0} % |";
    }
}
