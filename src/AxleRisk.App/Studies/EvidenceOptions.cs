using System.CommandLine;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Studies;

/// <summary>What is known of the life, on the command line; it replaces what the file says of it.</summary>
internal sealed class EvidenceOptions
{
    private readonly Option<string?> failedAt = Create("--failed-at", "KM", "the axle failed at this distance", 1);
    private readonly Option<string?> failedBetween = Create("--failed-between", "A,B", "it was whole at A km and broken at B km", 2);
    private readonly Option<string?> survived = Create("--survived", "KM", "it has reached this distance unbroken", 1);

    /// <summary>The evidence with these options.</summary>
    public QuestionOptions<Evidence> Question => new([failedAt, failedBetween, survived], Apply, result =>
    {
        if (new[] { failedAt, failedBetween, survived }.Count(o => result.GetResult(o) is not null) > 1)
        {
            result.AddError("only one of --failed-at, --failed-between and --survived can be true");
        }
    });

    /// <summary>The scenario's evidence, with the life of the command line where one is given.</summary>
    private Evidence Apply(ParseResult parsed, Evidence evidence)
    {
        LifeEvidence? life =
            Distances(parsed.GetValue(failedAt)) is [var km] ? new LifeEvidence.FailedAt(km)
            : Distances(parsed.GetValue(failedBetween)) is [var from, var to] ? new LifeEvidence.FailedBetween(from, to)
            : Distances(parsed.GetValue(survived)) is [var reached] ? new LifeEvidence.Survived(reached)
            : null;
        return life is null ? evidence : evidence with { Life = life };
    }

    private static Option<string?> Create(string name, string help, string description, int numbers)
    {
        var option = new Option<string?>(name) { Description = description, HelpName = help };
        option.Validators.Add(result =>
        {
            string text = result.Tokens.Count == 1 ? result.Tokens[0].Value : "";
            if (Distances(text) is not { } km || km.Length != numbers || !IsRight(km))
            {
                string wanted = numbers == 1
                    ? "a distance in km, above 0" : "two distances in km, the second above the first, such as 60000,64000";
                result.AddError($"{name} must be {wanted}, not \"{text}\"");
            }
        });
        return option;
    }

    private static bool IsRight(double[] km) => km is [> 0] || (km is [var from, var to] && from >= 0 && to > from);

    private static double[]? Distances(string? text)
    {
        string[] parts = text?.Split(',') ?? [];
        double[] numbers = [.. parts.Select(p => double.TryParse(p, out double km) && double.IsFinite(km) ? km : double.NaN)];
        return numbers.Length == 0 || numbers.Any(double.IsNaN) ? null : numbers;
    }
}
