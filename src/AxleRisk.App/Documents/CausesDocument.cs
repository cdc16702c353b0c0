using System.Text.Json.Nodes;
using AxleRisk.App.Documents.Forms;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Causes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Documents;

/// <summary>The causes as JSON and as rows.</summary>
internal static class CausesDocument
{
    private const string WhereFrom = "where it comes from, as the scenario states it";

    private static readonly JsonForm<Percentiles> PointsForm = new JsonForm<Percentiles>("points")
        .NumberOrNull("5_percent", "5 % point, in the factor's unit", p => p.Low)
        .NumberOrNull("median", "median", p => p.Median)
        .NumberOrNull("95_percent", "95 % point", p => p.High);

    private static readonly JsonForm<StateShift> Shift = new JsonForm<StateShift>("shift")
        .Text("state", "the state, or the range", s => s.Name)
        .Number("prior", "its probability in the scenario", s => s.Prior)
        .Interval("posterior", "its probability given the evidence", s => s.Posterior)
        .Interval("times", "how many times likelier it has become", s => s.Times);

    private static readonly JsonForm<(double Prior, Interval Posterior)> OverPrior = new JsonForm<(double Prior, Interval Posterior)>()
        .Number("prior", "the prior", p => p.Prior)
        .NumberOrNull("posterior", "the posterior", p => p.Posterior.Estimate)
        .NumberOrNull("low", "lower end of its 95 % interval", p => p.Posterior.Low)
        .NumberOrNull("high", "upper end of its 95 % interval", p => p.Posterior.High);

    private static readonly JsonForm<ButFor> ButForForm = new JsonForm<ButFor>()
        .Texts("instead", "what inputs would have been", b => b.Instead.Select(c => $"{c.Input} {DistributionText.Of(c)}"))
        .Number("would_have_passed_km", "the distance asked of, km", b => b.WouldHavePassedKm)
        .Number("failed_by_km", "the distance by which the axle had failed, km", b => b.FailedByKm)
        .Interval("probability", "probability that this axle would have passed the distance asked of, given that the explanation held",
            b => b.Passes)
        .Interval("still_failed", "probability that it would still have failed by the distance by which it had, given the same",
            b => b.StillFails)
        .Interval("held_and_would_have_passed",
            "probability that the explanation held and the axle would have passed without it", b => b.HeldAndPasses);

    public static JsonForm<CausesResult> Form { get; } = new JsonForm<CausesResult>()
        .Object("evidence", "the evidence", new JsonForm<CausesResult>()
            .Number("failed_at_km", "it failed at this distance, km", r => (r.Evidence.Life as LifeEvidence.FailedAt)?.Km).Optional()
            .Key("failed_between_km", new JsonShape.List(new JsonShape.Number()), "it was whole at the first and broken at the second, km",
                r => r.Evidence.Life is LifeEvidence.FailedBetween(var from, var to) ? new JsonArray(from, to) : null).Optional()
            .Number("survived_km", "it has reached this distance unbroken, km",
                r => (r.Evidence.Life as LifeEvidence.Survived)?.Km).Optional()
            .Text("cracked_at", "the section that was found cracked, and no other; `axle` for the first",
                r => r.Evidence.CrackedAt).Optional()
            .Number("would_have_passed_km", "the distance that but-for asks of where it is stated, km",
                r => r.Evidence.WouldHavePassedKm).Optional()
            .List("measured", "what was measured", new JsonForm<Measurement>()
                .Text("factor", "the factor", m => m.Factor)
                .Number("value", "the value read, in its unit", m => m.Value)
                .Number("sd", "standard deviation of the error of measurement", m => m.StandardDeviation)
                .Text("source", WhereFrom, m => Stated(m.Source)).Optional(), r => r.Evidence.Measured)
            .List("known", "the states that are known", new JsonForm<(KnownState State, CausesResult Result)>()
                .Text("factor", "the factor", k => k.State.Factor)
                .Text("state", "the state", k => k.Result.Causes.First(c => c.Name == k.State.Factor).Factor.Show(k.State.Value))
                .Text("source", WhereFrom, k => Stated(k.State.Source)).Optional(), r => r.Evidence.Known.Select(k => (k, r)))
            .List("looks", "the looks for the crack; only where there are any", SeenDocument.Look,
                r => r.Evidence.Looks.IsEmpty ? null : r.Evidence.Looks)
            .Optional()
            .Text("source", WhereFrom, r => Stated(r.Evidence.Source)).Optional(), r => r)
        .Maybe("failure_before", "how surprising the life is under the scenario, of `risk`; null without a life",
            new JsonForm<(Interval From, Interval To)>()
            .Probability("first_distance", "failure probability by the first distance", f => f.From)
            .Probability("last_distance", "failure probability by the last distance", f => f.To), r => r.FailureBefore)
        .List("causes", "the factors, the most telling first", new JsonForm<Cause>()
            .Text("name", "the factor", c => c.Name)
            .Text("unit", "its unit; empty for a pure number", c => c.Factor.Unit)
            .Word("knowledge", "whether it differs between vehicles or is not known",
                CommonForms.KnowledgeWords, c => CommonForms.Word(c.Factor.Knowledge))
            .Flag("known", "whether its state is evidence and not a finding", c => c.IsKnown)
            .Number("bits", "what the evidence says of it, in bits", c => c.Bits)
            .Maybe("prior", "in the scenario; null for a choice", PointsForm, c => c.Prior)
            .Maybe("posterior", "given the evidence; null for a choice", PointsForm, c => c.Posterior)
            .Word("adverse_end", "which end goes with more damage; null for a choice", ["high", "low"],
                c => c.IsHighAdverse is { } high ? (high ? "high" : "low") : null).OrNull()
            .Object("adverse_tenth", "its adverse tenth; null for a choice", Shift, c => c.Prior is null ? null : c.States[0]).OrNull()
            .List("states", "the states of a choice; empty for others", Shift, c => c.Prior is null ? c.States : []), r => r.Causes)
        .List("modes", "the modes of failure, checked sections among them; only where there are further sections and the axle has failed",
            new JsonForm<ModeFound>()
                .Text("mode", "the mode of failure", m => m.Mode.Key)
                .Interval("failed", "the probability that it has failed by the distance of the evidence", m => m.Posterior),
            r => r.Modes.IsEmpty ? null : r.Modes).Optional()
        .List("explanations", "the explanations that are weighed, pairs of them, and nothing unusual",
            new JsonForm<(ExplanationShift Shift, CausesResult Result)>()
            .Text("name", "its name", e => CausesText.NameOf(e.Result, e.Shift))
            .Texts("of", "the explanations that hold together; empty for nothing unusual", e => e.Shift.Names)
            .Number("prior", "its probability before", e => e.Shift.Prior)
            .Interval("posterior", "its probability given the evidence", e => e.Shift.Posterior)
            .Maybe("odds_multiplied", "by how much the evidence multiplied its odds, whatever its prior; null where it is settled",
                CommonForms.Interval, e => e.Shift.OddsMultiplied)
            .List("over_priors", "its posterior over other priors; empty where it is settled", OverPrior, e => e.Shift.OverPriors)
            .Object("but_for", "what would have become of this axle without it; null where that is not stated or not asked", ButForForm,
                e => e.Shift.ButFor).OrNull()
            .Word("settled", "what a known state says of it; null where it is weighed", ["holds", "ruled_out"],
                e => e.Shift.Settled is { } holds ? (holds ? "holds" : "ruled_out") : null).OrNull(), r => r.Explanations.Select(e => (e, r)))
        .Word("life_method", "how the likelihood of the life is found: exactly given the damage, or by counting", ["conditional", "counted"],
            r => r.IsConditional ? "conditional" : "counted")
        .Whole("rows", "rows of the weighted sample", r => r.Rows)
        .Whole("twin_evaluations", "evaluations of the same rows with one thing otherwise, for but-for", r => r.TwinEvaluations)
        .NumberOrNull("effective_sample_size", "effective sample size of the posterior", r => r.EffectiveSampleSize)
        .Number("greatest_weight_share", "share of all weight that the heaviest row has", r => r.GreatestShare)
        .Whole("pilots", "pilots drawn to find where the evidence lies", r => r.Pilots)
        .Flag("sampler_moved", "whether the sampler was moved toward the evidence", r => r.IsMoved);

