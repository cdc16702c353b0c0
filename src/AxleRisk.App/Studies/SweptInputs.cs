using System.Collections.Immutable;
using System.CommandLine;
using System.Text.RegularExpressions;
using AxleRisk.Core.Analyses.Sweeps;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Studies;

/// <summary>Swept inputs as they are written: <c>axle.wall_mm=5..9:20</c>.</summary>
internal static partial class SweptInputs
{
    /// <summary>What stands for their value in the help.</summary>
    public const string Placeholder = "KEY=FROM..TO[:STEPS]";

    private const int Most = 2;

    /// <summary>The option that names them.</summary>
    public static Option<string[]> Option(string description)
    {
        var option = new Option<string[]>("--input") { Description = description, HelpName = Placeholder };
        option.Validators.Add(result =>
        {
            string[] texts = [.. result.Tokens.Select(t => t.Value)];
            if (texts.FirstOrDefault(t => Parse(t) is null) is { } wrong)
            {
                result.AddError($"--input must be KEY=FROM..TO or KEY=FROM..TO:STEPS with up to {SweptInput.MostSteps} steps, such as axle.wall_mm=5..9, not \"{wrong}\"");
            }
            else if (texts.Length > Most || texts.Select(t => Parse(t)!.Input).Distinct().Count() < texts.Length)
            {
                result.AddError($"--input may name at most {Most} inputs, each once");
            }
        });
        return option;
    }

    /// <summary>The names of all inputs that may be moved in a scenario.</summary>
    public static IEnumerable<string> Of(Scenario scenario) => scenario.Inputs.Select(i => i.Name).Concat(scenario.WordNames);

    /// <summary>Texts that were checked.</summary>
    public static ImmutableArray<SweptInput> Parse(string[] texts) => [.. texts.Select(t => Parse(t)!)];

    /// <summary>One text; null where it is none.</summary>
    public static SweptInput? Parse(string text) => Form().Match(text) is { Success: true, Groups: var g }
        && (g["steps"].Length == 0 || (int.TryParse(g["steps"].Value, out int steps) && steps is >= 1 and <= SweptInput.MostSteps))
        ? new SweptInput(g["key"].Value, g["from"].Value, g["to"].Value,
            g["steps"].Length == 0 ? SweptInput.UsualSteps : int.Parse(g["steps"].Value))
        : null;

    /// <summary>Inputs as arguments of a command, with a space before each.</summary>
    public static string Arguments(ImmutableArray<SweptInput> inputs) => string.Concat(inputs.Select(i => $" --input {Write(i)}"));

    /// <summary>One input as it is written.</summary>
    public static string Write(SweptInput i) => $"{i.Input}={i.From}..{i.To}{(i.Steps == SweptInput.UsualSteps ? "" : $":{i.Steps}")}";

    [GeneratedRegex(@"^(?<key>[\w.-]+)=(?<from>[^.:]+(\.\d+)?|\.\d+)\.\.(?<to>[^:]+)(:(?<steps>\d+))?$")]
    private static partial Regex Form();
}
