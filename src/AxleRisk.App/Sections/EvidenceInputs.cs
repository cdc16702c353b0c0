using AxleRisk.App.Text;
using AxleRisk.Core.Scenarios;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Sections;

/// <summary>What was found on one vehicle and how it might be explained, as the scenario states them.</summary>
internal static class EvidenceInputs
{
    private const int Rule = 18;

    public static IEnumerable<Block> Of(Scenario scenario) =>
    [
        .. scenario.Evidence.IsEmpty ? [] : new Block[] { new Subheading("The evidence, from one vehicle"), Found(scenario) },
        .. scenario.Evidence.Explanations.IsEmpty ? [] : new Block[] { Explanations(scenario) },
    ];

    /// <summary>
    /// Where each piece of evidence comes from and who answers for it: as stated, and room to fill in by hand where nothing is.
    /// </summary>
    public static IEnumerable<Block> ToSign(Scenario scenario)
    {
        var table = new TextTable("evidence", "<where it comes from", "<examined by, on");
        foreach (Piece piece in Pieces(scenario))
        {
            string examiner = Printable.Line(scenario.Block.Examiner);
            table.Add(piece.Label, OrRule(piece.Source), examiner.Length == 0 ? OrRule("") : $"{examiner}, {OrRule("")}");
        }

        return table.Count == 0 ? [] :
        [
            new Subheading("To be filled in and signed by who examined the vehicle"), table.Captioned("Where the evidence comes from"),
            new Paragraph("The figures above are worth no more than this evidence. What stands open here is to be filled in by hand, or stated in the scenario (examiner, evidence.source, source of each piece)."),
        ];
    }

    private static Table Found(Scenario scenario)
    {
        var table = new TextTable("what", "<found", "<unit", "standard deviation of the reading");
        foreach (Piece piece in Pieces(scenario))
        {
            table.AddNoted(piece.Key, piece.Label, piece.Value, piece.Unit, piece.Deviation);
        }

        return table.Captioned("What was found on the vehicle");
    }

    private static Table Explanations(Scenario scenario)
    {
        bool butFor = scenario.Evidence.Explanations.Any(e => !e.Instead.IsEmpty);
        var table = new TextTable(["explanation", "<holds when", "<likely beforehand", .. butFor ? ["<without it"] : Array.Empty<string>()]);
        foreach (Explanation e in scenario.Evidence.Explanations)
        {
            table.Add(
                Printable.Line(e.Name), string.Join("; ", e.When.Select(c => Words(scenario, c))),
                e.Prior is { } prior ? Figures.Probability(prior) : "as the inputs have it",
                string.Join("; ", e.Instead.Select(c => $"{Printable.Line(scenario.LabelOf(c.Input))} {DistributionText.Of(c)}")));
        }

        return table.Captioned("The explanations that are weighed");
    }

    private static string Words(Scenario scenario, Condition condition)
    {
        string label = Printable.Line(scenario.LabelOf(condition.Column));
        string unit = UnitOf(scenario, condition.Column) is { Length: > 0 } u ? " " + u : "";
        return !condition.States.IsEmpty
            ? $"{label} {string.Join(" or ", condition.States.Select(s => State(scenario, condition.Column, s)))}{unit}"
            : label + (double.IsFinite(condition.Above) ? $" above {Figures.Exact(condition.Above)}{unit}" : "")
                + (double.IsFinite(condition.Above) && double.IsFinite(condition.Below) ? " and" : "")
                + (double.IsFinite(condition.Below) ? $" below {Figures.Exact(condition.Below)}{unit}" : "");
    }

    private static IEnumerable<Piece> Pieces(Scenario scenario)
    {
        Evidence evidence = scenario.Evidence;
        string Source(string own) => own.Length > 0 ? own : evidence.Source;
        if (evidence.Life is { } life)
        {
            yield return life switch
            {
                LifeEvidence.FailedAt(var km) => Life("failed_at_km", "failed at", Figures.Exact(km)),
                LifeEvidence.FailedBetween(var from, var to) =>
                    Life("failed_between_km", "failed between", $"{Figures.Exact(from)} and {Figures.Exact(to)}"),
                LifeEvidence.Survived(var km) => Life("survived_km", "unbroken at", Figures.Exact(km)),
                _ => throw new ArgumentOutOfRangeException(nameof(scenario), life.GetType().Name, "a kind of life evidence that has no words"),
            };
        }

        if (evidence.CrackedAt is { } cracked)
        {
            yield return new Piece("evidence.cracked_at", "cracked at", ModeText.SectionName(cracked), "", "", evidence.Source);
        }

        foreach (Measurement m in evidence.Measured)
        {
            yield return new Piece(
                m.Factor, scenario.LabelOf(m.Factor) + ", measured", Figures.Exact(m.Value), UnitOf(scenario, m.Factor),
                Figures.Exact(m.StandardDeviation), Source(m.Source));
        }

        foreach (KnownState k in evidence.Known)
        {
            yield return new Piece(
                k.Factor, scenario.LabelOf(k.Factor) + ", known", State(scenario, k.Factor, k.Value), UnitOf(scenario, k.Factor), "",
                Source(k.Source));
        }

        foreach (CrackLook look in evidence.Looks)
        {
            yield return new Piece(
                "evidence.looks", $"{Printable.Line(look.Method.Name)} at {Figures.Exact(look.Km)} km", LookWords.Found(look), "",
                look.DepthMm is null ? "" : Figures.Exact(look.StandardDeviationMm), evidence.Source);
        }

        Piece Life(string key, string label, string km) => new("evidence." + key, label, km, "km", "", evidence.Source);
    }

    private static string State(Scenario scenario, string name, double value) =>
        scenario.FindWords(name) is { } choice ? Printable.Line(choice.Words[(int)value]) : Figures.Exact(value);

    private static string UnitOf(Scenario scenario, string name) => scenario.Inputs.FirstOrDefault(i => i.Name == name)?.Quantity.Unit ?? "";

    private static string OrRule(string text) => text.Length > 0 ? Printable.Line(text) : new string('_', Rule);

    private readonly record struct Piece(string Key, string Label, string Value, string Unit, string Deviation, string Source);
}
