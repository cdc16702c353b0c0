using System.Collections.Immutable;
using System.Diagnostics;
using AxleRisk.Core.Analyses.Learning;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Benchmarks;

/// <summary>
/// Whether learning keeps its word. Simulation-based calibration (Talts and others 2018): fleets are drawn from the prior, and where
/// the truth lies in each posterior must be uniform. Fleets that no value of the unknown explains must be told of. And its speed.
/// </summary>
internal static class LearningStudy
{
    private const int Fleets = 200;
    private const int Strange = 50;
    private const int Vehicles = 1000;
    private const long Evaluations = 524_288;
    private const double AtKm = 100_000;

    /// <summary>Runs the study and prints its tables in Markdown.</summary>
    public static void Print()
    {
        Scenario scenario = Case();
        var model = new LifeModel(scenario);
        int stress = model.Factors.ColumnNames.IndexOf("fatigue.stress_factor"), ratio = model.Factors.ColumnNames.IndexOf("fatigue.damage_ratio");
        List<double> ofStress = [], ofRatio = [], ofProbability = [], misfits = [], widths = [];
        int held = 0, refused = 0;
        for (int fleet = 0; fleet < Fleets; fleet++)
        {
            (FieldData field, double[] unknown, double truth) = Draw(model, fleet);
            if (Learn(scenario, field, fleet) is not { } result)
            {
                refused++;
                continue;
            }

            PosteriorSample sample = result.Posterior!;
            var unknowns = new Unknowns(model);
            double Place(int column) => sample.Mean(row => sample.Z[unknowns.Columns.IndexOf(column)][row] < unknown[column] ? 1 : 0);
            double place = sample.Mean(row => sample.Failed[0][row] < truth ? 1 : 0);
            ofStress.Add(Place(stress));
            ofRatio.Add(Place(ratio));
            ofProbability.Add(place);
            held += place is > 0.05 and < 0.95 ? 1 : 0;
            misfits.Add(result.Misfit.PValue);
            if (!result.Data.OfWeibull.IsEmpty)
            {
                double after = result.Curve[0].After.High - result.Curve[0].After.Low;
                widths.Add(after / (result.Data.OfWeibull[0].High - result.Data.OfWeibull[0].Low));
            }
        }

        Console.WriteLine("| what | where the truth lies in the posterior: fleets by tenth | chi-squared, 9 degrees |");
        Console.WriteLine("| --- | --- | --- |");
        Row("stress factor", ofStress);
        Row("damage ratio", ofRatio);
        Row($"P({AtKm:#,0} km)", ofProbability);
        Console.WriteLine();
        Console.WriteLine($"{ofProbability.Count} fleets of {Vehicles} vehicles ({refused} refused: too few effective samples). The middle 90 % hold the truth in {100.0 * held / ofProbability.Count:0.0} %.");
        Console.WriteLine($"Band after learning over that of a Weibull of the records alone, at {AtKm:#,0} km: median {widths.Order().ElementAt(widths.Count / 2):0.00} ({widths.Count} fleets with two failures or more).");
        Console.WriteLine($"Fleets from the model that are told to disagree with it: {misfits.Count(p => p < MisfitResult.Bad)} of {misfits.Count}.");
        foreach ((string name, Func<int, double> km) in new (string, Func<int, double>)[]
            { ("all failures at one distance", _ => 60_000), ("none early, all late", i => 90_000 + (400 * (i % 25))) })
        {
            int told = 0, of = 0;
            for (int fleet = 0; fleet < Strange; fleet++)
            {
                if (Learn(scenario, Strangely(fleet, km), fleet) is { } result)
                {
                    of++;
                    told += result.Misfit.IsMisfit ? 1 : 0;
                }
            }

            Console.WriteLine($"Fleets with {name} (20 to 40 of {Vehicles}): told in {told} of {of}.");
        }

        Speed(scenario, model);
    }

    /// <summary>The time that ten thousand records take.</summary>
    public static void PrintSpeed() => Speed(Case(), new LifeModel(Case()));

