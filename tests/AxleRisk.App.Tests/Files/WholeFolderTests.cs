using AxleRisk.Files;
using Xunit;

namespace AxleRisk.App.Tests.Files;

public sealed class WholeFolderTests
{
    private readonly string home = TemporaryFolder.New();

    private string Target => Path.Combine(home, "sub", "report");

    [Fact]
    public void It_writes_replaces_its_own_and_leaves_nothing_beside_it()
    {
        Write("one");
        Assert.Null(WholeFolder.Refusal(Target));
        Write("two");
        Assert.Equal("two", File.ReadAllText(Path.Combine(Target, "deep", "a.txt")));
        Assert.Equal([Target], Directory.GetFileSystemEntries(Path.Combine(home, "sub")));
    }

    [Fact]
    public void The_list_names_every_file_with_its_digest()
    {
        Write("abc");
        string[] list = File.ReadAllLines(Path.Combine(Target, "files.csv"));

        // SHA-256 of "abc": FIPS 180-4, example of the one-block message.
        Assert.Equal(["file,bytes,sha256", "deep/a.txt,3,ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"], list);
    }

    [Fact]
    public void What_somebody_else_put_there_is_not_replaced()
    {
        Write("one");
        File.WriteAllText(Path.Combine(Target, "notes.txt"), "mine");
        Assert.Contains("notes.txt was added or changed", WholeFolder.Refusal(Target), StringComparison.Ordinal);
        Assert.Throws<IOException>(() => Write("two"));
        Assert.Equal("one", File.ReadAllText(Path.Combine(Target, "deep", "a.txt")));
        Assert.Single(Directory.GetFileSystemEntries(Path.Combine(home, "sub")));
    }

    [Fact]
    public void What_was_changed_is_not_replaced()
    {
        Write("one");
        File.AppendAllText(Path.Combine(Target, "deep", "a.txt"), " more");
        Assert.Contains("deep/a.txt was added or changed", WholeFolder.Refusal(Target), StringComparison.Ordinal);
    }

    [Fact]
    public void Other_folders_files_and_links_are_refused_and_an_empty_folder_is_not()
    {
        Assert.Null(WholeFolder.Refusal(Path.Combine(home, "new")));
        Assert.Null(WholeFolder.Refusal(home));
        File.WriteAllText(Path.Combine(home, "own.txt"), "");
        Assert.Contains("no files.csv", WholeFolder.Refusal(home), StringComparison.Ordinal);
        Assert.Contains("a file, not a folder", WholeFolder.Refusal(Path.Combine(home, "own.txt")), StringComparison.Ordinal);
        Directory.CreateDirectory(Path.Combine(home, "real"));
        Directory.CreateSymbolicLink(Path.Combine(home, "link"), Path.Combine(home, "real"));
        Assert.Contains("a link", WholeFolder.Refusal(Path.Combine(home, "link")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_failure_on_the_way_leaves_nothing()
    {
        Assert.Throws<InvalidOperationException>(() => WholeFolder.Write(
            Target, [("a.txt", s => s.WriteByte(1)), ("b.txt", _ => throw new InvalidOperationException("no"))]));
        Assert.Empty(Directory.GetFileSystemEntries(Path.Combine(home, "sub")));
    }

    private void Write(string content) =>
        WholeFolder.Write(Target, [("deep/a.txt", s => s.Write(System.Text.Encoding.UTF8.GetBytes(content)))]);
}
