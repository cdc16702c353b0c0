using System.Diagnostics;
using System.Text;
using AxleRisk.Files;
using Xunit;

namespace AxleRisk.App.Tests.Files;

public sealed class WholeFileTests : IDisposable
{
    private static readonly byte[] Content = Encoding.UTF8.GetBytes("new");

    private readonly DirectoryInfo folder = new(TemporaryFolder.New());

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void A_link_is_followed_and_the_mode_stays()
    {
        if (OperatingSystem.IsWindows())
        {
            Assert.Skip("files have no such mode");
            return;
        }

        string real = Old("real");
        const UnixFileMode Mode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        File.SetUnixFileMode(real, Mode);
        File.CreateSymbolicLink(PathTo("middle"), "real");
        File.CreateSymbolicLink(PathTo("link"), PathTo("middle"));
        WholeFile.Test(PathTo("link"));
        Assert.Equal("old", File.ReadAllText(real));
        WholeFile.Write(PathTo("link"), Content);
        Assert.Equal("new", File.ReadAllText(real));
        Assert.Equal(Mode, File.GetUnixFileMode(real));
        Assert.Equal("middle", Path.GetFileName(new FileInfo(PathTo("link")).LinkTarget));
        Assert.Equal(3, folder.GetFileSystemInfos().Length);
    }

    [Fact]
    public void A_link_to_nothing_makes_the_file_it_names()
    {
        File.CreateSymbolicLink(PathTo("link"), "none");
        WholeFile.Write(PathTo("link"), Content);
        Assert.Equal("new", File.ReadAllText(PathTo("none")));
        Assert.NotNull(new FileInfo(PathTo("link")).LinkTarget);
    }

    [Fact]
    public async Task A_pipe_is_written_into_and_stays_a_pipe()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "there are no such pipes");
        string pipe = PathTo("pipe");
        using (Process make = Process.Start("mkfifo", [pipe]))
        {
            await make.WaitForExitAsync(TestContext.Current.CancellationToken);
        }

        WholeFile.Test(pipe);
        Task<string> read = Task.Run(() => File.ReadAllText(pipe), TestContext.Current.CancellationToken);
        WholeFile.Write(pipe, Content);
        Assert.Equal("new", await read);
        Assert.Single(folder.GetFileSystemInfos());
        Assert.True(FileKind.IsStream(pipe));
    }

    [Theory]
    [InlineData("/dev/null", true)]
    [InlineData("/dev/full", true)]
    [InlineData("/dev", false)]
    [InlineData("/dev/none", false)]
    [InlineData("/etc/passwd", false)]
    public void Devices_are_told_from_files_and_folders(string path, bool isStream)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "there are no such paths");
        Assert.Equal(isStream, FileKind.IsStream(path));
    }

    [Fact]
    public void A_test_says_why_and_leaves_nothing()
    {
        Assert.Equal("there is no such folder", Assert.Throws<IOException>(() => WholeFile.Test(PathTo("no/file"))).Message);
        Assert.Equal("it is a folder, not a file", Assert.Throws<IOException>(() => WholeFile.Test(folder.FullName)).Message);
        File.CreateSymbolicLink(PathTo("a"), "b");
        File.CreateSymbolicLink(PathTo("b"), "a");
        Assert.Equal("its links lead in a circle", Assert.Throws<IOException>(() => WholeFile.Test(PathTo("a"))).Message);
        WholeFile.Test(PathTo("c"));
        Assert.Equal(2, folder.GetFileSystemInfos().Length);
    }

    [Fact]
    public void What_a_dead_process_left_is_removed_and_nothing_else()
    {
        using Process dead = Process.Start("true", []);
        dead.WaitForExit();
        string mine = Beside.PathOf("x").Split('.')[^2];
        string[] stay =
        [
            Old($"x.{Environment.ProcessId}.{mine}.part"), Old($"x.{dead.Id}.00000000.part"), Old($"x.{dead.Id}.part"),
            Old($"y.{dead.Id}.{mine}.part"), Old($"x.{dead.Id}.{mine}.part.txt"), Old("x"),
        ];
        using Process alive = Process.Start("sleep", ["60"]);
        string others = Old($"x.{alive.Id}.{mine}.part");
        Old($"x.{dead.Id}.{mine}.part");
        Beside.RemoveDead(PathTo("x"));
        Assert.Equal([.. stay.Append(others).Order(StringComparer.Ordinal)], folder.GetFiles().Select(f => f.FullName)
            .Order(StringComparer.Ordinal));
        alive.Kill();
        alive.WaitForExit();
        folder.CreateSubdirectory($"x.{dead.Id}.{mine}.part").CreateSubdirectory("deep");
        WholeFile.Write(PathTo("x"), Content);
        Assert.Equal(stay.Length - 1, folder.GetFileSystemInfos().Length);
    }

    private string PathTo(string name) => Path.Combine(folder.FullName, name);

    private string Old(string name)
    {
        File.WriteAllText(PathTo(name), "old");
        return PathTo(name);
    }
}
