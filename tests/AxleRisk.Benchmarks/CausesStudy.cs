using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Benchmarks;

/// <summary>
/// Whether posterior probabilities of explanations keep their word: 500 vehicles drawn from a scenario fail where the model
/// says, the failure distance is all that is told, and what was true of each is known.
/// </summary>
internal static class CausesStudy
{
    private const int Cases = 500;
    private const long Evaluations = 10_000;

    private static readonly ImmutableArray<Explanation> Explanations =
    [
        new("thin wall", null, [new Condition("axle.wall_mm", double.NegativeInfinity, 5.8, [])]),
        new("rough roads", null, [new Condition("use.roughness_factor", 1.3, double.PositiveInfinity, [])]),
        new("poor weld", null, [new Condition("detail.category", double.NegativeInfinity, double.PositiveInfinity, [1])]),
    ];

    /// <summary>Runs the study and prints its tables in Markdown.</summary>
    public static void Print()
    {
        var model = new LifeModel(BenchmarkScenario.Read() with { Detail = new Detail("DNV-RP-C203", ["E", "W1"], [0.7, 0.3]) });
        Workspace workspace = model.CreateWorkspace(Cases);
        double[][] truth = model.CreateColumns(Cases);
        model.Draw(SamplingPlan.FromName("plain", Cases), 20, "truth", 0, Cases, workspace, truth);
        model.Evaluate(truth, Cases, workspace);
        CalibrationBins all = new(), single = new(), pairs = new();
        (int refused, double leastSize) = (0, double.PositiveInfinity);
        for (int c = 0; c < Cases; c++)
        {
            var evidence = new Evidence { Life = new LifeEvidence.FailedAt(workspace.LifeKm[c]), Explanations = Explanations };
            CausesResult Run(long n) => CausesAnalysis.Run(model, evidence, new StudySettings(n, (ulong)c + 1, "plain"), new RunOptions());
            CausesResult result;
            try
            {
                result = Run(Evaluations);
            }
            catch (StudyException)
            {
                // What the refusal tells the user to do.
                refused++;
                result = Run(10 * Evaluations);
            }

            leastSize = Math.Min(leastSize, result.EffectiveSampleSize);
            string[] holding = [.. Explanations.Where(e => e.When.All(w => w.Holds(truth[model.Factors.ColumnNames.IndexOf(w.Column)][c])))
                .Select(e => e.Name)];
            foreach (ExplanationShift e in result.Explanations)
            {
                bool isTrue = e.Names.IsEmpty ? holding.Length == 0 : e.Names.All(holding.Contains);
                (e.Names.Length == 2 ? pairs : single).Add(e.Posterior.Estimate, isTrue);
                all.Add(e.Posterior.Estimate, isTrue);
            }
        }

        Console.WriteLine("Explanations alone and 'nothing unusual':");
        single.Print();
        Console.WriteLine("Pairs:");
        pairs.Print();
        Console.WriteLine("All:");
        all.Print();
        Console.WriteLine($"Refused at first: {refused}; least effective sample size of an answer: {leastSize:0}.");
    }
}
