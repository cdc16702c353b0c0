using AxleRisk.Core.Analyses.Causes;

namespace AxleRisk.App.Text;

/// <summary>The causes as text: what the evidence points to in words, then the figures.</summary>
internal static class CausesText
{
    /// <summary>Causes told in words at most.</summary>
    private const int MostInWords = 8;

    public const string NothingUnusual = "nothing unusual";
    public const string NothingElse = "nothing else unusual";

    public const string FactorsHeading = "Factors before | after the evidence";
    public const string ToldHeading = "What the evidence points to, the most telling first";
    public const string ExplanationsHeading = "Explanations before and after the evidence";
    public const string ChoicesHeading = "Choices before and after the evidence";
    public const string NothingTold = "nothing that this run can tell: of no factor or choice is any state surely more or less likely than before";

    public static string Method(CausesResult result) =>
        $"{Figures.Count(result.Rows)} weighted rows worth {Figures.Count((long)result.EffectiveSampleSize)} effective ones, "
            + (result.IsMoved ? $"drawn near the evidence after {result.Pilots} pilots" : "drawn from the scenario")
            + (result.TwinEvaluations > 0 ? $", and {Figures.Count(result.TwinEvaluations)} of them with one thing otherwise" : "");

    /// <summary>The causes told in words, the most telling first; none where the evidence agrees with the scenario.</summary>
    public static IReadOnlyList<string> Told(CausesResult result) =>
    [
        .. result.Causes.Where(c => !c.IsKnown).Select(c => (Cause: c, State: Telling(c)))
            .Where(x => x.State.Times.Low > 1 || x.State.Times.High < 1).Take(MostInWords).Select(x => Phrase(x.Cause, x.State)),
    ];

    /// <summary>The state to tell of: the adverse tenth, or of a choice the state that gained most.</summary>
    private static StateShift Telling(Cause cause) =>
        cause.States.MaxBy(s => s.Posterior.Estimate > 0 ? s.Posterior.Estimate * Math.Log(s.Times.Estimate) : 0)!;

    private static string Phrase(Cause cause, StateShift state)
    {
        string unit = cause.Factor.Unit.Length == 0 ? "" : " " + cause.Factor.Unit;
        string what = cause.Prior is null
            ? $"{cause.Label} {state.Name}{unit}"
            : $"{cause.Label}{(cause.Measured is null ? "" : ", measured,")} in its adverse tenth ({state.Name}{unit})";
        string times = $"{Figures.Ratio(state.Times.Estimate)} times {(state.Times.Estimate > 1 ? "likelier" : "as likely")}"
            + $" ({Figures.Ratio(state.Times.Low)} to {Figures.Ratio(state.Times.High)})";
        return $"{what}: {times}, now {Figures.Share(state.Posterior.Estimate)}, before {Figures.Share(state.Prior)}";
    }

    public static TextTable ExplanationTable(CausesResult result)
    {
        var table = new TextTable("explanation", "before", "after", "95 % interval");
        foreach (ExplanationShift e in result.Explanations)
        {
            table.Add(
                NameOf(result, e), Figures.Share(e.Prior), e.Settled is null ? Figures.Share(e.Posterior.Estimate) : Settled(e),
                e.Settled is null ? $"{Figures.Share(e.Posterior.Low).Replace(" %", "")} to {Figures.Share(e.Posterior.High)}" : "settled");
        }

        return table;
    }

    /// <summary>How to read the table of explanations; names those that are not weighed because a known state settles them.</summary>
    public static string ExplanationsReading(CausesResult result)
    {
        const string General = "Explanations may hold together, so they need not add up; a pair means both.";
        string settled = string.Join("; ", result.Explanations.Where(e => e.Settled is not null)
            .Select(e => $"\"{NameOf(result, e)}\" {Settled(e)}"));
        string rest = result.Explanations.Any(e => e.Settled is null) ? "the others are weighed given that" : "none is left to weigh";
        return settled.Length == 0 ? General : $"{General} Settled by a state that is known, so not weighed: {settled}; {rest}.";
    }

    /// <summary>What a known state says of an explanation.</summary>
    public static string Settled(ExplanationShift e) => e.Settled == true ? "holds" : "ruled out";

    /// <summary>
    /// The explanations that hold together; none of them is 'nothing unusual', beside what a known state says for certain.
    /// </summary>
    public static string NameOf(CausesResult result, ExplanationShift e) => !e.Names.IsEmpty ? string.Join(" and ", e.Names)
        : result.Explanations.Any(x => x.Settled == true) ? NothingElse : NothingUnusual;

    public static TextTable FactorTable(CausesResult result)
    {
        List<Cause> causes = [.. result.Causes.Where(c => c.Posterior is not null)];
        var table = new TextTable("factor", "5 %", "50 %", "95 %", "|5 %", "50 %", "95 %", "tenth x");
        foreach (Cause c in causes)
        {
            (Percentiles before, Percentiles after) = (c.Prior!.Value, c.Posterior!.Value);
            table.AddNoted(
                c.Name, (c.Measured is null ? "" : "(m) ") + c.Label, Short(before.Low), Short(before.Median), Short(before.High),
                Short(after.Low), Short(after.Median), Short(after.High), Figures.Ratio(c.States[0].Times.Estimate));
        }

        return table;
    }

    /// <summary>The choices state by state; without rows where no factor is a choice.</summary>
    public static TextTable ChoiceTable(CausesResult result)
    {
        var table = new TextTable("choice", "<state", "before", "after", "95 % interval", "times");
        foreach (Cause c in result.Causes.Where(c => c.Prior is null))
        {
            foreach (StateShift s in c.States)
            {
                string range = $"{Figures.Share(s.Posterior.Low).Replace(" %", "")} to {Figures.Share(s.Posterior.High)}";
                table.AddNoted(
                    c.Name, c.Label, s.Name, Figures.Share(s.Prior), Figures.Share(s.Posterior.Estimate), c.IsKnown ? "known" : range,
                    Figures.Ratio(s.Times.Estimate));
            }
        }

        return table;
    }

    public static string Reading(CausesResult result) =>
        "tenth x: how many times likelier the factor is to lie in its adverse tenth, the tenth of its values that goes with most damage."
        + (result.Causes.Any(c => c.Measured is not null) ? " (m): measured." : "")
        + (result.Explanations.IsEmpty ? "" : " Stated priors of explanations move the explanations' table alone.");

    /// <summary>Three figures: six numbers stand in a row.</summary>
    private static string Short(double x) => Math.Abs(x) switch
    {
        >= 100 => x.ToString("#,0"),
        >= 10 => x.ToString("0.0"),
        >= 0.01 or 0 => x.ToString("0.00"),
        _ => x.ToString("0.0e-0"),
    };
}
