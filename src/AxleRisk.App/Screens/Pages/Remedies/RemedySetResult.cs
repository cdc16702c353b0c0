using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Remedies;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.App.Screens.Pages.Remedies;

/// <summary>The remedies switched on together, and each remedy alone, against none of them; all with the same random numbers.</summary>
/// <param name="Chosen">The remedies switched on, in file order; may be none.</param>
/// <param name="All">All remedies.</param>
/// <param name="Comparison">The cases: none, the chosen together where there are any, then each alone.</param>
internal sealed record RemedySetResult(ImmutableArray<Remedy> Chosen, ImmutableArray<Remedy> All, ComparisonResult Comparison)
{
    /// <summary>The currency of the costs; null where none is stated.</summary>
    public string? Currency { get; init; }

    /// <summary>None of the remedies.</summary>
    public ComparedCase None => Comparison.Cases[0];

    /// <summary>Those chosen together; null where none is.</summary>
    public ComparedCase? Together => Chosen.IsEmpty ? null : Comparison.Cases[1];

    /// <summary>One remedy alone.</summary>
    public ComparedCase Alone(int remedy) => Comparison.Cases[remedy + (Chosen.IsEmpty ? 1 : 2)];

    /// <summary>The same with the risk study's figure of none.</summary>
    public RemedySetResult With(RiskHeadline headline) => this with { Comparison = Comparison.With(headline) };

    /// <summary>The number of scenarios that are evaluated.</summary>
    public static int CasesOf(int chosen, int all) => 1 + (chosen > 0 ? 1 : 0) + all;

    /// <summary>Runs the comparison.</summary>
    public static RemedySetResult Run(LifeModel model, ImmutableArray<Remedy> chosen, StudySettings settings, RunOptions options)
    {
        ImmutableArray<Remedy> all = model.Scenario.Remedies;
        IEnumerable<Scenario> changed = [.. chosen.IsEmpty ? [] : new[] { chosen.Aggregate(model.Scenario, Remedy.Apply) },
            .. all.Select(r => Remedy.Apply(model.Scenario, r))];
        return new RemedySetResult(
            chosen, all, Core.Analyses.Remedies.Comparison.Run([model, .. changed.Select(s => new LifeModel(s))],
                model.Scenario.RequiredKm, settings, options))
        {
            Currency = model.Scenario.Currency,
        };
    }
}
