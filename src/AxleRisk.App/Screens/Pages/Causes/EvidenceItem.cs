using AxleRisk.App.Text;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Screens.Pages.Causes;

/// <summary>What a piece of evidence is.</summary>
internal enum EvidenceKind
{
    /// <summary>What is known of the life; there is always this one row.</summary>
    Life,

    /// <summary>A measured factor.</summary>
    Measured,

    /// <summary>A choice whose state is known.</summary>
    Known,

    /// <summary>A named explanation.</summary>
    Explanation,
}

/// <summary>A row of the evidence.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Index">Its place among those of its kind in the file.</param>
/// <param name="Label">What it is of.</param>
/// <param name="Text">What was found.</param>
internal sealed record EvidenceItem(EvidenceKind Kind, int Index, string Label, string Text)
{
    /// <summary>The evidence and the explanations of a scenario, the life first.</summary>
    public static IReadOnlyList<EvidenceItem> Of(Scenario scenario, FactorSet factors)
    {
        Evidence evidence = scenario.Evidence;
        return
        [
            new(EvidenceKind.Life, 0, "life", Life(evidence.Life)),
            .. evidence.Measured.Select((m, i) => new EvidenceItem(
                EvidenceKind.Measured, i, Printable.Line(factors.LabelOf(m.Factor)),
                $"read {Figures.Number(m.Value)}{Unit(factors.Find(m.Factor))}, sd {Figures.Number(m.StandardDeviation)}")),
            .. evidence.Known.Select((k, i) => new EvidenceItem(
                EvidenceKind.Known, i, Printable.Line(factors.LabelOf(k.Factor)),
                $"is {Printable.Line(factors.Find(k.Factor)?.Show(k.Value) ?? Figures.Number(k.Value))}")),
            .. evidence.Explanations.Select((e, i) => new EvidenceItem(
                EvidenceKind.Explanation, i, Printable.Line(e.Name),
                $"{When(e, factors)}{(e.Prior is double p ? $"; prior {Figures.Share(p)}" : "")}")),
        ];
    }

    private static string Life(LifeEvidence? life) => life switch
    {
        LifeEvidence.FailedAt at => $"failed at {Figures.Exact(at.Km)} km",
        LifeEvidence.FailedBetween between => $"failed between {Figures.Exact(between.FromKm)} and {Figures.Exact(between.ToKm)} km",
        LifeEvidence.Survived survived => $"survived {Figures.Exact(survived.Km)} km",
        _ => "nothing known",
    };

    private static string When(Explanation explanation, FactorSet factors) =>
        string.Join(" and ", explanation.When.Select(c => Condition(c, factors)));

    private static string Condition(Condition c, FactorSet factors)
    {
        string Show(double x) => Printable.Line(factors.Find(c.Column)?.Show(x) ?? Figures.Number(x));
        string[] parts =
        [
            .. c.States.IsEmpty ? [] : new[] { string.Join(" or ", c.States.Select(Show)) },
            .. double.IsFinite(c.Above) ? new[] { $"above {Show(c.Above)}" } : [], .. double.IsFinite(c.Below) ? new[]
                { $"below {Show(c.Below)}" } : [],
        ];
        return $"{Printable.Line(factors.LabelOf(c.Column))} {string.Join(", ", parts)}";
    }

    private static string Unit(Factor? factor) => factor is { Unit.Length: > 0 } ? $" {factor.Unit}" : "";
}
