using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Tests.Files;
using AxleRisk.Files;
using AxleRisk.Files.Writing;
using Xunit;

namespace AxleRisk.App.Tests.Screens.Editing;

public sealed class EditedScenarioTests : IDisposable
{
    private readonly Scratch scratch = new();

    [Fact]
    public void An_edit_is_made_undone_and_made_again()
    {
        EditedScenario scenario = scratch.Open();
        Assert.False(scenario.IsUnsaved);
        Assert.True(scenario.Apply(Wall(7)).IsAccepted);
        Assert.True(scenario.Apply(Wall(8)).IsAccepted);
        Assert.Equal(8, scenario.Document!.Scenario.Inputs.Single(i => i.Name == "axle.wall_mm").Value.Nominal);
        Assert.Equal(("axle.wall_mm", (string?)null, true), (scenario.UndoName, scenario.RedoName, scenario.IsUnsaved));
        Assert.Equal("axle.wall_mm", scenario.Undo());
        scenario.Undo();
        Assert.Equal((Good.Text, false, "axle.wall_mm"), (scenario.Text, scenario.IsUnsaved, scenario.RedoName));
        Assert.Null(scenario.Undo());
        scenario.Redo();
        Assert.Contains("wall_mm = 7\n", scenario.Text, StringComparison.Ordinal);
        scenario.Apply(Wall(5));
        Assert.Null(scenario.RedoName);
    }

