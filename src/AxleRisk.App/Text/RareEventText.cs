using AxleRisk.Core.Analyses.RareEvents;
using AxleRisk.Core.Analyses.Risk;

namespace AxleRisk.App.Text;

/// <summary>What there is to say of the rare-event answers of a risk table: how they were had, and the likeliest way to fail.</summary>
internal static class RareEventText
{
    /// <summary>Factors shown at a design point: those that bring most of the way there.</summary>
    private const int Shown = 6;

    /// <summary>The answer nearest to the question, which speaks for all; null where there is none.</summary>
    public static RareEventResult? Speaker(RiskResult result) => result.RareEvents.IsEmpty
        ? null
        : result.RareEvents.FirstOrDefault(r => r.DistanceKm == result.RequiredKm) ?? result.RareEvents[^1];

    public static IEnumerable<string> Sentences(RareEventResult chosen) =>
    [
        $"i: too rare to sample, so by {chosen.Method} ({chosen.MethodReason}), {Figures.Count(chosen.SearchEvaluations + chosen.SamplingEvaluations)} evaluations more.",
        .. chosen.Doubt is { } doubt ? new[] { $"Doubt: {doubt}" } : [],
        .. chosen.CrossCheck is { } check
            ? new[] { $"Cross-check at {Figures.Exact(chosen.DistanceKm)} km by {check.Method}: {Figures.Probability(check.Probability.Estimate)}"
                + $" ({Figures.ProbabilityRange(check.Probability)}), {chosen.CrossCheckDistance:0.0} standard errors apart." }
            : [],
    ];

    /// <summary>The heading of the table of a design point.</summary>
    public static string DesignHeading(RareEventResult chosen) => $"The likeliest way to fail by {Figures.Exact(chosen.DistanceKm)} km";

    /// <summary>The nearest design point of the state that fails most; null where none was found.</summary>
    public static (string State, TextTable Table)? DesignTable(RareEventResult chosen)
    {
        if (chosen.States.FirstOrDefault(s => !s.DesignPoints.IsEmpty) is not { } state)
        {
            return null;
        }

        var table = new TextTable("factor", "value", "<unit", "of the way");
        foreach (DesignCoordinate c in state.DesignPoints[0].Coordinates.Take(Shown))
        {
            table.AddNoted(c.Name, c.Label, Figures.Number(c.Value), c.Unit, Figures.Share(c.Cosine * c.Cosine));
        }

        return (state.Label, table);
    }
}
