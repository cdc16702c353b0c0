using System.Diagnostics;
using AxleRisk.Files.Writing;
using Xunit;

namespace AxleRisk.App.Tests.Files.Writing;

public sealed class OpenMarkTests
{
    private readonly string folder = TemporaryFolder.New();

    private string Scenario => Path.Combine(folder, "a.toml");

    private string Mark => Scenario + OpenMark.Suffix;

    [Fact]
    public void It_names_this_process_and_goes_with_it()
    {
        var mark = new OpenMark(Scenario);
        Assert.Null(mark.Take());
        Assert.Contains($"\nprocess {Environment.ProcessId}\n", File.ReadAllText(Mark), StringComparison.Ordinal);
        Assert.Null(mark.Take());
        Assert.Null(new OpenMark(Scenario).Take());
        mark.Release();
        Assert.Empty(Directory.GetFiles(folder));
    }

    [Fact]
    public void Another_living_process_holds_it_until_it_is_dead()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "the start of a process is read as Linux tells it");
        using Process other = Process.Start("sleep", "60");
        WriteMark(other.Id, Started(other.Id));
        string held = File.ReadAllText(Mark);
        var mark = new OpenMark(Scenario);
        OpenMark.Holder holder = mark.Take()!;
        Assert.Equal((other.Id, true, true), (holder.Process, holder.IsHere, holder.IsAlive));
        mark.Release();
        Assert.Equal(held, File.ReadAllText(Mark));

        other.Kill();
        other.WaitForExit();
        Assert.False(holder.IsAlive);
        Assert.Null(mark.Take());
        mark.Release();
    }

    [Fact]
    public void A_number_that_another_process_has_got_since_holds_nothing()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "the start of a process is read as Linux tells it");
        using Process other = Process.Start("sleep", "60");
        WriteMark(other.Id, Started(other.Id) + "0");
        Assert.Null(new OpenMark(Scenario).Take());
        other.Kill();
    }

    [Fact]
    public void Of_another_machine_nothing_is_known_so_it_holds_until_it_is_taken_over()
    {
        File.WriteAllText(Mark, "process 1\nstart 1\nhost faraway\nplace 00000000\n");
        var mark = new OpenMark(Scenario);
        Assert.Equal("process 1 on faraway", mark.Take()!.ToString());
        Assert.Null(mark.Take(evenIfHeld: true));
        Assert.Null(mark.Take());
    }

    [Theory]
    [InlineData("")]
    [InlineData("process x\nstart 1\nhost h\nplace p\n")]
    public void What_is_no_mark_holds_nothing(string text)
    {
        File.WriteAllText(Mark, text);
        Assert.Null(new OpenMark(Scenario).Take());
    }

    [Fact]
    public void Where_nothing_can_be_written_there_is_none() =>
        Assert.Null(new OpenMark(Path.Combine(folder, "none", "a.toml")).Take());

    [Fact]
    public void All_names_of_a_file_have_one()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "links need rights there");
        File.WriteAllText(Scenario, "");
        File.CreateSymbolicLink(Path.Combine(folder, "b.toml"), Scenario);
        new OpenMark(Path.Combine(folder, "b.toml")).Take();
        Assert.True(File.Exists(Mark));
    }

    /// <summary>The mark that another process would write: that of this one with its number and start.</summary>
    private void WriteMark(int process, string start)
    {
        var own = new OpenMark(Scenario);
        own.Take();
        string text = File.ReadAllText(Mark);
        own.Release();
        File.WriteAllText(Mark, text.Replace($"process {Environment.ProcessId}\n", $"process {process}\n")
            .Replace($"start {Started(Environment.ProcessId)}\n", $"start {start}\n"));
    }

    // proc(5): the name in brackets is the 2nd field, the start the 22nd.
    private static string Started(int process) =>
        File.ReadAllText($"/proc/{process}/stat") is var stat ? stat[(stat.LastIndexOf(')') + 2)..].Split(' ')[19] : "";
}
