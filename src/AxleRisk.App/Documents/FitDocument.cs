using AxleRisk.App.Documents.Forms;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Fits;
using AxleRisk.Files.Tables;

namespace AxleRisk.App.Documents;

/// <summary>Fits as JSON and as rows.</summary>
internal static class FitDocument
{
    private static readonly JsonForm<FamilyFit> Fit = new JsonForm<FamilyFit>()
        .Text("family", "the family, as a scenario names it", f => f.Distribution.Family)
        .Key("parameters", new JsonShape.Map(new JsonShape.Number()), "its parameters, as a scenario names them",
            f => Map(f, i => f.Parameters[i].Value))
        .Key("standard_errors", new JsonShape.Map(new JsonShape.Number(), MayBeNull: true),
            "their standard errors; null where the ends of the family are fitted too", f => Map(f, i => f.StandardErrors[i]))
        .Number("log_likelihood", "logarithm of the likelihood", f => f.LogLikelihood)
        .NumberOrNull("aicc", "corrected AIC: the less the better; null where there are too few values", f => f.CorrectedAic)
        .Object("anderson_darling", "the test of Anderson and Darling; null where values are censored or lie on fitted ends",
            new JsonForm<FamilyFit>()
                .Number("statistic", "the statistic", f => f.Statistic)
                .Number("p", "share of samples of this fit that fit worse", f => f.PValue)
                .Whole("replicates", "samples drawn", f => f.Replicates),
            f => double.IsNaN(f.PValue) ? null : f).OrNull();

    private static readonly JsonForm<Prediction> Predictive = new JsonForm<Prediction>()
        .Text("family", "the family", p => p.Fit.Distribution.Family)
        .Number("5_percent", "5 % of the next values lie below", p => p.Low)
        .Number("95_percent", "95 % of the next values lie below", p => p.High)
        .Number("widening", "how many times as far apart these are as those of the fit", p => p.Widening)
        .Word("method", "how parameters are drawn", ["bootstrap", "asymptotic"], p => p.IsBootstrap ? "bootstrap" : "asymptotic");

    public static JsonForm<(MeasuredTable Table, FitResult Result, TimeSpan Elapsed)> Form { get; } =
        new JsonForm<(MeasuredTable Table, FitResult Result, TimeSpan Elapsed)>()
            .Text("command", "the command", _ => "fit")
            .Text("file", "the file, as it was named", f => f.Table.File)
            .Text("digest", "SHA-256 of the file", f => f.Table.Digest)
            .Text("column", "the column of the values", f => f.Table.Columns.Values)
            .Text("version", "version of the program", _ => Product.Version)
            .Number("values", "the number of values", f => f.Result.Count)
            .Number("censored", "those of which only an end or two are known",
                f => f.Result.Observations.Where(o => !o.IsExact).Sum(o => o.Count))
            .List("fits", "the families that allow the values, the best first: by AICc, to which 10 is added where ends are fitted", Fit, f => f.Result.Fits)
            .Object("predictive", "what the next value is, the parameters being known from these values alone; null where it is not to be had",
                Predictive, f => f.Result.Predictive).OrNull()
            .Key("seed", new JsonShape.Whole(), "seed of the random numbers", f => f.Result.Seed)
            .Number("seconds", "time it took, s", f => Math.Round(f.Elapsed.TotalSeconds, 3))
            .Text("caution", "what must be said beside every figure", _ => Caution.Sentence);

    public static string[] Header { get; } = ["family", "parameter", "value", "standard_error", "log_likelihood", "aicc", "a2", "p"];

    public static IEnumerable<string[]> Rows(FitResult result) => result.Fits.SelectMany(f => f.Parameters.Select((p, i) => (string[])
    [
        f.Distribution.Family, p.Name, Cells.Of(p.Value), Cells.Of(f.StandardErrors[i]), Cells.Of(f.LogLikelihood),
        Cells.Of(f.CorrectedAic), Cells.Of(f.Statistic), Cells.Of(f.PValue),
    ]));

    private static System.Text.Json.Nodes.JsonObject Map(FamilyFit fit, Func<int, double> value) =>
        new(fit.Parameters.Select((p, i) => KeyValuePair.Create(p.Name, Json.Number(value(i)))));
}
