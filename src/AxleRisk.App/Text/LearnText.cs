using AxleRisk.Core.Analyses.Learning;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Text;

/// <summary>What the data teach, in words and tables.</summary>
internal static class LearnText
{
    public const string CurveReading =
        "before, after: the mean failure probability, and the middle 95 % of what is unknown. data alone: a Weibull fitted to the records, with "
        + "bounds by the ratio of likelihoods. The sample's own error of the mean is below what is printed unless it is told.";

    public const string FactorReading =
        "bits: what the data say of it; 1 bit halves what it may be, 0 says nothing. Points are of all that is unknown together: what "
        + "could not be told apart is known better than its columns show.";

    /// <summary>What data there are.</summary>
    public static string Records(LearnResult result)
    {
        string[] parts =
        [
            .. result.Field.Records.IsEmpty ? [] : new[]
            { $"{result.Field.Vehicles:#,0} vehicles of the field ({Printable.Line(result.Field.File)}), {result.Field.Failures:#,0} failed" },
            .. result.Gauges.Runs.IsEmpty ? [] : new[] { $"{result.Gauges.Runs.Length} gauge runs ({Printable.Line(result.Gauges.File)})" },
        ];
        return string.Join("; ", parts) + ".";
    }

    /// <summary>That data and model disagree.</summary>
    public static string Disagree(LearnResult result) => Disagree(result.Misfit) + OfLooks(result);

    // The check counts failures by distance; looks change none.
    private static string OfLooks(LearnResult result) => result.Field.Records.All(r => r.Look is null) ? ""
        : " The check is of lives: what looks for the crack have found is learned from, and not checked.";

    private static string Disagree(MisfitResult misfit) =>
        $"DATA AND MODEL DISAGREE: failures do not fall as the scenario has them, whatever the unknown (p = {P(misfit.PValue)}). Use no figure below "
        + "before you know why: records that are not of this vehicle or use, a cause that the scenario leaves out, too little spread stated.";

    /// <summary>Whether data and model agree, where they do.</summary>
    public static string Agree(LearnResult result)
    {
        MisfitResult m = result.Misfit;
        MisfitGroup[] odd = [.. m.ByGroup.Where(g => g.PValue < MisfitResult.Bad / m.ByGroup.Length)];
        return (result.Field.Records.IsEmpty ? "There are no records to check the model against."
                : m.IsMisfit ? ""
                : $"Data and model agree: {Count(m.Expected)} failures expected after learning, {Count(m.Seen)} seen (p = {P(m.PValue)})." + OfLooks(result))
            + (odd.Length == 0 ? "" : $" But {string.Join(", ", odd.Select(g => $"{Printable.Line(g.Name)} (p = {P(g.PValue)})"))} "
                + $"{(odd.Length == 1 ? "has" : "have")} not the failures that one model for all groups gives: learn from it alone.");
    }

    /// <summary>Failures by distance, seen and expected.</summary>
    public static TextTable Misfit(MisfitResult misfit)
    {
        var table = new TextTable("distance, km", "seen", "expected");
        foreach (MisfitCount c in misfit.ByDistance)
        {
            table.Add($"{Figures.Km(c.FromKm)} to {Figures.Km(c.ToKm)}", Count(c.Seen), Count(c.Expected));
        }

        return table;
    }

    /// <summary>The same by group.</summary>
    public static TextTable Groups(MisfitResult misfit)
    {
        var table = new TextTable("group", "vehicles", "seen", "expected", "p");
        foreach (MisfitGroup g in misfit.ByGroup)
        {
            table.Add(g.Name.Length > 0 ? Printable.Line(g.Name)
                : "(none)", g.Vehicles.ToString("#,0"), Count(g.Seen), Count(g.Expected), P(g.PValue));
        }

        return table;
    }

    /// <summary>The curve.</summary>
    public static TextTable Curve(LearnResult result)
    {
        var table = new TextTable(">km", "before", "95 % band", "after", "95 % band", "data alone");
        for (int i = 0; i < result.Curve.Length; i++)
        {
            LearnedProbability p = result.Curve[i];
            table.Add(
                Figures.Km(p.DistanceKm), Short(p.Before.Estimate), Band(p.Before), Short(p.After.Estimate), Band(p.After),
                result.Data.OfWeibull.IsEmpty ? "" : Band(result.Data.OfWeibull[i]));
        }

        return table;
    }

    /// <summary>The continuous unknown things.</summary>
    public static TextTable Factors(Scenario scenario, LearnResult result)
    {
        var table = new TextTable("factor", "before: 5", "50", "95 %", "after: 5", "50", "95 %", "bits");
        LearnedFactor[] all = [.. result.Factors.Where(f => f.Prior is not null)];
        string[] names = TextTable.Shorten([.. all.Select(f => Label(scenario, f.Name))], 27);
        for (int i = 0; i < all.Length; i++)
        {
            (Moments before, Moments after) = (all[i].Prior!, all[i].Posterior!);
            table.AddNoted(
                all[i].Name, names[i], Number(before.Low), Number(before.Median), Number(before.High), Number(after.Low),
                    Number(after.Median),
                Number(after.High), Bits(all[i].Bits));
        }

        return table;
    }