    public static string[] Header { get; } =
    [
        "kind", "name", "state", "prior", "posterior", "posterior_low", "posterior_high", "times", "times_low", "times_high",
        "prior_5_percent", "prior_median", "prior_95_percent", "posterior_5_percent", "posterior_median", "posterior_95_percent", "bits",
    ];

    public static IEnumerable<string[]> Rows(CausesResult result) =>
    [
        .. result.Causes.SelectMany(c => c.States.Select(s => (string[])
            [
                c.Prior is null ? "state" : "adverse_tenth", c.Name, s.Name, Cells.Of(s.Prior),
                Cells.Of(s.Posterior.Estimate), Cells.Of(s.Posterior.Low), Cells.Of(s.Posterior.High),
                Cells.Of(s.Times.Estimate), Cells.Of(s.Times.Low), Cells.Of(s.Times.High),
                .. Points(c.Prior), .. Points(c.Posterior), Cells.Of(c.Bits),
            ])),
        .. result.Modes.Select(m => Row("mode", m.Mode.Key, m.Posterior)),
        .. result.Explanations.Select(e => (string[])
            [
                e.Settled is null ? "explanation" : "explanation_settled", CausesText.NameOf(result, e), "", Cells.Of(e.Prior),
                Cells.Of(e.Posterior.Estimate), Cells.Of(e.Posterior.Low), Cells.Of(e.Posterior.High),
                Cells.Of(e.Posterior.Estimate / e.Prior), Cells.Of(e.Posterior.Low / e.Prior), Cells.Of(e.Posterior.High / e.Prior),
                .. Points(null), .. Points(null), "",
            ]),
        .. result.Explanations.Where(e => e.OddsMultiplied is not null)
            .Select(e => Row("odds_multiplied", CausesText.NameOf(result, e), e.OddsMultiplied!.Value)),
        .. result.Explanations.Where(e => e.ButFor is not null).SelectMany(e => new[]
        {
            Row("but_for_passes", CausesText.NameOf(result, e), e.ButFor!.Passes),
            Row("but_for_still_failed", CausesText.NameOf(result, e), e.ButFor.StillFails),
            Row("but_for_held_and_passes", CausesText.NameOf(result, e), e.ButFor.HeldAndPasses),
        }),
    ];

    // Odds stand among the times, probabilities with those given the evidence.
    private static string[] Row(string kind, string name, Interval of)
    {
        string[] figures = [Cells.Of(of.Estimate), Cells.Of(of.Low), Cells.Of(of.High)], none = ["", "", ""];
        bool isOdds = kind == "odds_multiplied";
        return [kind, name, "", "", .. isOdds ? none : figures, .. isOdds ? figures : none, .. none, .. none, ""];
    }

    private static string? Stated(string text) => text.Length > 0 ? text : null;

    private static string[] Points(Percentiles? p) => p is { } x ? [Cells.Of(x.Low), Cells.Of(x.Median), Cells.Of(x.High)] : ["", "", ""];
}
