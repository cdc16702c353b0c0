using AxleRisk.App.Documents.Forms;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Numerics;

namespace AxleRisk.App.Documents;

/// <summary>A trip as JSON and as rows.</summary>
internal static class TripDocument
{
    private static readonly JsonForm<TripLook> Look = new JsonForm<TripLook>()
        .Text("before_leg", "the leg before which it is done; null for one before every leg", l => l.Leg).OrNull()
        .Text("method", "the way of looking", l => l.Method)
        .Interval("found", "probability that a vehicle that set out comes whole to the look and the crack is found", l => l.Found)
        .Interval("fails_after", "probability that a vehicle whole before the leg fails on the rest of the trip, not looked at", l => l.FailsAfter)
        .Interval("fails_after_clean_look", "the same where the look has found nothing", l => l.FailsAfterClean)
        .Interval("failure_probability", "failure probability of the trip with this look, where a vehicle found cracked goes no further",
            l => l.Trip);

    private static readonly JsonForm<CardResult> Card = new JsonForm<CardResult>()
        .Number("hours", "travel time, h", c => c.Hours)
        .Number("hours_as_planned", "travel time at the planned speeds, h", c => c.HoursAsPlanned)
        .Number("target", "the failure probability to be kept", c => c.Target)
        .Probability("risk", "failure probability on the trip, by vehicles that had no part in the search", c => c.Risk)
        .List("legs", "the legs, in the order they are driven", new JsonForm<CardLeg>()
            .Text("name", "the leg", l => l.Name)
            .Number("km", "its mean distance, km", l => l.Km)
            .Number("speed_km_per_h", "the speed not to be exceeded, km/h", l => l.KmPerHour)
            .Number("planned_km_per_h", "the planned speed, km/h", l => l.PlannedKmPerHour)
            .Number("hours", "its travel time, h", l => l.Km / l.KmPerHour)
            .NumberOrNull("share", "its share of the failures", l => l.Share), c => c.Legs)
        .NumberOrNull("payload_kg", "the load on every leg, kg; null where it stays as planned", c => c.PayloadKg)
        .Texts("remedies", "the remedies taken before the start", c => c.Remedies.Select(r => r.Name))
        .Flag("keeps_target", "whether the whole interval of the risk keeps the target; if not, this is the least risk found", c => c.KeepsTarget)
        .Object("look", "the best one look for the crack at these speeds; only where there is one", Look, c => c.Look).Optional()
        .List("prices", "what each constraint costs in travel time", new JsonForm<CardPrice>()
            .Word("of", "what is constrained", ["without_remedy", "load", "no_target"], p => p.Kind switch
            {
                CardConstraint.WithoutRemedy => "without_remedy",
                CardConstraint.OtherLoad => "load",
                _ => "no_target",
            })
            .Text("remedy", "the remedy that is not taken; null otherwise", p => p.Remedy?.Name).OrNull()
            .NumberOrNull("payload_kg", "the load, kg; null for the planned one, or where it is no load", p => p.PayloadKg)
            .NumberOrNull("hours", "the least travel time with it, h; null where no combination keeps the target", p => p.Hours)
            .Texts("taken", "the remedies that are taken then", p => p.Taken.Select(r => r.Name)),
            c => c.Prices)
        .Whole("searched", "combinations of load and remedies that were searched", c => c.Searched)
        .Whole("sorting_rows", "vehicles that sorted them", c => c.SortingRows)
        .Whole("searched_with_more", "those left after that, which were searched with more vehicles", c => c.SearchedWithMore)
        .Whole("search_rows", "vehicles of that search", c => c.SearchRows)
        .Whole("rows", "vehicles that the risk is told of", c => c.Rows);

