using AxleRisk.Core.Analyses.Learning;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Benchmarks;

/// <summary>
/// The light truck of the fourth story over many truths: how often the band of the failure probability holds the truth, and how wide it
/// is beside that of a Weibull fit to the same returns.
/// </summary>
internal static class LightTruckStudy
{
    private const long Evaluations = 1_048_576;

    /// <summary>The seed of the files that are shipped.</summary>
    private const ulong Shipped = 1;

    /// <summary>Writes the data of the shipped seed beside the scenario and prints the truth.</summary>
    public static void Write()
    {
        var truck = new LightTruck(BenchmarkScenario.Read("light-truck"), Shipped);
        truck.Write(Path.Combine(BenchmarkScenario.Folder, "light-truck"));
        Console.WriteLine($"stress factor {truck.StressFactor}, damage ratio {truck.DamageRatio}, weld category {truck.Category}, "
            + $"walls {LightTruck.WallMean} mm with sd {LightTruck.WallSpread} mm: P(required) {Probability(truck)}");
    }

    /// <summary>Learns from the data of many truths and prints how it went.</summary>
    /// <param name="truths">How many.</param>
    public static void Print(int truths)
    {
        Scenario stated = BenchmarkScenario.Read("light-truck");
        Console.WriteLine("| seed | failures | truth, % | after learning, % | Weibull alone, % | ratio of widths | misfit p |");
        Console.WriteLine("| --- | --- | --- | --- | --- | --- | --- |");
        int held = 0, weibullHeld = 0, refused = 0;
        List<double> ratios = [];
        for (ulong seed = 1; seed <= (ulong)truths; seed++)
        {
            var truck = new LightTruck(stated, seed);
            Scenario seen = truck.Seen();
            double truth = Probability(truck);
            LearnResult result;
            try
            {
                result = LearnAnalysis.Run(new LifeModel(seen), new LearnQuestion([]), new StudySettings(Evaluations, seed, "sobol"),
                    new RunOptions { Threads = Environment.ProcessorCount });
            }
            catch (StudyException e)
            {
                refused++;
                Console.WriteLine($"| {seed} | {seen.Field.Failures} | {100 * truth:0.00} | {e.Message} | | | |");
                continue;
            }

            int at = result.Curve.Select(c => c.DistanceKm).ToList().IndexOf(seen.RequiredKm);
            var after = result.Curve[at].After;
            held += after.Low <= truth && truth <= after.High ? 1 : 0;
            string alone = "too few failures", ratio = "";
            if (!result.Data.OfWeibull.IsEmpty)
            {
                var weibull = result.Data.OfWeibull[at];
                weibullHeld += weibull.Low <= truth && truth <= weibull.High ? 1 : 0;
                ratios.Add((after.High - after.Low) / (weibull.High - weibull.Low));
                (alone, ratio) = ($"{100 * weibull.Low:0.00} to {100 * weibull.High:0.00}", $"{ratios[^1]:0.000}");
            }

            Console.WriteLine($"| {seed} | {seen.Field.Failures} | {100 * truth:0.00} | {100 * after.Low:0.00} to {100 * after.High:0.00} "
                + $"| {alone} | {ratio} | {result.Misfit.PValue:0.00} |");
        }

        ratios.Sort();
        Console.WriteLine();
        Console.WriteLine(
            $"The 95 % band after learning holds the truth in {held} of {truths - refused}; that of the Weibull in {weibullHeld} of "
            + $"{ratios.Count}. {refused} refused. Ratio of widths: median {ratios[ratios.Count / 2]:0.000}, widest {ratios[^1]:0.000}, "
            + $"at most half in {ratios.Count(r => r <= 0.5)} of {ratios.Count}.");
    }

    private static double Probability(LightTruck truck) => RiskAnalysis.Run(
        truck.Truth, new StudySettings(65_536, 1, "sobol"), new RiskQuestion(), new RunOptions()).Result.AtRequired.Probability.Estimate;
}
