using System.Diagnostics;
using System.Text.Json;
using System.Text.Json.Nodes;
using AxleRisk.App.Tests.Commands;
using AxleRisk.Files;

namespace AxleRisk.App.Tests.Fuzzing;

/// <summary>
/// Every command on a valid scenario that nobody has thought of, with a tiny budget: it answers, or says why not; no probability
/// lies outside
/// 0 to 1, no estimate outside its interval.
/// </summary>
internal sealed class HostileAnswers(HostileTexts texts)
{
    private static readonly string[] Commands =
    [
        "check", "base", "risk -n 600", "risk -n 300 --method importance", "rank -n 2500", "combine -n 1500", "remedies -n 300",
        "causes -n 3000 --survived 20000", "trip -n 512", "fleet -n 2048", "confirm --points 0 --km 0.05", "compare -n 300",
    ];

    private readonly string path = Path.Combine(TemporaryFolder.New(), "case.toml");

    /// <summary>What came of it, a kind a command.</summary>
    public HostileTally Tally { get; } = new();

    /// <summary>Takes the scenario of a number through every command, if it is valid.</summary>
    /// <returns>Whether it is.</returns>
    public bool Ask(long number)
    {
        string text = texts.Sensible(number);
        try
        {
            ScenarioReader.Parse(text, "case.toml");
        }
        catch (ScenarioException)
        {
            return false;
        }

        File.WriteAllText(path, text);
        foreach (string command in Commands)
        {
            string[] words = command.Split(' ');
            string[] files = words[0] == "compare" ? [path, Cli.Shipped("benchmark-five-legs")] : [path];
            Ask(command, number, [words[0], .. files, .. words[1..], "--json"]);
        }

        return true;
    }

    private void Ask(string command, long number, string[] arguments)
    {
        var watch = Stopwatch.StartNew();
        try
        {
            (int exit, string output, string error) = Cli.Run(arguments);
            Tally.Count(command, exit != 0, watch.Elapsed);
            if (exit == 0)
            {
                Check("", JsonNode.Parse(output), fault => Tally.Wrong(command, number, fault));
            }
            else if (exit != 2 || error.Trim().Length == 0)
            {
                Tally.Wrong(command, number, $"exit code {exit}: {error}");
            }
        }
        catch (Exception e)
        {
            Tally.Wrong(command, number,
                $"{e.GetType().Name}: {e.Message} {e.StackTrace?.Split('\n').FirstOrDefault(l => l.Contains("AxleRisk", StringComparison.Ordinal))?.Trim()}");
        }
    }

    private static void Check(string place, JsonNode? node, Action<string> fault)
    {
        switch (node)
        {
            case JsonObject o:
                CheckEstimate(place, o, fault);
                foreach ((string key, JsonNode? child) in o)
                {
                    Check($"{place}/{key}", child, fault);
                }

                break;
            case JsonArray a:
                for (int i = 0; i < a.Count; i++)
                {
                    Check($"{place}/{i}", a[i], fault);
                }

                break;
            case JsonValue v when v.GetValueKind() == JsonValueKind.Number && IsProbability(place):
                if (!(v.GetValue<double>() is >= 0 and <= 1))
                {
                    fault($"{place} is {v}");
                }

                break;
        }
    }

    private static void CheckEstimate(string place, JsonObject o, Action<string> fault)
    {
        if (Number(o, "estimate") is { } x && Number(o, "low") is { } low && Number(o, "high") is { } high && !(low <= x && x <= high))
        {
            fault($"{place}: {x} lies outside {low} to {high}");
        }

        if (IsProbability(place + "/estimate") && (Number(o, "low") is < 0 || Number(o, "high") is > 1))
        {
            fault($"{place}: the interval leaves 0 to 1");
        }
    }

    // A difference of probabilities, or their ratio, is none.
    private static bool IsProbability(string place)
    {
        string[] keys = place.Split('/');
        string key = keys[^1] is "estimate" or "low" or "high" ? keys[^2] : keys[^1];
        return key.EndsWith("probability", StringComparison.Ordinal) || key is "failure_probability_at_required" or "prior" or "posterior";
    }

    private static double? Number(JsonObject o, string key) =>
        o[key] is JsonValue v && v.GetValueKind() == JsonValueKind.Number ? v.GetValue<double>() : null;
}