    /// <summary>The choices.</summary>
    public static TextTable Choices(Scenario scenario, LearnResult result)
    {
        var table = new TextTable("choice", "<state", "before", "after", "bits");
        foreach (LearnedFactor f in result.Factors.Where(f => f.Prior is null))
        {
            for (int k = 0; k < f.States.Length; k++)
            {
                (string state, double before, double after) = f.States[k];
                table.Add(
                    k == 0 ? TextTable.Shorten(Label(scenario, f.Name), 30) : "", state, Figures.Share(before), Figures.Share(after),
                    k == 0 ? Bits(f.Bits) : "");
            }
        }

        return table;
    }

    /// <summary>A pair that could not be told apart, in words.</summary>
    public static string Pair(Scenario scenario, Entanglement e)
    {
        (string first, string second) = (Label(scenario, e.First), Label(scenario, e.Second));
        return e.IsChoice
            ? $"{first} and {second}: {string.Join("; ", e.ByState.Where(s => s.Probability > 0.005).Select(s => $"{s.State} ({Figures.Share(s.Probability)}) goes with {second} {Number(s.Mean)}"))}."
            : $"{first} and {second} (correlation {e.Strength:0.00}): more of the one goes with {(e.Strength > 0 ? "more" : "less")} of the other; measuring one would tell both.";
    }

    /// <summary>The answer at the required distance.</summary>
    public static string Answer(LearnedProbability p) => $"{Figures.Probability(p.After.Estimate)}, 95 % band {Figures.ProbabilityRange(p.After)}";

    /// <summary>What it was before.</summary>
    public static string Before(LearnResult result, LearnedProbability p)
    {
        double narrower = (p.Before.High - p.Before.Low) / (p.After.High - p.After.Low);
        int at = result.Curve.IndexOf(p);
        string alone = result.Data.OfWeibull.IsEmpty ? "" : $" A Weibull of the records alone has {Figures.ProbabilityRange(result.Data.OfWeibull[at])}.";
        return $"Before the data {Figures.Probability(p.Before.Estimate)}, band {Figures.ProbabilityRange(p.Before)}: "
            + (narrower >= 1.05 ? $"it is {narrower:0.0} times as narrow now." : "the data have not narrowed it.") + alone;
    }

    /// <summary>Which unknown things the data say most of.</summary>
    public static string Learned(Scenario scenario, LearnResult result)
    {
        LearnedFactor[] told = [.. result.Factors.Where(f => f.Bits >= 0.1).Take(3)];
        return told.Length == 0 ? "The data say next to nothing of what is unknown."
            : $"The data say most of {string.Join(", ", told.Select(f => $"{Label(scenario, f.Name)} ({Bits(f.Bits)} bits)"))}.";
    }

    /// <summary>How well the shape written stands for the posterior.</summary>
    public static string Shape(LearnedShape shape) =>
        $"Written: what was learned as {shape.Learned.States.Length} normal {(shape.Learned.States.Length == 1 ? "shape" : "shapes")} of scores, which stand for "
        + $"the exact posterior with an effective share of {Figures.Share(shape.Share)}; {shape.Sample.Length:#,0} values of the exact one stand beside it.";

    /// <summary>That it does not stand for it well.</summary>
    public static string Bad(LearnedShape shape) =>
        $"The shape written stands badly for what was learned: an effective share of {Figures.Share(shape.Share)}, and 80 % is the least to rely on. Compare the "
        + "written scenario's risk with the figures above; more data, or fewer unknown inputs that are not told apart, make it rounder.";

    /// <summary>Which scenario the data support, in words (the grades of Kass and Raftery 1995).</summary>
    public static string Rival(RivalScenario rival)
    {
        Interval b = rival.BayesFactor;
        (double factor, string which) = b.Estimate >= 1 ? (b.Estimate, "this scenario") : (1 / b.Estimate, "the other");
        string words = factor < 3 ? "the data hardly tell the two apart"
            : $"the data speak {(factor < 20 ? "for" : factor < 150 ? "strongly for" : "very strongly for")} {which}";
        return $"Against {Printable.Line(rival.File)}: {words}. The data are {Figures.Ratio(b.Estimate)} times ({Figures.Ratio(b.Low)} to {Figures.Ratio(b.High)}) as likely under this "
            + $"scenario{(rival.IsMisfit ? "; that one and the data disagree" : "")}.";
    }

    /// <summary>The method in words.</summary>
    public static string Method(LearnResult result) =>
        $"{result.Rows:#,0} values of what is unknown weighed by the data, effective sample {result.EffectiveSampleSize:#,0}, "
        + (result.Vehicles > 1 ? $"each averaged over the same {result.Vehicles:#,0} vehicles, " : "")
        + (result.IsCounted ? "lives counted and spread by a tenth" : "lives exact given the damage")
        + $", ln of the marginal likelihood {result.LogMarginalLikelihood.Estimate:0.00}";

    private static string Label(Scenario scenario, string name) => scenario.LabelOf(name);

    private static string Band(Interval p) => $"{Short(p.Low)}..{Short(p.High)}";

    private static string Short(double p) => p >= 0.1 ? (100 * p).ToString("0.0") : p >= 0.001 ? (100 * p).ToString("0.00")
        : p > 0 ? (100 * p).ToString("0.#e-0") : "0";

    private static string Number(double x) => x.ToString(Math.Abs(x) is >= 1e-3 and < 1e5 ? "G4" : "0.##e-0");

    private static string Count(double x) => x >= 100 || x == Math.Round(x) ? x.ToString("#,0") : x.ToString("0.0");

    private static string P(double p) => p < 0.0025 ? "below 0.0025" : p.ToString("0.00#");

    private static string Bits(double bits) => bits.ToString("0.0#");
}
