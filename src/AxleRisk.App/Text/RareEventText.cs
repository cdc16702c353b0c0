using AxleRisk.Core.Analyses.RareEvents;
using AxleRisk.Core.Analyses.Risk;

namespace AxleRisk.App.Text;

/// <summary>What there is to say of the rare-event answers of a risk table: how they were had, and the likeliest way to fail.</summary>
internal static class RareEventText
{
    /// <summary>Factors shown at a design point: those that bring most of the way there.</summary>
    private const int Shown = 6;

    public static IEnumerable<string> Lines(RiskResult result)
    {
        if (result.RareEvents.IsEmpty)
        {
            yield break;
        }

        // The answer nearest to the question speaks for all.
        RareEventResult chosen = result.RareEvents.FirstOrDefault(r => r.DistanceKm == result.RequiredKm) ?? result.RareEvents[^1];
        IEnumerable<string> sentences =
        [
            $"i: too rare to sample, so by {chosen.Method} ({chosen.MethodReason}), {Figures.Count(chosen.SearchEvaluations + chosen.SamplingEvaluations)} evaluations more.",
            .. chosen.Doubt is { } doubt ? new[] { $"Doubt: {doubt}" } : [],
            .. chosen.CrossCheck is { } check
                ? new[] { $"Cross-check at {Figures.Km(chosen.DistanceKm)} km by {check.Method}: {Figures.Probability(check.Probability.Estimate)}"
                    + $" ({Figures.ProbabilityRange(check.Probability)}), {chosen.CrossCheckDistance:0.0} standard errors apart." }
                : [],
        ];
        foreach (string line in sentences.SelectMany(s => Wrap.Lines(s, Layout.Width - 2, "  ")))
        {
            yield return "  " + line;
        }

        foreach (string line in DesignPoint(chosen))
        {
            yield return line;
        }

        yield return "";
    }

    private static IEnumerable<string> DesignPoint(RareEventResult chosen)
    {
        if (chosen.States.FirstOrDefault(s => !s.DesignPoints.IsEmpty) is not { } state)
        {
            yield break;
        }

        DesignPointReport point = state.DesignPoints[0];
        yield return "";
        yield return Style.Heading($"The likeliest way to fail by {Figures.Km(chosen.DistanceKm)} km");
        foreach (string line in Wrap.Lines(state.Name, Layout.Width - 2, ""))
        {
            yield return "  " + line;
        }

        var table = new TextTable("factor", "value", "<unit", "of the way");
        foreach (DesignCoordinate c in point.Coordinates.Take(Shown))
        {
            table.Add(c.Name, Figures.Number(c.Value), c.Unit, Figures.Share(c.Cosine * c.Cosine));
        }

        foreach (string line in table.Lines(Layout.Width))
        {
            yield return line;
        }
    }
}
