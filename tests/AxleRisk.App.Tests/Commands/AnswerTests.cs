using System.Globalization;
using System.Text.Json.Nodes;
using AxleRisk.App.Tests.Files;
using Xunit;

namespace AxleRisk.App.Tests.Commands;

public sealed class AnswerTests
{
    public static TheoryData<string, string> Questions
    {
        get
        {
            var questions = new TheoryData<string, string>();
            foreach (string scenario in Repository.Names)
            {
                foreach (string command in new[] { "check", "base", "risk", "rank", "combine" })
                {
                    questions.Add(command, scenario);
                }
            }

            return questions;
        }
    }

    [Theory]
    [MemberData(nameof(Questions))]
    public void Every_question_to_every_shipped_scenario_is_answered_in_80_columns(string command, string scenario)
    {
        (int exit, string output, string error) = Cli.Run([command, Cli.Shipped(scenario), .. Few(command)]);
        Assert.Equal(0, exit);
        Assert.Empty(error);
        Assert.All(output.Split('\n'), line => Assert.True(line.Length <= 80, line));
        Assert.DoesNotContain("NaN", output, StringComparison.Ordinal);
        Assert.Contains(command == "check" ? "Valid" : "Caution", output, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Questions))]
    public void Every_answer_is_also_one_JSON_document_and_a_table(string command, string scenario)
    {
        string csv = Path.Combine(TemporaryFolder.New(), "figures.csv");
        (int exit, string output, _) = Cli.Run([command, Cli.Shipped(scenario), "--json", "--csv", csv, .. Few(command)]);
        Assert.Equal(0, exit);
        JsonNode document = JsonNode.Parse(output)!;
        Assert.Equal(command, (string?)document["command"]);
        Assert.Equal(64, ((string)document["digest"]!).Length);
        string[] lines = File.ReadAllLines(csv);
        Assert.True(lines.Length > 5);
        Assert.Single(Directory.GetFiles(Path.GetDirectoryName(csv)!)); // nothing left beside it
    }

    [Fact]
    public void The_risk_document_has_the_keys_other_programs_rely_on()
    {
        JsonNode document = Json("risk", "--seed", "9");
        Assert.Equal(486_590, (double)document["median_factors_life_km"]!, 487.0); // 0.1 %; source: independent numpy implementation
        Assert.Equal(["B1", "B5", "B10", "B50"], document["lives_km"]!.AsObject().Select(l => l.Key));
        Assert.All(document["failure_probability"]!.AsArray(), row =>
            Assert.InRange((double)row!["estimate"]!, (double)row["low"]!, (double)row["high"]!));
        Assert.Contains(20_000.0, document["failure_probability"]!.AsArray().Select(r => (double)r!["distance_km"]!));
        Assert.Equal(9, (int)document["seed"]!);
        Assert.Equal(2000, (int)document["evaluations"]!);
    }

    [Fact]
    public void The_rank_document_has_the_keys_other_programs_rely_on()
    {
        JsonArray factors = Json("rank")["factors"]!.AsArray();
        Assert.Equal(13, factors.Count);
        foreach (JsonNode? factor in factors)
        {
            foreach (string output in new[] { "life", "failure" })
            {
                foreach (string index in new[] { "share", "first", "total" })
                {
                    Assert.Equal(["estimate", "low", "high"], factor![output]![index]!.AsObject().Select(x => x.Key));
                }
            }

            Assert.InRange((double)factor!["failure"]!["pinned_probability"]!, 0, 1);
        }

        foreach (string output in new[] { "life", "failure" })
        {
            Assert.Equal(1, factors.Sum(f => (double)f![output]!["share"]!["estimate"]!), 1e-12);
        }
    }

    [Fact]
    public void A_ranking_says_how_its_shares_were_found_and_how_wide_they_are()
    {
        JsonNode stated = Json("rank"), subsets = Json("rank", "--subsets");
        Assert.Equal("random orders", (string)stated["share_method"]!);
        Assert.Equal("all subsets", (string)subsets["share_method"]!);
        Assert.InRange((double)stated["share_half_width"]!, 0.01, 1);
        Assert.Null(stated["share_half_width_asked"]);
        (int exit, string usual, string error) = Cli.Run("rank", Cli.Shipped("benchmark-five-legs"));
        Assert.True(exit == 0, error);
        string words = string.Join(' ', usual.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("random orders of the factors, the cheapest way", words, StringComparison.Ordinal);
        Assert.Contains("enough for the +-1 point that the run went for", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Distances_can_be_chosen()
    {
        JsonNode document = Json("risk", "--distances", "1234,5678");
        Assert.Equal([1234, 5678, 50_000], document["failure_probability"]!.AsArray().Select(r => (double)r!["distance_km"]!));
    }

    [Fact]
    public void A_culture_with_decimal_commas_changes_nothing()
    {
        string[] question = ["base", Cli.Shipped("warranty-clinic-van")];
        string plain = Cli.Run(question).Out;
        CultureInfo before = CultureInfo.CurrentCulture;
        var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        comma.NumberFormat.NumberDecimalSeparator = ",";
        comma.NumberFormat.NumberGroupSeparator = ".";
        try
        {
            CultureInfo.CurrentCulture = comma;
            Assert.Equal(plain, Cli.Run(question).Out);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static string[] Few(string command) => command switch
    {
        "check" or "base" => [],
        _ => ["-n", command == "rank" ? "20000" : command == "combine" ? "12000" : "2000"], // those of KnownDigitsTests
    };

    private static JsonNode Json(string command, params string[] options) =>
        JsonNode.Parse(Cli.Run([command, Cli.Shipped("benchmark-five-legs"), "--json", .. Few(command), .. options]).Out)!;
}
