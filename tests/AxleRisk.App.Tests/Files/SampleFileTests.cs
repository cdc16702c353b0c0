using AxleRisk.Core.Scenarios;
using Xunit;

namespace AxleRisk.App.Tests.Files;

/// <summary>Measured samples in CSV files. The file's name begins at (6,49) of the scenario.</summary>
public class SampleFileTests
{
    private static readonly string Text = Good.With(
        "unsprung_kg = 90", "unsprung_kg = { distribution = \"sample\", file = \"m.csv\", column = \"mass_kg\" }");

    [Theory]
    [InlineData("no,mass_kg\n1,88\n2,92\n3,90.5\n")]
    [InlineData("no;mass_kg\r\n1;88\r\n2;92\r\n3;90.5")]
    [InlineData("mass_kg\n88\n\n92\n90.5\n")]
    public void The_values_of_a_column_arrive(string csv)
    {
        Value.Uncertain value = Assert.IsType<Value.Uncertain>(Good.Parse(Text, _ => csv).Scenario.Find(Quantities.UnsprungMass)!.Value);
        Assert.Equal((88.0, 92.0), (value.Distribution.Minimum, value.Distribution.Maximum));
        Assert.False(value.Distribution.IsContinuous);
    }

    [Theory]
    [InlineData("no,mass\n1,88\n", "m.csv(1): there is no column \"mass_kg\"; possible: no, mass")]
    [InlineData("no,mass_kg\n1,88\n2,heavy\n3,-4\n", "m.csv(3): mass_kg must be a number above 0, not \"heavy\"",
        "m.csv(4): mass_kg must be a number above 0, not \"-4\"")]
    [InlineData("no;mass_kg\n1;90,5\n", "m.csv(2): mass_kg must be a number above 0, not \"90,5\"")]
    [InlineData("no,mass_kg\n", "m.csv(1): there are no values in column \"mass_kg\"")]
    [InlineData("", "m.csv(1): there is no column \"mass_kg\" named in its first line")]
    public void Errors_name_the_data_file_and_the_line(string csv, params string[] expected) =>
        Assert.Equal(expected, Good.ErrorsOf(Text, _ => csv));

    // What is no table may be a file that nobody meant to show: no word of it stands in a message.
    [Theory]
    [InlineData("root:x:0:0:root:/root:/bin/sh\nwho:x:1:1\n")]
    [InlineData("secret\nword\n")]
    [InlineData("mass_kg\nsecret\n")]
    [InlineData("mass_kg,b\n1,2\nsecret\n")]
    [InlineData("mass_kg,b\n1,\"secret\n")]
    public void Nothing_of_a_file_that_is_no_table_is_told(string content)
    {
        string error = Assert.Single(Good.ErrorsOf(Text, _ => content));
        Assert.DoesNotContain("secret", error, StringComparison.Ordinal);
        Assert.DoesNotContain("root", error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_million_values_are_read()
    {
        string csv = "mass_kg\n" + string.Concat(Enumerable.Repeat("88.125\n89.25\n", 500_000));
        Assert.True(csv.Length > 4 << 20);
        string path = System.IO.Path.Combine(TemporaryFolder.New(), "s.toml");
        File.WriteAllText(path, Text);
        File.WriteAllText(path.Replace("s.toml", "m.csv", StringComparison.Ordinal), csv);
        var value = (Value.Uncertain)AxleRisk.Files.ScenarioReader.ReadFile(path).Scenario.Find(Quantities.UnsprungMass)!.Value;
        Directory.Delete(System.IO.Path.GetDirectoryName(path)!, recursive: true);
        Assert.Equal((88.125, 89.25), (value.Distribution.Minimum, value.Distribution.Maximum));
    }

    [Theory]
    [InlineData("no,mass_kg\n1,88\n2\n", "m.csv(3): ")]
    [InlineData("no,mass_kg\n1,\"88\n2,3\n", "m.csv(2): ")]
    public void Malformed_records_name_their_line(string csv, string start) =>
        Assert.StartsWith(start, Assert.Single(Good.ErrorsOf(Text, _ => csv)));

    [Fact]
    public void A_file_that_cannot_be_read_is_an_error_where_it_is_named() =>
        Assert.Equal(
            ["a.toml(6,49): vehicle.unsprung_kg: cannot read \"m.csv\": there is no such file"],
            Good.ErrorsOf(Text, _ => throw new FileNotFoundException()));

    [Fact]
    public void Without_a_reader_of_data_files_none_can_be_used() =>
        Assert.Equal(["a.toml(6,49): vehicle.unsprung_kg: cannot read \"m.csv\": data files are not available here"], Good.ErrorsOf(Text));

    [Fact]
    public void The_digest_covers_the_data()
    {
        string first = Good.Parse(Text, _ => "mass_kg\n88\n89\n").Digest;
        Assert.Equal(first, Good.Parse(Text, _ => "mass_kg\n88\n89\n").Digest);
        Assert.NotEqual(first, Good.Parse(Text, _ => "mass_kg\n88\n90\n").Digest);
    }
}