    [Fact]
    public void An_edit_the_reader_refuses_changes_nothing_and_says_why()
    {
        EditedScenario scenario = scratch.Open();
        EditOutcome outcome = scenario.Apply(Wall(60));
        Assert.Equal(["axle.wall_mm (60) must not be above half of outside_diameter_mm (95)"], outcome.Reasons);
        Assert.Equal((Good.Text, 0, (string?)null), (scenario.Text, scenario.Edition, scenario.UndoName));
        Assert.Contains("no table", scenario.Apply(ScenarioEdit.Set(TomlPath.Of("axle.wall_mm.x"), TomlValue.Of(1))).Reasons.Single(),
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_with_errors_is_mended_one_by_one()
    {
        File.WriteAllText(scratch.PathTo(), Good.Text.Replace("wall_mm = 6", "wall_mm = -6").Replace("share = 0.75", "share = 0.5"));
        EditedScenario scenario = scratch.Open();
        Assert.Null(scenario.Document);
        Assert.Equal(2, scenario.Errors.Count);
        Assert.True(scenario.Apply(Wall(6)).IsAccepted);
        Assert.Single(scenario.Errors);
        Assert.False(scenario.Apply(Wall(-1)).IsAccepted);
        Assert.True(scenario.Apply(ScenarioEdits.RoadMix([0.75, 0.25])).IsAccepted);
        Assert.NotNull(scenario.Document);
    }

    [Fact]
    public void Saving_does_not_run_over_what_another_program_wrote()
    {
        EditedScenario scenario = scratch.Open();
        scenario.Apply(Wall(7));
        File.WriteAllText(scratch.PathTo(), Good.With("wall_mm = 6", "wall_mm = 5"));
        SaveOutcome outcome = scenario.Save();
        Assert.Equal(SaveResult.WouldOverwrite, outcome.Result);
        Assert.Contains("changed by another program", outcome.Reason, StringComparison.Ordinal);
        Assert.Contains("wall_mm = 5", File.ReadAllText(scratch.PathTo()), StringComparison.Ordinal);
        scenario.Reload();
        Assert.Contains("wall_mm = 5", scenario.Text, StringComparison.Ordinal);
        Assert.False(scenario.IsUnsaved);
        scenario.Undo();
        Assert.Contains("wall_mm = 7", scenario.Text, StringComparison.Ordinal);
        Assert.Equal(SaveResult.Saved, scenario.Save().Result);
        Assert.Equal(Good.With("wall_mm = 6", "wall_mm = 7"), File.ReadAllText(scratch.PathTo()));

        File.AppendAllText(scratch.PathTo(), "# again\n");
        scenario.Apply(Wall(8));
        Assert.Equal(SaveResult.Saved, scenario.Save(overwrite: true).Result);
    }

    [Fact]
    public void Saving_elsewhere_asks_before_it_overwrites_and_needs_the_data_files()
    {
        EditedScenario scenario = scratch.Open();
        Assert.Equal(SaveResult.Saved, scenario.SaveAs(scratch.PathTo("b.toml")).Result);
        Assert.Equal(scratch.PathTo("b.toml"), scenario.Path);
        Assert.Equal(SaveResult.WouldOverwrite, scenario.SaveAs(scratch.PathTo()).Result);

        File.WriteAllText(scratch.PathTo("walls.csv"), "wall_mm\n5.9\n6.1\n");
        Assert.True(scenario.Apply(ScenarioEdit.Set(TomlPath.Of("axle.wall_mm"), TomlValue.TableOf(
            ("distribution", TomlValue.Of("sample")), ("file", TomlValue.Of("walls.csv")),
                ("column", TomlValue.Of("wall_mm"))))).IsAccepted);
        Directory.CreateDirectory(scratch.PathTo("sub"));
        SaveOutcome outcome = scenario.SaveAs(scratch.PathTo("sub/c.toml"));
        Assert.Equal(SaveResult.Failed, outcome.Result);
        Assert.Contains("walls.csv", outcome.Reason, StringComparison.Ordinal);
        Assert.False(File.Exists(scratch.PathTo("sub/c.toml")));
    }

    [Fact]
    public void A_file_that_may_not_be_written_is_left_alone_unless_told_otherwise()
    {
        if (OperatingSystem.IsWindows())
        {
            return; // modes are those of Unix
        }

        const UnixFileMode readOnly = UnixFileMode.UserRead | UnixFileMode.GroupRead;
        EditedScenario scenario = scratch.Open();
        scenario.Apply(Wall(7));
        File.SetUnixFileMode(scratch.PathTo(), readOnly);
        SaveOutcome outcome = scenario.Save();
        Assert.Equal((SaveResult.Protected, $"{scratch.PathTo()} is marked as not to be written"), (outcome.Result, outcome.Reason));
        Assert.Equal(SaveResult.Protected, scenario.Save(overwrite: true).Result);
        Assert.Equal(Good.Text, File.ReadAllText(scratch.PathTo()));
        Assert.Equal(SaveResult.Saved, scenario.Save(unprotect: true).Result);
        Assert.Equal(readOnly, File.GetUnixFileMode(scratch.PathTo()));
    }

    [Fact]
    public void A_file_or_folder_that_is_gone_is_said_as_such()
    {
        Directory.CreateDirectory(scratch.PathTo("sub"));
        File.WriteAllText(scratch.PathTo("sub/a.toml"), Good.Text);
        EditedScenario scenario = EditedScenario.Open(scratch.PathTo("sub/a.toml"));
        scenario.Apply(Wall(7));
        File.Delete(scenario.Path);
        Assert.Equal(SaveResult.Gone, scenario.Save().Result);
        Directory.Delete(scratch.PathTo("sub"));
        SaveOutcome outcome = scenario.Save();
        Assert.Equal((SaveResult.Failed, $"{scenario.Path} is gone with its folder"), (outcome.Result, outcome.Reason));
        Assert.Equal(SaveResult.Saved, scenario.SaveAs(scratch.PathTo("b.toml")).Result);
    }

    [Fact]
    public void Unsaved_changes_survive_a_crash()
    {
        EditedScenario before = scratch.Open();
        before.Apply(Wall(7));
        Assert.Null(before.KeepUnsaved());

        EditedScenario after = scratch.Open();
        Assert.Equal((before.Text, false), after.File.Recovered);
        after.TakeRecovered();
        Assert.Equal((before.Text, "recovered changes"), (after.Text, after.UndoName));
        Assert.Equal(SaveResult.Saved, after.Save().Result);
        Assert.False(File.Exists(scratch.PathTo("a.toml.unsaved")));
        Assert.Null(scratch.Open().File.Recovered);
    }

    [Fact]
    public void What_nobody_has_decided_upon_is_moved_aside_and_not_written_over()
    {
        EditedScenario before = scratch.Open();
        before.Apply(Wall(7));
        before.KeepUnsaved();
        File.WriteAllText(scratch.PathTo("a.unsaved-1.toml"), "taken");

        EditedScenario after = scratch.Open();
        after.Apply(Wall(5));
        Assert.Null(after.KeepUnsaved());
        Assert.Equal(before.Text, File.ReadAllText(scratch.PathTo("a.unsaved-2.toml")));
        Assert.Equal(after.Text, File.ReadAllText(scratch.PathTo("a.toml.unsaved")));
        Assert.Equal("taken", File.ReadAllText(scratch.PathTo("a.unsaved-1.toml")));
    }

    [Fact]
    public void Nothing_is_kept_where_nothing_is_unsaved_or_it_was_dropped()
    {
        EditedScenario scenario = scratch.Open();
        scenario.Apply(Wall(7));
        scenario.KeepUnsaved();
        scenario.Undo();
        scenario.KeepUnsaved();
        Assert.False(File.Exists(scratch.PathTo("a.toml.unsaved")));
        scenario.Redo();
        scenario.KeepUnsaved();
        Assert.True(scenario.File.IsKept);
        scenario.File.DropKept();
        Assert.Null(scratch.Open().File.Recovered);
    }

    [Fact]
    public void A_new_scenario_is_unsaved_and_valid()
    {
        EditedScenario scenario = EditedScenario.New(scratch.PathTo("new.toml"), NewScenario.Text(StartingPoint.First with { Title = "Mine" }));
        Assert.True(scenario.IsUnsaved);
        Assert.Equal("Mine", scenario.Document!.Scenario.Title);
        Assert.Equal(SaveResult.Saved, scenario.Save().Result);
        Assert.Equal(SaveResult.WouldOverwrite, EditedScenario.New(scratch.PathTo(), scenario.Text).Save().Result);
        Assert.Throws<ScenarioException>(() => EditedScenario.Open(scratch.PathTo("none.toml")));
    }

    public void Dispose() => scratch.Dispose();

    private static ScenarioEdit Wall(double mm) => ScenarioEdit.Set(TomlPath.Of("axle.wall_mm"), TomlValue.Of(mm));
}
