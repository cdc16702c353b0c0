using AxleRisk.Files.Writing;
using Xunit;

namespace AxleRisk.App.Tests.Files.Writing;

public class NoteTests
{
    private const string Text = """
        # About the file.
        title = "x" # behind

        # About the table.
        [axle]
        wall_mm = 6
        # above,
        #   in two lines
        diameter_mm = 90
        list = [
          1, # one
          2,
        ] # of the list
        both = { a = 1, b = "# no comment" }
        """;

    [Theory]
    [InlineData("title", "behind")]
    [InlineData("axle.wall_mm", "")]
    [InlineData("axle.diameter_mm", "above, in two lines")]
    [InlineData("axle.list", "of the list")]
    [InlineData("axle.both", "")]
    [InlineData("axle.both.a", "")]
    [InlineData("axle.none", "")]
    public void It_is_the_comment_behind_or_else_directly_above(string path, string note) =>
        Assert.Equal(note, ScenarioEditor.NoteOf(Text, TomlPath.Of(path)));

    [Theory]
    [InlineData("title", "title = \"x\" # behind", "title = \"x\" # new")]
    [InlineData("axle.wall_mm", "wall_mm = 6", "wall_mm = 6 # new")]
    [InlineData("axle.diameter_mm", "# above,\n#   in two lines\ndiameter_mm = 90", "diameter_mm = 90 # new")]
    [InlineData("axle.list", "] # of the list", "] # new")]
    [InlineData("axle.both", "no comment\" }", "no comment\" } # new")]
    public void It_is_written_behind_and_the_rest_stays(string path, string before, string after)
    {
        TomlPath at = TomlPath.Of(path);
        string written = Write(Text, at, " new ");
        Assert.Equal(Text.Replace(before, after), written);
        Assert.Equal("", ScenarioEditor.NoteOf(Write(written, at, ""), at));
    }

    [Fact]
    public void Line_ends_stay_and_a_note_has_none()
    {
        string text = Text.Replace("\n", "\r\n");
        Assert.Equal(text.Replace("wall_mm = 6", "wall_mm = 6 # one line"), Write(text, TomlPath.Of("axle.wall_mm"), "one\nline"));
    }

    // A number of the reader's own is no starting value any more; the same number is, and so is another's.
    [Fact]
    public void The_mark_of_a_starting_value_goes_with_the_value()
    {
        string text = NewScenario.Text(StartingPoint.First);
        TomlPath spring = TomlPath.Of("vehicle.spring_n_per_mm"), mass = TomlPath.Of("vehicle.sprung_kg");
        Assert.Equal(NewScenario.Mark, ScenarioEditor.NoteOf(text, spring));
        string Set(TomlPath path, TomlValue value) => ScenarioEditor.Apply(text, new ScenarioEdit("", [new TomlEdit.Set(path, value)]));
        string mine = Set(spring, TomlValue.Of(47));
        Assert.Equal("", ScenarioEditor.NoteOf(mine, spring));
        Assert.Equal(NewScenario.Mark, ScenarioEditor.NoteOf(mine, mass));
        Assert.Equal(text, Set(spring, ScenarioEditor.Read(text, spring)!));
        string noted = Write(text, mass, "weighed");
        var lighter = new ScenarioEdit("", [new TomlEdit.Set(mass, TomlValue.Of(1))]);
        Assert.Equal("weighed", ScenarioEditor.NoteOf(ScenarioEditor.Apply(noted, lighter), mass));
    }

    [Fact]
    public void A_value_among_others_on_its_line_has_none() =>
        Assert.Throws<EditException>(() => Write(Text, TomlPath.Of("axle.both.a"), "new"));

    private static string Write(string text, TomlPath path, string note) =>
        ScenarioEditor.Apply(text, new ScenarioEdit("note", [new TomlEdit.Note(path, note)]));
}
