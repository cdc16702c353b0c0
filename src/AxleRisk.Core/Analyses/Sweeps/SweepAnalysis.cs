using System.Collections.Immutable;
using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Sweeps;

/// <summary>
/// Moves one or two inputs over a range, all else as stated: the life of the base case, and the failure probability, every
/// point evaluated with the same samples. A factor that is moved is certain at each point, and its correlations are dropped.
/// </summary>
public static class SweepAnalysis
{
    /// <summary>The evaluations of each point unless asked otherwise.</summary>
    public const long DefaultEvaluations = 20_000;

    /// <summary>Runs the analysis.</summary>
    /// <param name="model">The scenario made ready.</param>
    /// <param name="inputs">One or two different inputs.</param>
    /// <param name="settings">Evaluations of each point, seed, sampling plan.</param>
    /// <param name="options">Threads, progress (in evaluations of all points together), cancellation.</param>
    /// <param name="headline">The risk study's figure, that all points go by; null for this sample's own.</param>
    /// <exception cref="StudyException">An input or its range does not fit the scenario, or the sampling plan has too few dimensions.</exception>
    public static SweepResult Run(
        LifeModel model, ImmutableArray<SweptInput> inputs, StudySettings settings, RunOptions options, RiskHeadline? headline = null)
    {
        SweepValue?[][] points = [.. PointsOf(model.Scenario, inputs)];
        LifeModel[] models = [model, .. points.Select(p => new LifeModel(At(model.Scenario, p)))];
        int first = inputs.Length == 2 ? inputs[0].Points(model.Scenario).Length : 0;
        int second = inputs.Length == 2 ? inputs[1].Points(model.Scenario).Length : 0;
        (int Joint, int A, int B)[] products =
        [
            .. Enumerable.Range(0, first * second).Select(k => (1 + first + second + k, 1 + (k / second), 1 + first + (k % second))),
        ];
        ComparisonResult comparison = Comparison.Run(models, model.Scenario.RequiredKm, settings, options, products);
        comparison = headline is null ? comparison : comparison.With(headline);
        (double Life, double Damage)[] nominal = [.. models.Select(Nominal)];
        double Life(int i) => nominal[i].Life / nominal[0].Life;
        return new SweepResult(
            [.. inputs.Select(i => new SweepAxis(i.Input, model.Scenario.LabelOf(i.Input), i.Unit(model.Scenario), i.Stated(model.Scenario),
                [.. i.Points(model.Scenario).Select(v => v.Text)]))],
            comparison.DistanceKm, comparison.Cases[0],
            [
                .. points.Select((p, i) =>
                {
                    int joint = i + 1 - (1 + first + second);
                    bool isJoint = products.Length > 0 && joint >= 0;
                    return new SweepPoint(
                        [.. p.Select(v => v?.Text)], [.. p.Select(v => v?.Place ?? double.NaN)], Life(i + 1),
                        nominal[i + 1].Damage / nominal[0].Damage, comparison.Cases[i + 1],
                        isJoint ? comparison.Products[joint] : null,
                        isJoint ? Life(i + 1) / (Life(products[joint].A) * Life(products[joint].B)) : null);
                }),
            ],
            comparison.IsConditional, comparison.Run);
    }

    /// <summary>The number of scenarios that are evaluated: the one as stated and one a point.</summary>
    /// <exception cref="StudyException">An input or its range does not fit the scenario.</exception>
    public static int CasesOf(Scenario scenario, ImmutableArray<SweptInput> inputs) => 1 + PointsOf(scenario, inputs).Count();

    // Of two inputs first each alone, then each value of the one with each of the other.
    private static IEnumerable<SweepValue?[]> PointsOf(Scenario scenario, ImmutableArray<SweptInput> inputs)
    {
        ImmutableArray<SweepValue>[] values = [.. inputs.Select(i => i.Points(scenario))];
        return values is [var only]
            ? only.Select(v => new SweepValue?[] { v })
            :
            [
                .. values[0].Select(v => new SweepValue?[] { v, null }), .. values[1].Select(v => new SweepValue?[] { null, v }),
                .. values[0].SelectMany(a => values[1].Select(b => new SweepValue?[] { a, b })),
            ];
    }

    private static Scenario At(Scenario scenario, SweepValue?[] point) =>
        Remedy.Apply(scenario, new Remedy("", null, [.. point.OfType<SweepValue>().Select(v => v.Change)]));

    private static (double Life, double Damage) Nominal(LifeModel model)
    {
        Workspace workspace = BaseCaseAnalysis.EvaluateNominal(model);
        return (workspace.LifeKm[0], workspace.DamagePerKm[0]);
    }
}
