using AxleRisk.App.Documents.Forms;
using AxleRisk.Core.Analyses.Fits;
using AxleRisk.Core.Analyses.Learning;
using AxleRisk.Core.Distributions;

namespace AxleRisk.App.Documents;

/// <summary>What was learned as JSON and as rows.</summary>
internal static class LearnDocument
{
    private static readonly JsonForm<Moments> MomentsForm = new JsonForm<Moments>("moments")
        .NumberOrNull("mean", "mean, in the factor's unit", m => m.Mean)
        .NumberOrNull("sd", "standard deviation", m => m.StandardDeviation)
        .NumberOrNull("5_percent", "5 % point", m => m.Low)
        .NumberOrNull("median", "median", m => m.Median)
        .NumberOrNull("95_percent", "95 % point", m => m.High);

    public static JsonForm<LearnResult> Form { get; } = new JsonForm<LearnResult>()
        .Number("records", "vehicles of the field's records", r => r.Field.Vehicles)
        .Number("failures", "those that have failed", r => r.Field.Failures)
        .Whole("gauge_runs", "gauge runs", r => r.Gauges.Runs.Length)
        .Object("misfit", "whether data and model agree", new JsonForm<MisfitResult>()
            .Number("p_value", "posterior predictive p-value of the failures by distance; below 0.05 data and model disagree", m => m.PValue)
            .Number("expected_failures", "failures expected of vehicles that went as far, after learning", m => m.Expected)
            .Number("seen_failures", "failures seen", m => m.Seen)
            .List("by_distance", "the same between distances", new JsonForm<MisfitCount>()
                .Number("from_km", "from, km", c => c.FromKm)
                .Number("to_km", "to, km", c => c.ToKm)
                .Number("expected", "failures expected", c => c.Expected)
                .Number("seen", "failures seen", c => c.Seen), m => m.ByDistance)
            .List("by_group", "the same by group; empty where no groups are named", new JsonForm<MisfitGroup>()
                .Text("group", "the group", g => g.Name)
                .Number("vehicles", "its vehicles", g => g.Vehicles)
                .Number("expected", "failures expected", g => g.Expected)
                .Number("seen", "failures seen", g => g.Seen)
                .Number("p_value", "how often chance alone is as far off", g => g.PValue), m => m.ByGroup), r => r.Misfit)
        .Object("data_only", "what the field's records say without the model", new JsonForm<LearnResult>()
            .List("kaplan_meier", "survival behind each failure, by Kaplan and Meier, or Turnbull where intervals overlap",
                new JsonForm<SurvivalStep>()
                    .Number("distance_km", "the distance, km", s => s.At)
                    .Number("survival", "the share that is left", s => s.Survival.Estimate)
                    .Number("low", "lower end of the 95 % interval", s => s.Survival.Low)
                    .Number("high", "upper end", s => s.Survival.High), r => r.Data.Steps)
            .Object("weibull", "the Weibull of greatest likelihood; null where the records determine none", new JsonForm<FamilyFit>()
                .Number("shape", "its shape", f => ((Weibull)f.Distribution).Shape)
                .Number("scale", "its scale, km", f => ((Weibull)f.Distribution).Scale)
                .Number("log_likelihood", "logarithm of its likelihood, densities per km", f => f.LogLikelihood), r => r.Data.Weibull).OrNull()
            .Object("lognormal", "the lognormal; null likewise", new JsonForm<FamilyFit>()
                .Number("mu", "mean of ln km", f => Math.Log(((Lognormal)f.Distribution).MedianValue))
                .Number("sigma", "standard deviation of ln km", f => ((Lognormal)f.Distribution).StandardDeviationOfLn)
                .Number("log_likelihood", "logarithm of its likelihood, densities per km", f => f.LogLikelihood), r => r.Data.Lognormal).OrNull(),
            r => r)
        .List("factors", "what is unknown, that of which the data say most first", new JsonForm<LearnedFactor>()
            .Text("name", "the factor", f => f.Name)
            .Text("unit", "its unit; empty for a pure number", f => f.Factor.Unit)
            .Object("prior", "before the data; null for a choice", MomentsForm, f => f.Prior).OrNull()
            .Object("posterior", "with the data; null for a choice", MomentsForm, f => f.Posterior).OrNull()
            .List("states", "the states of a choice; empty for others", new JsonForm<(string State, double Prior, double Posterior)>()
                .Text("state", "the state", s => s.State)
                .Number("prior", "its probability before", s => s.Prior)
                .Number("posterior", "its probability with the data", s => s.Posterior), f => f.States)
            .Number("bits", "what the data say of it, in bits", f => f.Bits), r => r.Factors)
        .List("not_told_apart", "pairs that the data know together better than each by itself", new JsonForm<Entanglement>()
            .Text("first", "one of them", e => e.First)
            .Text("second", "the other", e => e.Second)
            .Number("strength", "their correlation in normal scores; of a choice the share of the other's variance that its states explain",
                e => e.Strength)
            .List("by_state", "of a choice: each state with its probability and the mean of the other", new JsonForm<(string State, double Probability, double Mean)>()
                .Text("state", "the state", s => s.State)
                .Number("probability", "its probability", s => s.Probability)
                .Number("mean", "mean of the other with it", s => s.Mean), e => e.ByState), r => r.Entangled)
        .List("failure_probability", "the failure probability by distance, before and after: mean and middle 95 % of what is unknown",
            new JsonForm<(LearnedProbability P, LearnResult R, int Place)>()
            .Number("distance_km", "the distance, km", p => p.P.DistanceKm)
            .Interval("before", "before the data", p => p.P.Before)
            .Interval("after", "with the data", p => p.P.After)
            .Interval("after_mean", "the mean with the data, and the interval of the sample", p => p.P.Error)
            .Object("weibull", "of the Weibull fitted to the data alone, with bounds by the ratio of likelihoods; left out where there is none",
                CommonForms.Interval, p => p.R.Data.OfWeibull.IsEmpty ? default : p.R.Data.OfWeibull[p.Place]).Optional(),
            r => r.Curve.Select((p, i) => (p, r, i)))
        .Number("log_marginal_likelihood", "logarithm of the marginal likelihood, densities per km", r => r.LogMarginalLikelihood.Estimate)
        .Interval("log_marginal_likelihood_interval", "the same with its interval", r => r.LogMarginalLikelihood)
        .List("rivals", "other scenarios against the same data; left out where there are none", new JsonForm<RivalScenario>()
            .Text("file", "its file", v => v.File)
            .Interval("log_marginal_likelihood", "logarithm of the marginal likelihood under it", v => v.LogMarginalLikelihood)
            .Interval("bayes_factor", "how many times as likely the data are under the first scenario", v => v.BayesFactor)
            .Flag("misfit", "whether it and the data disagree", v => v.IsMisfit), r => r.Rivals.IsEmpty ? null : r.Rivals).Optional()
        .Number("effective_share", "of the shape written with --out, against the exact posterior; left out without it", r => r.Shape?.Share).Optional()
        .Number("effective_sample_size", "effective sample size of the posterior", r => r.EffectiveSampleSize)
        .Whole("rows", "values of what is unknown that were weighed", r => r.Rows)
        .Whole("vehicles", "vehicles that the likelihood of each was averaged over", r => r.Vehicles)
        .Whole("pilots", "pilots drawn to find where the data lie", r => r.Pilots)
        .Word("life_method", "how the likelihood of a life is found: exactly given the damage, or by counting", ["conditional", "counted"],
            r => r.IsCounted ? "counted" : "conditional");

    public static string[] Header { get; } =
        ["distance_km", "before", "before_low", "before_high", "after", "after_low", "after_high", "weibull", "weibull_low", "weibull_high"];

    public static IEnumerable<string[]> Rows(LearnResult result) => result.Curve.Select((p, i) => (string[])
    [
        Cells.Of(p.DistanceKm), Cells.Of(p.Before.Estimate), Cells.Of(p.Before.Low), Cells.Of(p.Before.High), Cells.Of(p.After.Estimate),
        Cells.Of(p.After.Low), Cells.Of(p.After.High),
        .. result.Data.OfWeibull.IsEmpty ? ["", "", ""] : new[]
        {
            Cells.Of(result.Data.OfWeibull[i].Estimate), Cells.Of(result.Data.OfWeibull[i].Low), Cells.Of(result.Data.OfWeibull[i].High),
        },
    ]);
}