    private static void Speed(Scenario scenario, LifeModel model)
    {
        FieldData many = new("many.csv", [.. Enumerable.Range(0, 10).SelectMany(f => Draw(model, f).Field.Records)]);
        long start = Stopwatch.GetTimestamp();
        Learn(scenario, many, 1, LearnAnalysis.DefaultEvaluations);
        Console.WriteLine($"{many.Records.Length:#,0} records, {LearnAnalysis.DefaultEvaluations:#,0} evaluations: {Stopwatch.GetElapsedTime(start).TotalSeconds:0.0} s on {Environment.ProcessorCount} cores.");
    }

    private static Scenario Case()
    {
        Scenario scenario = BenchmarkScenario.Read();
        Input Unknown(Quantity quantity, double spread) =>
            new($"fatigue.{quantity.Key}", quantity, null, new Value.Uncertain(new Lognormal(1, spread), Knowledge.Unknown), false);
        Input[] unknown = [Unknown(Quantities.StressFactor, 0.15), Unknown(Quantities.DamageRatio, 0.5)];
        return scenario with
        {
            RequiredKm = AtKm,
            Inputs = [.. scenario.Inputs.Where(i => !unknown.Any(u => u.Name == i.Name)), .. unknown],
            Detail = new Detail("DNV-RP-C203", ["E", "F"], [0.6, 0.4]),
        };
    }

    private static LearnResult? Learn(Scenario scenario, FieldData field, int seed, long evaluations = Evaluations)
    {
        try
        {
            return LearnAnalysis.Run(
                new LifeModel(scenario with { Field = field }), new LearnQuestion([AtKm]),
                    new StudySettings(evaluations, (ulong)seed + 1, "sobol"),
                new RunOptions { Threads = Environment.ProcessorCount });
        }
        catch (StudyException)
        {
            return null;
        }
    }

    // Vehicles with one value of what is unknown, each followed to a distance of its own; the truth by many more of them.
    private static (FieldData Field, double[] Unknown, double Truth) Draw(LifeModel model, int fleet)
    {
        const int many = 20_000;
        FactorSet factors = model.Factors;
        var unknowns = new Unknowns(model);
        Workspace workspace = model.CreateWorkspace(many);
        double[][] scores = model.CreateColumns(many), values = model.CreateColumns(many);
        SamplingPlan plan = SamplingPlan.FromName("plain", many);
        var unknown = new double[scores.Length];
        for (int column = 0; column < scores.Length; column++)
        {
            plan.Fill(new(900, $"learning/{fleet}/{column}"), 0, 0, scores[column]);
            Core.Numerics.StandardNormal.Quantiles(scores[column], scores[column]);
            unknown[column] = scores[column][0];
            if (unknowns.IsUnknown[column])
            {
                scores[column].AsSpan().Fill(unknown[column]);
            }
        }

        factors.MapScores(scores, values, many);
        model.Evaluate(values, many, workspace);
        var followed = new double[Vehicles];
        plan.Fill(new(900, $"learning/{fleet}/followed"), 0, 0, followed);
        var records = ImmutableArray.CreateBuilder<FieldRecord>(Vehicles);
        for (int i = 0; i < Vehicles; i++)
        {
            double end = 20_000 + (90_000 * followed[i]), life = workspace.LifeKm[i];
            records.Add(life < end ? new FieldRecord(life, life, 1, "", [], i + 2)
                : new FieldRecord(end, double.PositiveInfinity, 1, "", [], i + 2));
        }

        return (new FieldData("fleet.csv", records.ToImmutable()), unknown, workspace.LifeKm.Count(l => l < AtKm) / (double)many);
    }

    private static FieldData Strangely(int fleet, Func<int, double> km)
    {
        int failed = 20 + (fleet * 20 / Strange);
        return new FieldData("strange.csv",
        [
            .. Enumerable.Range(0, failed).Select(i => new FieldRecord(km(i) + i, km(i) + i, 1, "", [], i + 2)),
            .. Enumerable.Range(0, Vehicles - failed).Select(i =>
                new FieldRecord(20_000 + (90.0 * i), double.PositiveInfinity, 1, "", [], i + 2)),
        ]);
    }

    private static void Row(string name, List<double> places)
    {
        int[] counts = [.. Enumerable.Range(0, 10).Select(t => places.Count(p => Math.Min(9, (int)(10 * p)) == t))];
        double expected = places.Count / 10.0;
        Console.WriteLine($"| {name} | {string.Join(' ', counts)} | {counts.Sum(c => (c - expected) * (c - expected) / expected):0.0} |");
    }
}
