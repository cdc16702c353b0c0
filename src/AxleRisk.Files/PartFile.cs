using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Studies;

namespace AxleRisk.Files;

/// <summary>A part of a risk study as a file: whose it is, and its state.</summary>
/// <param name="Scenario">The path of the scenario, absolute.</param>
/// <param name="Digest">The scenario's digest.</param>
/// <param name="Version">The version of the program.</param>
/// <param name="ModelVersion">The version of the damage model.</param>
/// <param name="State">The state.</param>
public sealed record PartFile(string Scenario, string Digest, string Version, int ModelVersion, RiskState State)
{
    private const string Kind = "axlerisk risk part";

    /// <summary>Writes the file: beside it first, then renamed, so that a kill leaves the old one or the new one.</summary>
    /// <exception cref="IOException">The file cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">The file may not be written.</exception>
    public void Write(string path)
    {
        var document = new JsonObject
        {
            ["kind"] = Kind,
            ["scenario"] = Scenario,
            ["digest"] = Digest,
            ["version"] = Version,
            ["model_version"] = ModelVersion,
            ["evaluations"] = State.Settings.Evaluations,
            ["seed"] = State.Settings.Seed,
            ["sampling"] = State.Settings.Sampling,
            ["first_block"] = State.FirstBlock,
            ["end_block"] = State.EndBlock,
            ["next_block"] = State.NextBlock,
            ["replicates"] = new JsonArray([.. State.Replicates.Select(r => (JsonNode)ToJson(r))]),
        };
        WholeFile.Write(path, stream =>
        {
            using var writer = new Utf8JsonWriter(stream);
            document.WriteTo(writer);
        });
    }

    /// <summary>Reads a file.</summary>
    /// <exception cref="ScenarioException">It is missing, or no part of a study.</exception>
    public static PartFile Read(string path)
    {
        try
        {
            JsonNode document = JsonNode.Parse(File.ReadAllBytes(path)) ?? throw new JsonException();
            if ((string?)document["kind"] != Kind)
            {
                throw new JsonException();
            }

            var settings = new StudySettings(
                document["evaluations"]!.GetValue<long>(), document["seed"]!.GetValue<ulong>(), document["sampling"]!.GetValue<string>());
            var state = new RiskState(
                settings, document["first_block"]!.GetValue<long>(), document["end_block"]!.GetValue<long>(),
                document["next_block"]!.GetValue<long>(), [.. document["replicates"]!.AsArray().Select(r => FromJson(r!))]);
            return new PartFile(
                document["scenario"]!.GetValue<string>(), document["digest"]!.GetValue<string>(), document["version"]!.GetValue<string>(),
                document["model_version"]!.GetValue<int>(), state);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            throw Bad(path, "there is no such file");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw Bad(path, "it cannot be read");
        }
        catch (Exception e) when (e is JsonException or NullReferenceException or InvalidOperationException or FormatException
            or OverflowException or IndexOutOfRangeException or ArgumentException)
        {
            throw Bad(path, "it is no part of a study: write one with axlerisk risk FILE --part 1/4 --out PART");
        }
    }

    private static ScenarioException Bad(string path, string message) => new([new ScenarioError(path, 0, 0, message)]);

    private static JsonObject ToJson(LifeSummary summary)
    {
        JsonObject document = OfFatigue(summary);
        if (summary.Modes is { } modes)
        {
            document["modes"] = ToJson(modes);
        }

        return document;
    }

    private static JsonObject OfFatigue(LifeSummary summary) => new()
    {
        ["damage"] = ToJson(summary.Damage),
        ["life"] = ToJson(summary.Life),
        ["with_shares"] = summary.WithShares,
        ["leg_share_sums"] = ToJson(summary.LegShareSums),
        ["leg_share_squares"] = ToJson(summary.LegShareSquares),
    };

    private static JsonObject ToJson(ModeTable modes) => new()
    {
        ["required_km"] = modes.RequiredKm,
        ["sums"] = new JsonArray([.. modes.Sums().Select(s => (JsonNode)ToJson(s))]),
        ["first_counts"] = new JsonArray([.. modes.FirstCounts.Select(c => (JsonNode)ToJson(c))]),
    };

    private static ModeTable ModesFromJson(JsonNode node)
    {
        JsonArray counts = node["first_counts"]!.AsArray();
        var table = new ModeTable(node["required_km"]!.GetValue<double>(), counts.Count);
        foreach ((ExactSum[] to, JsonNode? from) in table.Sums().Zip(node["sums"]!.AsArray()))
        {
            Sums(from!).CopyTo(to);
        }

        for (int m = 0; m < counts.Count; m++)
        {
            Fill(table.FirstCounts[m], counts[m]!);
        }

        return table;
    }

    private static LifeSummary FromJson(JsonNode node)
    {
        ImmutableArray<ExactSum> sums = Sums(node["leg_share_sums"]!);
        var summary = new LifeSummary(sums.Length, node["modes"] is { } modes ? ModesFromJson(modes) : null);
        Fill(summary.Damage, node["damage"]!);
        Fill(summary.Life, node["life"]!);
        summary.AddShares(node["with_shares"]!.GetValue<long>(), sums, Sums(node["leg_share_squares"]!));
        return summary;
    }

    // Pairs of bin and count, one after the other: most bins are empty.
    private static JsonObject ToJson(LogHistogram histogram) => new()
    {
        ["below"] = histogram.Below,
        ["above"] = histogram.Above,
        ["bins"] = new JsonArray([.. histogram.Filled.SelectMany(b => new JsonNode[] { b.Bin, b.Count })]),
    };

    private static void Fill(LogHistogram histogram, JsonNode node)
    {
        histogram.AddOutside(node["below"]!.GetValue<long>(), node["above"]!.GetValue<long>());
        JsonArray bins = node["bins"]!.AsArray();
        for (int i = 0; i < bins.Count; i += 2)
        {
            histogram.AddBin(bins[i]!.GetValue<int>(), bins[i + 1]!.GetValue<long>());
        }
    }

    private static JsonArray ToJson(ExactSum[] sums) =>
        new([.. sums.Select(s => (JsonNode)s.Units.ToString(CultureInfo.InvariantCulture))]);

    private static ImmutableArray<ExactSum> Sums(JsonNode node) =>
        [.. node.AsArray().Select(s => new ExactSum(Int128.Parse(s!.GetValue<string>(), CultureInfo.InvariantCulture)))];
}
