using System.Collections.Immutable;
using System.Globalization;
using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Causes;

/// <summary>
/// The calibration of docs/accuracy.md, on the life model. It takes minutes, so it runs only when asked for:
/// <c>dotnet tests/AxleRisk.Core.Tests/bin/Release/net10.0/AxleRisk.Core.Tests.dll -class "*LifeCalibration" -explicit only -showliveoutput</c>.
/// </summary>
public sealed class LifeCalibration(ITestOutputHelper output)
{
    private const int Cases = 500;
    private const long Evaluations = 10_000;

    private static readonly ImmutableArray<Explanation> Explanations =
    [
        new("thin wall", null, [new Condition("axle.wall_mm", double.NegativeInfinity, 5.8, [])]),
        new("rough roads", null, [new Condition("use.roughness_factor", 1.3, double.PositiveInfinity, [])]),
        new("poor weld", null, [new Condition("detail.category", double.NegativeInfinity, double.PositiveInfinity, [1])]),
    ];

    [Fact(Explicit = true)]
    public void Posterior_probabilities_of_500_synthetic_failures_hold_as_often_as_they_say()
    {
        var model = new LifeModel(FiveLegs.Scenario with { Detail = new Detail("DNV-RP-C203", ["E", "W1"], [0.7, 0.3]) });
        var events = new ExplanationEvents(Explanations, model.Factors.ColumnNames);
        Workspace workspace = model.CreateWorkspace(Cases);
        double[][] truth = model.CreateColumns(Cases);
        model.Draw(SamplingPlan.FromName("plain", Cases), 20, "truth", 0, Cases, workspace, truth);
        model.Evaluate(truth, Cases, workspace);

        var table = new CalibrationTable();
        var pairs = new CalibrationTable();
        double leastSize = double.PositiveInfinity;
        int refused = 0;
        for (int c = 0; c < Cases; c++)
        {
            var evidence = new Evidence { Life = new LifeEvidence.FailedAt(workspace.LifeKm[c]), Explanations = Explanations };
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

            CausesResult Run(long n) => CausesAnalysis.Run(model, evidence, new StudySettings(n, (ulong)c + 1, "plain"), new RunOptions());
            int pattern = events.PatternOf(truth, c);
            leastSize = Math.Min(leastSize, result.EffectiveSampleSize);
            foreach (ExplanationShift e in result.Explanations)
            {
                int mask = e.Names.Sum(n => 1 << Explanations.Select(x => x.Name).ToList().IndexOf(n));
                bool holds = mask == 0 ? pattern == 0 : (pattern & mask) == mask;
                (e.Names.Length < 2 ? table : pairs).Add(e.Posterior.Estimate, holds);
            }
        }

        Print("explanations alone and 'nothing unusual'", table);
        Print("pairs", pairs);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"least effective sample size {leastSize:0}, refused at first {refused}"));
        foreach ((double from, _, int cases, double stated, double frequency) in table.Bins.Concat(pairs.Bins).Where(b => b.Cases > 0))
        {
            // Up to four statements of one case hang together: the binomial error of a fourth of the cases, four times, and one case.
            double allowed = (4 * Math.Sqrt(stated * (1 - stated) * 4 / cases)) + (1.0 / cases);
            Assert.True(Math.Abs(stated - frequency) <= allowed, $"bin from {from}: {stated} stated, {frequency} true of {cases}");
        }
    }

    private void Print(string title, CalibrationTable table)
    {
        output.WriteLine(title);
        output.WriteLine("| stated | cases | mean stated | true | standard error |");
        foreach ((double from, double to, int cases, double stated, double frequency) in table.Bins.Where(b => b.Cases > 0))
        {
            double error = Math.Sqrt(stated * (1 - stated) / cases);
            output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"| {100 * from:0} to {100 * to:0} % | {cases} | {100 * stated:0.0} % | {100 * frequency:0.0} % | {100 * error:0.0} % |"));
        }
    }
}
