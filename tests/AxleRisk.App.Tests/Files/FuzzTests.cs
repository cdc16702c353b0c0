using System.Text;
using AxleRisk.Files;
using AxleRisk.Files.Distributions;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace AxleRisk.App.Tests.Files;

/// <summary>
/// Whatever the bytes, the reader gives a scenario or throws a <see cref="ScenarioException"/> with places inside the text.
/// </summary>
public class FuzzTests
{
    private static readonly byte[][] Seeds = [.. Repository.Scenarios.Select(File.ReadAllBytes)];

    public static TheoryData<int> Shipped => [.. Enumerable.Range(0, Seeds.Length)];

    [Theory]
    [MemberData(nameof(Shipped))]
    public void Every_truncation_of_a_shipped_scenario_is_read_or_rejected(int index)
    {
        for (int length = 0; length < Seeds[index].Length; length++)
        {
            ReadOrReject(Seeds[index][..length]);
        }
    }

    [Property(MaxTest = 500)]
    public void Random_bytes_are_rejected(byte[] bytes) => ReadOrReject(bytes);

    [Property(MaxTest = 1000)]
    public Property A_shipped_scenario_with_bytes_changed_is_read_or_rejected() =>
        Prop.ForAll(
            Gen.Choose(0, Seeds.Length - 1)
                .SelectMany(f => Gen.Choose(0, Seeds[f].Length - 1).SelectMany(at => Gen.Choose(0, 255).Select(b => (f, at, b))))
                .ToArbitrary(),
            change =>
            {
                byte[] bytes = [.. Seeds[change.f]];
                bytes[change.at] = (byte)change.b;
                ReadOrReject(bytes);
            });

    [Property(MaxTest = 1000)]
    public Property A_shipped_scenario_with_a_number_made_extreme_is_read_or_rejected() =>
        Prop.ForAll(
            Gen.Choose(0, Seeds.Length - 1).SelectMany(f => Gen.Choose(0, 400).SelectMany(n =>
                Gen.Elements("0", "-1", "1e300", "-1e300", "1e-300", "5e-324", "1.7e308", "nan", "inf", "-inf", "99999999999999999999",
                    "1e-17", "0.9999999999999999", "\"x\"", "[]", "{}")
                    .Select(v => (f, n, v)))).ToArbitrary(),
            change => ReadOrReject(Encoding.UTF8.GetBytes(WithNumber(Encoding.UTF8.GetString(Seeds[change.f]), change.n, change.v))));

    [Property(MaxTest = 1000)]
    public Property Any_family_with_any_parameters_is_read_or_rejected()
    {
        Gen<string> value = Gen.Elements("0", "-1", "1", "2", "0.5", "50", "90", "120", "1e3", "1e-9", "1e9", "1e-300", "1e300", "5e-324",
            "1.7e308", "0.9999999999999999");
        return Prop.ForAll(
            Gen.Elements(DistributionForms.All.AsEnumerable()).SelectMany(form => Gen.ArrayOf(value, 8).Select(v => (form, v)))
                .ToArbitrary(),
            c =>
            {
                IEnumerable<string> parameters = c.form.Required.Concat(c.form.Optional).Select((key, i) => $", {key} = {c.v[i]}");
                ReadOrReject(WithWall($"{{ distribution = \"{c.form.Family}\"{string.Concat(parameters)} }}"));
                ReadOrReject(WithWall(
                    $"{{ distribution = \"{c.form.Family}\"{string.Concat(parameters)}, min = {c.v[4]}, max = {c.v[5]} }}"));
                ReadOrReject(WithWall(
                    $"{{ distribution = \"{c.form.Family}\", quantiles = [[{c.v[0]}, {c.v[1]}], [{c.v[2]}, {c.v[3]}]] }}"));
                ReadOrReject(WithWall($"{{ distribution = \"{c.form.Family}\", quantiles = [[0.05, {c.v[1]}], [0.95, {c.v[3]}]] }}"));
            });
    }

    private static byte[] WithWall(string value) =>
        Encoding.UTF8.GetBytes(Good.With("outside_diameter_mm = 95\nwall_mm = 6",
            $"shape = \"given\"\nsection_modulus_mm3 = 4e4\nwall_mm = {value}"));

    private static string WithNumber(string text, int number, string value)
    {
        System.Text.RegularExpressions.MatchCollection numbers = System.Text.RegularExpressions.Regex.Matches(text,
            @"(?<=[=\[,] )-?\d[\d.]*|(?<=\[)\d[\d.]*");
        System.Text.RegularExpressions.Match match = numbers[number % numbers.Count];
        return text[..match.Index] + value + text[(match.Index + match.Length)..];
    }

    private static void ReadOrReject(byte[] bytes)
    {
        try
        {
            Assert.NotEmpty(ScenarioReader.Parse(bytes, "a.toml").Scenario.Inputs);
        }
        catch (ScenarioException e)
        {
            int lines = 1 + bytes.Count(b => b == (byte)'\n');
            Assert.NotEmpty(e.Errors);
            Assert.All(e.Errors, error => Assert.True(error.Line <= lines && error.Column >= 0 && !error.Message.Any(char.IsControl),
                error.ToString()));
        }
    }
}
