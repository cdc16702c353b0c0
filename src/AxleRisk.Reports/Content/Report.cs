using System.Collections.Immutable;

namespace AxleRisk.Reports.Content;

/// <summary>A report: what it says, not how it looks. Texts are plain; the renderers escape them.</summary>
/// <param name="Title">Its title, one line.</param>
/// <param name="Sections">Its sections, in the order they are read.</param>
/// <param name="Files">Tables for other programs that go with it.</param>
public sealed record Report(string Title, ImmutableArray<Section> Sections, ImmutableArray<DataFile> Files)
{
    /// <summary>A report whose figures and tables are numbered in the order they are read.</summary>
    public static Report Of(string title, IEnumerable<Section> sections, IEnumerable<DataFile> files)
    {
        (int figures, int tables) = (0, 0);
        Block Numbered(Block block) => block switch
        {
            Figure figure => figure with { Number = ++figures },
            Table table => table.ForPage() with { Number = ++tables },
            _ => block,
        };
        return new Report(title, [.. sections.Select(s => s with { Blocks = [.. s.Blocks.Select(Numbered)] })], [.. files]);
    }

    /// <summary>Every picture of the report, in the order they are read; a small one in a table's cell is one of them.</summary>
    public IEnumerable<Picture> Pictures => Sections.SelectMany(s => s.Blocks).SelectMany(b => b switch
    {
        Figure figure => [figure.Picture],
        Table table => table.Rows.SelectMany(r => r).Select(c => c.Picture).OfType<Picture>(),
        _ => Enumerable.Empty<Picture>(),
    });
}

/// <summary>One section.</summary>
/// <param name="Title">Its heading.</param>
/// <param name="Blocks">What it says.</param>
public sealed record Section(string Title, ImmutableArray<Block> Blocks);

/// <summary>A table of figures to full precision.</summary>
/// <param name="Name">Its name without folder and ending: small letters and hyphens.</param>
/// <param name="Header">The names of its columns.</param>
/// <param name="Rows">Its rows.</param>
public sealed record DataFile(string Name, ImmutableArray<string> Header, ImmutableArray<ImmutableArray<string>> Rows);
