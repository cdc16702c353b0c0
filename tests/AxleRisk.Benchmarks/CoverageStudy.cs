using System.Globalization;
using AxleRisk.Core.Analyses.RareEvents;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Benchmarks;

/// <summary>
/// How often the 95 % intervals contain the truth: the benchmark scenario with all factors certain but stress factor, Miner
/// sum and scatter, whose answer is a one-dimensional integral; 400 seeds a method.
/// </summary>
internal static class CoverageStudy
{
    private const int Repetitions = 400;
    private const long Evaluations = 2_000;
    private const double CommonKm = 150_000;
    private const double RareKm = 20_000;

    /// <summary>Runs the study and prints a table in Markdown.</summary>
    public static void Print()
    {
        var model = new LifeModel(OneDamageFactor());
        var truth = new Truth(model);
        Console.WriteLine($"| method | quantity | exact | contained in {Repetitions} | mean width over exact |");
        Console.WriteLine("| --- | --- | --- | --- | --- |");
        foreach ((RiskMethod method, string sampling) in new[]
        {
            (RiskMethod.Crude, "plain"), (RiskMethod.Crude, "sobol"), (RiskMethod.Conditional, "plain"),
            (RiskMethod.Conditional, "latin-hypercube"), (RiskMethod.Conditional, "sobol"),
        })
        {
            RiskResult[] runs = [.. Enumerable.Range(1, Repetitions).Select(seed => RiskAnalysis.Run(
                model, new StudySettings(Evaluations, (ulong)seed, sampling),
                new RiskQuestion { Method = method, DistancesKm = [CommonKm] }, new RunOptions()).Result)];
            string name = $"{method.ToString().ToLowerInvariant()}, {sampling}, {Evaluations} evaluations";
            Row(name, $"P({CommonKm:#,0} km)", truth.Probability(CommonKm),
                runs.Select(r => r.Distances.Single(d => d.DistanceKm == CommonKm).Probability));
            foreach (double percent in new[] { 1.0, 10, 50 })
            {
                Row(name, $"B{percent:0} life", truth.Life(percent / 100),
                    runs.Select(r => r.Lives.Single(l => l.Percent == percent).LifeKm));
            }
        }

        RareEventResult[] rare = [.. Enumerable.Range(1, Repetitions).Select(seed => RareEventAnalysis.Run(
            model, RareKm, new RareEventSettings((ulong)seed) { CrossCheck = true, TargetCov = 0.05 }, new RunOptions()))];
        Row("importance sampling, CoV 5 %", $"P({RareKm:#,0} km)", truth.Probability(RareKm), rare.Select(r => r.Probability));
        Row("subset simulation, 8 x 1000 a level", $"P({RareKm:#,0} km)", truth.Probability(RareKm),
            rare.Select(r => r.CrossCheck!.Probability));
    }

    private static void Row(string method, string quantity, double exact, IEnumerable<Interval> intervals)
    {
        Interval[] all = [.. intervals];
        int contained = all.Count(i => i.Low <= exact && exact <= i.High);
        double width = all.Average(i => i.High - i.Low) / exact;
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
                $"| {method} | {quantity} | {exact:G5} | {contained} ({100.0 * contained / all.Length:0.0} %) | {100 * width:0.0} % |"));
    }

    private static Scenario OneDamageFactor()
    {
        Scenario scenario = BenchmarkScenario.Read();
        Quantity[] kept = [Quantities.StressFactor, Quantities.MinerSum, Quantities.LifeScatter];
        return scenario with
        {
            Inputs = [.. scenario.Inputs.Select(i => kept.Contains(i.Quantity) ? i : i with
                { Value = new Value.Certain(i.Value.Nominal) })],
        };
    }

    /// <summary>
    /// The exact answer: the failure probability given the stress factor, integrated over its standard normal by the midpoint
    /// rule.
    /// </summary>
    private sealed class Truth
    {
        private const int Points = 40_000;
        private const double Reach = 8;

        private readonly double[] weights = new double[Points];
        private readonly double[] damages = new double[Points];
        private readonly LifeScale scale;

        public Truth(LifeModel model)
        {
            scale = model.Scale;
            Workspace workspace = model.CreateWorkspace(1);
            double[][] values = model.CreateColumns(1);
            Factor stress = model.Factors.Find("fatigue.stress_factor")!;
            foreach (Factor factor in model.Factors.Factors)
            {
                values[factor.FirstColumn][0] = factor.Median[0];
            }

            for (int i = 0; i < Points; i++)
            {
                double z = Reach * ((2 * (i + 0.5) / Points) - 1);
                weights[i] = StandardNormal.Density(z) * 2 * Reach / Points;
                values[stress.FirstColumn][0] = stress.Distribution!.Quantile(StandardNormal.Cumulative(z));
                model.Evaluate(values, 1, workspace);
                damages[i] = workspace.DamagePerKm[0];
            }
        }

        public double Probability(double km) => Enumerable.Range(0, Points).Sum(i => weights[i] * scale.FailureProbability(km, damages[i]));

        public double Life(double p)
        {
            (double low, double high) = (1.0, 1e12);
            while (high / low > 1 + 1e-9)
            {
                double middle = Math.Sqrt(low * high);
                (low, high) = Probability(middle) < p ? (middle, high) : (low, middle);
            }

            return low;
        }
    }
}
