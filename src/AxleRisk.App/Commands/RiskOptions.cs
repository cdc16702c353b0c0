using System.Collections.Immutable;
using System.CommandLine;
using AxleRisk.Core.Analyses.Risk;

namespace AxleRisk.App.Commands;

/// <summary>The options of the risk command alone.</summary>
internal sealed class RiskOptions
{
    public RiskOptions()
    {
        Method.AcceptOnlyFromAmong("auto", "crude", "conditional", "importance");
        Distances.Validators.Add(result =>
        {
            if (!Text(result).Split(',').All(part => double.TryParse(part, out double km) && double.IsFinite(km) && km > 0))
            {
                result.AddError($"--distances must be numbers above 0 separated by commas, not \"{Text(result)}\"");
            }
        });
        UntilCov.Validators.Add(result =>
        {
            if (!(double.TryParse(Text(result), out double cov) && cov > 0 && cov < 1))
            {
                result.AddError($"--until-cov must be a number between 0 and 1, not \"{Text(result)}\"");
            }
        });
        Part.Validators.Add(result =>
        {
            if (ToPart(Text(result)) is null)
            {
                result.AddError($"--part must be K/M with K from 1 to M, such as 3/16, not \"{Text(result)}\"");
            }
        });
    }

    public Option<string> Method { get; } = new("--method")
    {
        Description = "how probabilities are estimated",
        DefaultValueFactory = _ => "auto",
    };

    public Option<bool> CrossCheck { get; } = new("--cross-check") { Description = "check rare probabilities by subset simulation" };

    public Option<string?> Distances { get; } = new("--distances")
    {
        Description = "distances of the table in km, separated by commas",
        HelpName = "KM,KM,...",
    };

    public Option<string?> UntilCov { get; } = new("--until-cov")
    {
        Description = "stop when the failure probability has this coefficient of variation",
        HelpName = "COV",
    };

    public Option<string?> Part { get; } = new("--part")
    {
        Description = "run the K-th of M parts of the study; needs --out",
        HelpName = "K/M",
    };

    public OutputFile Out { get; } = new("--out")
    {
        Description = "keep the state of the study in this file, for merge and --resume",
        HelpName = "PATH",
    };

    public Option<bool> Resume { get; } = new("--resume") { Description = "go on from the file of --out, if it is there" };

    public void AddTo(Command command)
    {
        foreach (Option option in new Option[] { Method, CrossCheck, Distances, UntilCov, Part, Out, Resume })
        {
            command.Options.Add(option);
        }

        command.Validators.Add(result =>
        {
            if ((result.GetResult(Part) is not null || result.GetResult(Resume) is { Implicit: false }) && result.GetResult(Out) is null)
            {
                result.AddError("--part and --resume need --out PATH, the file of the study's state");
            }
        });
    }

    public RiskQuestion Question(ParseResult parsed) => new()
    {
        Method = Enum.Parse<RiskMethod>(parsed.GetValue(Method)!, ignoreCase: true),
        DistancesKm = parsed.GetValue(Distances) is { } km ? [.. km.Split(',').Select(double.Parse)] : ImmutableArray<double>.Empty,
        UntilCov = parsed.GetValue(UntilCov) is { } cov ? double.Parse(cov) : 0,
        CrossCheck = parsed.GetValue(CrossCheck),
        Part = ToPart(parsed.GetValue(Part) ?? "1/1")!.Value,
    };

    private static StudyPart? ToPart(string text) =>
        text.Split('/') is [var k, var m] && int.TryParse(k, out int number) && int.TryParse(m, out int of)
            && number >= 1 && number <= of && of <= 10_000
            ? new StudyPart(number, of)
            : null;

    private static string Text(System.CommandLine.Parsing.OptionResult result) => result.Tokens.Count == 1 ? result.Tokens[0].Value : "";
}
