using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.Remedies;

/// <summary>A scenario's remedies, alone and in pairs, against the scenario as it is.</summary>
public sealed record RemediesResult
{
    /// <summary>The comparison behind it; its first case is the scenario as it is.</summary>
    public required ComparisonResult Comparison { get; init; }

    /// <summary>The remedies and pairs, the least failure probability first.</summary>
    public required ImmutableArray<RemedyRow> Rows { get; init; }

    /// <summary>The currency of the costs; null where none is stated.</summary>
    public string? Currency { get; init; }

    /// <summary>The same with the risk study's figure of the scenario as it is.</summary>
    public RemediesResult With(RiskHeadline headline)
    {
        ComparisonResult anchored = Comparison.With(headline);
        return this with
        {
            Comparison = anchored,
            Rows = [.. Rows.Select(r => r with { Case = anchored.Cases[Comparison.Cases.IndexOf(r.Case)] })],
        };
    }

    /// <summary>The scenario as it is.</summary>
    public ComparedCase Base => Comparison.Cases[0];

    /// <summary>The remedy or pair of this size with the least failure probability; null where there is none.</summary>
    public RemedyRow? Best(int size) => Rows.FirstOrDefault(r => r.Remedies.Length == size);
}

/// <summary>One remedy or a pair, and what becomes of the scenario with it.</summary>
/// <param name="Remedies">The remedies, in file order.</param>
/// <param name="Case">The scenario with them, compared with the scenario as it is.</param>
public sealed record RemedyRow(ImmutableArray<Remedy> Remedies, ComparedCase Case)
{
    /// <summary>The names, joined.</summary>
    public string Name => string.Join(" + ", Remedies.Select(r => r.Name));

    /// <summary>The sum of the costs; null where one is not stated.</summary>
    public double? Cost => Remedies.Aggregate((double?)0, (sum, r) => sum + r.Cost);
}
