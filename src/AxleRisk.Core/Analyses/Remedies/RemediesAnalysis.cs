using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Remedies;

/// <summary>What each remedy of a scenario and each pair of them would do.</summary>
public static class RemediesAnalysis
{
    /// <summary>Runs the analysis.</summary>
    /// <param name="model">The scenario made ready; it has at least one remedy.</param>
    /// <param name="settings">Evaluations of the scenario as it is and with each remedy or pair, seed, sampling plan.</param>
    /// <param name="options">Threads, progress (in evaluations of all together), cancellation.</param>
    /// <exception cref="StudyException">The sampling plan has fewer dimensions than are needed.</exception>
    public static RemediesResult Run(LifeModel model, StudySettings settings, RunOptions options)
    {
        ImmutableArray<Remedy>[] sets = SetsOf(model.Scenario.Remedies);
        ComparisonResult comparison = Comparison.Run(ModelsOf(model), model.Scenario.RequiredKm, settings, options);
        IEnumerable<RemedyRow> rows = sets.Zip(comparison.Cases.Skip(1), (s, c) => new RemedyRow(s, c));
        return new RemediesResult
        {
            Currency = model.Scenario.Currency,
            Comparison = comparison,
            Rows = [.. rows.OrderBy(r => r.Case.Probability.Estimate).ThenByDescending(r => r.Case.B10Km.Estimate)],
        };
    }

    /// <summary>The sampling plan unless asked otherwise.</summary>
    public static string DefaultSampling(LifeModel model) => Comparison.DefaultSampling(ModelsOf(model));

    /// <summary>The number of scenarios that are evaluated: the base, each remedy, each pair.</summary>
    public static int CasesOf(Scenario scenario) => 1 + SetsOf(scenario.Remedies).Length;

    private static LifeModel[] ModelsOf(LifeModel model) =>
        [model, .. SetsOf(model.Scenario.Remedies).Select(s => new LifeModel(s.Aggregate(model.Scenario, Remedy.Apply)))];

    private static ImmutableArray<Remedy>[] SetsOf(ImmutableArray<Remedy> remedies) =>
    [
        .. remedies.Select(r => ImmutableArray.Create(r)),
        .. from i in Enumerable.Range(0, remedies.Length)
           from j in Enumerable.Range(i + 1, remedies.Length - i - 1)
           select ImmutableArray.Create(remedies[i], remedies[j]),
    ];
}
