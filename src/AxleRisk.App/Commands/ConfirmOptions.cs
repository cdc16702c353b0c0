using System.CommandLine;
using AxleRisk.Core.Analyses.Confirmation;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.App.Commands;

/// <summary>The options of the confirm command alone.</summary>
internal sealed class ConfirmOptions
{
    private static readonly ConfirmationQuestion Defaults = new();

    public ConfirmOptions() => LiftOff.AcceptOnlyFromAmong("yes", "no");

    public Option<string?> Points { get; } = Number(
        "--points", "N", $"sampled points besides the base case, half of them near failure (default {Defaults.Points})", x =>
            x is >= 0 and <= 1000 && x == Math.Floor(x),
        "a whole number from 0 to 1,000");

    public Option<string?> Km { get; } = Number(
        "--km", "KM", $"length of each of the sixteen records of a leg (default {Defaults.KmPerRecord:0.#})", x =>
            x is > 0 and <= 100_000, "a number above 0 and up to 100,000");

    public Option<string> LiftOff { get; } = new("--lift-off")
    {
        Description = "whether a wheel leaves the ground where the tyre would have to pull",
        HelpName = "yes|no",
        DefaultValueFactory = _ => "yes",
    };

    public Option<string?> BumpClearance { get; } = Number(
        "--bump-clearance", "MM", "compression from the static position to a bump stop (default: no stop)", x =>
            x is > 0 and < 1e6, "a number above 0");

    public Option<string?> BumpStop { get; } = Number(
        "--bump-stop", "N/MM", $"rate of the bump stop beside the spring's (default {Defaults.BumpStopNPerMm:0})", x =>
            x is > 0 and <= 1e5, "a number above 0 and up to 100,000");

    public Option<string?> DamperBump { get; } = Number(
        "--damper-bump", "FACTOR", "damper rate in compression over the stated one (default 1)", x =>
            x is > 0 and <= 10, "a number above 0 and up to 10");

    public Option<string?> DamperRebound { get; } = Number(
        "--damper-rebound", "FACTOR", "damper rate in extension over the stated one (default 1)", x =>
            x is > 0 and <= 10, "a number above 0 and up to 10");

    public Option<string?> Stretch { get; } = Number(
        "--stretch", "N", "the stretch of the vehicle's history that is simulated (default the last)", x =>
            x >= 1 && x == Math.Floor(x), "a whole number from 1 on");

    /// <summary>The place of the stretch that is simulated; null where there is no history.</summary>
    /// <exception cref="StudyException">The scenario has no such stretch.</exception>
    public int? StretchOf(ParseResult parsed, Scenario scenario)
    {
        int all = scenario.History.Length;
        int? asked = parsed.GetValue(Stretch) is { } text ? (int)Math.Min(int.MaxValue, double.Parse(text)) : null;
        return asked is null || asked <= all ? asked ?? (all > 0 ? all : null)
            : throw new StudyException(all == 0 ? "the scenario has no [[history]], so --stretch has no meaning"
                : $"the scenario has {all} stretches of history: --stretch must be a whole number from 1 to {all}");
    }

    public void AddTo(Command command)
    {
        foreach (Option option in new Option[] { Stretch, Points, Km, LiftOff, BumpClearance, BumpStop, DamperBump, DamperRebound })
        {
            command.Options.Add(option);
        }

        command.Validators.Add(result =>
        {
            if (result.GetResult(BumpStop) is not null && result.GetResult(BumpClearance) is null)
            {
                result.AddError("--bump-stop needs --bump-clearance MM, where the stop is met");
            }
        });
    }

    public ConfirmationQuestion Question(ParseResult parsed, Option<string?> seed)
    {
        double Of(Option<string?> option, double standard) => parsed.GetValue(option) is { } text ? double.Parse(text) : standard;
        return new ConfirmationQuestion
        {
            Points = (int)Of(Points, Defaults.Points),
            KmPerRecord = Of(Km, Defaults.KmPerRecord),
            LiftOff = parsed.GetValue(LiftOff) == "yes",
            BumpClearanceMm = Of(BumpClearance, Defaults.BumpClearanceMm),
            BumpStopNPerMm = Of(BumpStop, Defaults.BumpStopNPerMm),
            BumpDamping = Of(DamperBump, Defaults.BumpDamping),
            ReboundDamping = Of(DamperRebound, Defaults.ReboundDamping),
            Seed = parsed.GetValue(seed) is { } s ? ulong.Parse(s) : StudySettings.DefaultSeed,
        };
    }

    private static Option<string?> Number(string name, string help, string description, Predicate<double> isRight, string right)
    {
        var option = new Option<string?>(name) { Description = description, HelpName = help };
        option.Validators.Add(result =>
        {
            string text = result.Tokens.Count == 1 ? result.Tokens[0].Value : "";
            if (!(double.TryParse(text, out double x) && isRight(x)))
            {
                result.AddError($"{name} must be {right}, not \"{text}\"");
            }
        });
        return option;
    }
}