    public static JsonForm<TripResult> Form { get; } = new JsonForm<TripResult>()
        .Text("summary", "the answer in a sentence or two",
            r => string.Join(" ", new[] { TripWords.Verdict(r), TripWords.Looking(r), TripWords.Advice(r) }.Where(t => t.Length > 0)))
        .Number("km", "mean distance of the trip, km", r => r.Km)
        .Number("already_driven_km", "mean distance before it, km", r => r.AlreadyDrivenKm)
        .Word("event_method", "how the event's probability is found: exactly given the damage, or by counting", CommonForms.EventMethods,
            r => r.IsConditional ? "conditional" : "crude")
        .Object("seen", "what was seen of the vehicle, given which all figures are; only of one that is known to be whole", new JsonForm<TripEvidence>()
            .With(SeenDocument.Form, s => s.Evidence)
            .Probability("failure_probability_unseen", "failure probability on the trip had nothing of that been seen", s => s.Unseen)
            .Number("effective_vehicles", "how many equally weighted vehicles those drawn are worth", s => s.Effective), r => r.Seen)
        .Optional()
        .Interval("reached_start", "probability of reaching the start", r => r.Reached)
        .Probability("failure_probability", "failure probability on the trip, of those that reach its start", r => r.Probability)
        .NumberOrNull("target_risk", "the failure probability to be kept; null where none is stated", r => r.Target)
        .List("legs", "the legs, in the order they are driven", new JsonForm<TripLegRisk>()
            .Text("leg", "the leg", l => l.Name)
            .Number("km", "its mean distance, km", l => l.Km)
            .Number("end_km", "mean distance at its end, from the trip's start, km", l => l.EndKm)
            .Probability("failure_probability", "of those that reach the leg", l => l.Conditional)
            .Interval("share", "its share of the trip's failures", l => l.Share)
            .Probability("cumulative", "failed by its end, of those that reach the trip's start", l => l.Cumulative), r => r.Legs)
        .List("looks", "what one look for the crack before each leg is worth, and one before every leg; only where a crack and ways of looking are stated",
            Look, r => r.Looks.IsEmpty ? null : r.Looks)
        .Optional()
        .List("rare_events", "the legs too rare to sample, of all vehicles, also those that do not reach the start", new JsonForm<RareLeg>()
            .Text("leg", "the leg", r => r.Leg)
            .With(RareEventDocument.Form, r => r.Answer), r => r.Rare)
        .List("limits", "what keeps the target, one thing at a time; empty without a target", new JsonForm<TripLimit>()
            .Word("of", "what is set", ["all_speeds", "load", "leg_speed"], l => NameOf(l.Lever))
            .Text("leg", "the leg whose speed it is; null otherwise", l => l.Lever.Leg).OrNull()
            .Text("unit", "its unit; empty for a factor", l => l.Lever.Unit)
            .NumberOrNull("planned", "its value as planned", l => l.Lever.Planned)
            .Number("tried_from", "the least value tried", l => l.Lever.Low)
            .Number("tried_to", "the greatest value tried", l => l.Lever.High)
            .Text("words", "the limit in words", TripWords.Limit)
            .List("windows", "the ranges that keep the target, rising", new JsonForm<TripWindow>()
                .Maybe("from", "lower end; null at the end of what was tried", CommonForms.Interval, w => w.From)
                .Maybe("to", "upper end; null at the end of what was tried", CommonForms.Interval, w => w.To), l => l.Windows)
            .NumberOrNull("best_at", "the value with the least failure probability of those tried", l => l.BestAt)
            .Interval("least_failure_probability", "the failure probability there", l => l.Least), r => r.Limits)
        .Object("card", "the crew's card; null where there is no target or none was asked for", Card, r => r.Card).OrNull()
        .List("remedies", "the remedies, the least failure probability first", new JsonForm<TripRemedy>()
            .Text("name", "the remedy", r => r.Remedy.Name)
            .NumberOrNull("cost", "what it costs; null where it does not say", r => r.Remedy.Cost)
            .Probability("failure_probability", "failure probability on the trip with it", r => r.Probability)
            .Interval("difference", "from the trip as planned, negative where fewer fail; paired", r => r.Difference)
            .Interval("ratio", "to the trip as planned; paired", r => r.Ratio)
            .Flag("distinguishable", "whether the two can be told apart", r => r.IsDistinct), r => r.Remedies)
        .List("combinations", "the worst combinations for this trip", CombineDocument.Worst, r => r.Combinations)
        .Object("searched", "what was searched for them; null where nothing is uncertain or the run was ended early",
            CombineDocument.Searched,
            r => r.Searched).OrNull()
        .Whole("evaluations_of_all_questions", "evaluations for all questions together; `evaluations` are the vehicles",
            r => r.AllEvaluations);

    public static string[] Header { get; } = ["figure", "of", "estimate", "low", "high"];

    public static IEnumerable<string[]> Rows(TripResult result) =>
    [
        Cells.Row("reached_start", "", result.Reached),
        Cells.Row("failure_probability", "trip", result.Probability),
        .. result.Legs.Select(l => Cells.Row("failure_probability", l.Name, l.Conditional)),
        .. result.Legs.Select(l => Cells.Row("share", l.Name, l.Share)),
        .. result.Legs.Select(l => Cells.Row("cumulative", l.Name, l.Cumulative)),
        .. result.Limits.SelectMany(Rows),
        .. result.Remedies.Select(r => Cells.Row("remedy", r.Remedy.Name, r.Probability)),
        .. result.Remedies.Select(r => Cells.Row("remedy_ratio", r.Remedy.Name, r.Ratio)),
        .. result.Card is not { } card ? [] : new[]
        {
            Cells.Row("card_hours", "", new Interval(card.Hours, card.Hours, card.Hours)), Cells.Row("card_risk", "", card.Risk),
        },
        .. (result.Card?.Legs ?? []).Select(l => Cells.Row("card_speed_km_per_h", l.Name, new Interval(l.KmPerHour, l.KmPerHour, l.KmPerHour))),
        .. result.Combinations.Select(c => Cells.Row("combination", RangeWords.OfKeys(c.Members), c.Probability)),
    ];

    private static IEnumerable<string[]> Rows(TripLimit limit) => limit.Windows.SelectMany(w => new (string Figure, Interval? End)[]
    {
        ("limit_from", w.From), ("limit_to", w.To),
    }).Where(e => e.End is not null)
        .Select(e => Cells.Row(e.Figure, NameOf(limit.Lever) + (limit.Lever.Leg is { } leg ? $" {leg}" : ""), e.End!.Value));

    private static string NameOf(TripLever lever) => lever.Kind switch
    {
        TripLeverKind.AllSpeeds => "all_speeds",
        TripLeverKind.Load => "load",
        _ => "leg_speed",
    };
}
