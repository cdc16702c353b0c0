using System.Text;
using AxleRisk.Files;
using AxleRisk.Files.Writing;
using Xunit;

namespace AxleRisk.App.Tests.Files.Writing;

public sealed class ScenarioTextTests : IDisposable
{
    private readonly string folder = TemporaryFolder.New();

    private string PathTo(string name = "a.toml") => Path.Combine(folder, name);

    [Fact]
    public void A_text_is_saved_whole_with_its_mark_and_nothing_beside_it()
    {
        File.WriteAllBytes(PathTo(), [.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(Good.Text)]);
        ScenarioText text = ScenarioText.Open(PathTo());
        Assert.Equal(Good.Text, text.Text);
        ScenarioText saved = text.Save(text.Text + "# é\n");
        Assert.Equal([.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(Good.Text + "# é\n")], File.ReadAllBytes(PathTo()));
        Assert.Equal(DiskState.Same, saved.OnDisk());
        Assert.Equal(DiskState.Changed, text.OnDisk());
        Assert.Equal([PathTo()], Directory.GetFiles(folder));
    }

    [Fact]
    public void A_change_from_outside_is_seen_and_so_are_coming_and_going()
    {
        ScenarioText text = ScenarioText.New(PathTo(), Good.Text);
        Assert.Equal(DiskState.Same, text.OnDisk());
        text = text.Save(Good.Text);
        File.AppendAllText(PathTo(), "# by another\n");
        Assert.Equal(DiskState.Changed, text.OnDisk());
        File.Delete(PathTo());
        Assert.Equal(DiskState.Gone, text.OnDisk());
        Assert.Equal(DiskState.FolderGone, (text with { Path = PathTo("no/a.toml") }).OnDisk());
        File.WriteAllText(PathTo(), Good.Text);
        Assert.Equal(DiskState.Same, text.OnDisk());
        Assert.Equal(DiskState.Changed, ScenarioText.New(PathTo(), Good.Text).OnDisk());
    }

    [Fact]
    public void A_link_is_followed_and_permissions_stay()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        File.WriteAllText(PathTo("real.toml"), Good.Text);
        File.SetUnixFileMode(PathTo("real.toml"), UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupWrite);
        File.CreateSymbolicLink(PathTo(), "real.toml");
        ScenarioText.Open(PathTo()).Save("# new\n");
        Assert.Equal("# new\n", File.ReadAllText(PathTo("real.toml")));
        Assert.NotNull(new FileInfo(PathTo()).LinkTarget);
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupWrite, File.GetUnixFileMode(PathTo("real.toml")));
    }

    [Fact]
    public void What_cannot_be_read_or_written_is_said_in_one_line()
    {
        Assert.Contains("there is no such file", Error(() => ScenarioText.Open(PathTo("none.toml"))), StringComparison.Ordinal);
        File.WriteAllBytes(PathTo("bad.toml"), [0x61, 0xff]);
        Assert.Contains("bad.toml(1,2): the text is not valid UTF-8", Error(() => ScenarioText.Open(PathTo("bad.toml"))),
            StringComparison.Ordinal);
        Assert.Contains("not saved", Error(() => ScenarioText.New(PathTo("no/folder.toml"), "").Save("")), StringComparison.Ordinal);
    }

    [Fact]
    public void Unsaved_changes_are_kept_beside_the_scenario()
    {
        RecoveryFile recovery = new(PathTo());
        Assert.Null(recovery.Read());
        Assert.Null(recovery.Write(Good.Text));
        Assert.Equal(PathTo("a.toml.unsaved"), recovery.Path);
        Assert.Equal((Good.Text, false), recovery.Read());
        File.WriteAllText(PathTo(), Good.Text);
        File.SetLastWriteTimeUtc(PathTo(), File.GetLastWriteTimeUtc(recovery.Path).AddSeconds(5));
        Assert.True(recovery.Read()!.Value.IsOlder);
        recovery.Delete();
        Assert.Null(recovery.Read());
        Assert.Contains("a.toml.unsaved", new RecoveryFile(PathTo("no/a.toml")).Write(""), StringComparison.Ordinal);
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    private static string Error(Action action) => Assert.Throws<ScenarioException>(action).Message;
}
