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
    private const string Checksum = "sha256";

    // 16 replicates of two histograms with every bin filled are 40 MB.
    private const int Largest = 128 << 20;

    /// <summary>Writes the file: beside it first, then renamed, so that a kill leaves the old one or the new one.</summary>
    /// <exception cref="IOException">The file cannot be written.</exception>
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
        document[Checksum] = ChecksumOf(document);
        WholeFile.Write(path, BytesOf(document));
    }

    /// <summary>Reads a file. Whether its numbers fit its scenario is <see cref="StateCheck"/>'s to say.</summary>
    /// <exception cref="ScenarioException">It is missing, no part of a study, or not as it was written.</exception>
    public static PartFile Read(string path)
    {
        byte[] bytes;
        try
        {
            bytes = FileBytes.Read(path, Largest);
        }
        catch (Exception e) when (FileBytes.IsFileTrouble(e))
        {
            throw Bad(path, FileBytes.Reason(e));
        }

        try
        {
            JsonObject document = JsonNode.Parse(bytes)!.AsObject();
            if ((string?)document["kind"] != Kind)
            {
                throw new JsonException();
            }

            string? checksum = (string?)document[Checksum];
            document.Remove(Checksum);
            if (checksum != ChecksumOf(document))
            {
                throw Bad(path, "it was changed after it was written: its checksum does not agree with its content; run this part again");
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
        catch (Exception e) when (e is JsonException or NullReferenceException or InvalidOperationException or FormatException
            or OverflowException or IndexOutOfRangeException or ArgumentException)
        {
            throw Bad(path, "it is no part of a study: write one with axlerisk risk FILE --part 1/4 --out PART");
        }
    }

    /// <summary>The state, where its numbers fit together and fit the scenario.</summary>
    /// <param name="path">The file, for the error.</param>
    /// <param name="model">The scenario.</param>
    /// <exception cref="ScenarioException">They do not.</exception>
    public RiskState CheckedState(string path, LifeModel model) =>
        StateCheck.Fault(model, State) is { } fault ? throw Bad(path, $"it {fault}; run this part again") : State;

    private static ScenarioException Bad(string path, string message) => new([new ScenarioError(path, 0, 0, message)]);

    // Over the document as it is written, without the checksum itself; numbers keep the text they were read with.
    private static string ChecksumOf(JsonObject document) => Sha256.HexOf(BytesOf(document));

    private static byte[] BytesOf(JsonObject document)
    {
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream))
        {
            document.WriteTo(writer);
        }

        return stream.ToArray();
    }

    private static JsonObject ToJson(LifeSummary summary)
    {
        JsonObject document = OfFatigue(summary);
        if (summary.Modes is { } modes)
        {
            document["modes"] = ToJson(modes);
            if (!modes.BendsKm.IsEmpty)
            {
                document["modes"]!["bends_km"] = new JsonArray([.. modes.BendsKm.Select(b => (JsonNode)b)]);
            }
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
        var table = new ModeTable(
            node["required_km"]!.GetValue<double>(), counts.Count,
            [.. node["bends_km"]?.AsArray().Select(b => b!.GetValue<double>()) ?? []]);
        foreach ((ExactSum[] to, JsonNode? from) in table.Sums().Zip(node["sums"]!.AsArray()))
        {
            if (from!.AsArray().Count != to.Length)
            {
                throw new FormatException();
            }

            Sums(from).CopyTo(to);
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
        long left = long.MaxValue;
        histogram.AddOutside(Count(node["below"]), Count(node["above"]));
        JsonArray bins = node["bins"]!.AsArray();
        for (int i = 0; i < bins.Count; i += 2)
        {
            histogram.AddBin(bins[i]!.GetValue<int>(), Count(bins[i + 1]));
        }

        // Never negative, and never more together than a whole number can be.
        long Count(JsonNode? from)
        {
            long count = from!.GetValue<long>();
            left -= count;
            return count >= 0 && left >= 0 ? count : throw new FormatException();
        }
    }

    private static JsonArray ToJson(ExactSum[] sums) =>
        new([.. sums.Select(s => (JsonNode)s.Units.ToString(CultureInfo.InvariantCulture))]);

    private static ImmutableArray<ExactSum> Sums(JsonNode node) =>
        [.. node.AsArray().Select(s => new ExactSum(Int128.Parse(s!.GetValue<string>(), CultureInfo.InvariantCulture)))];
}
