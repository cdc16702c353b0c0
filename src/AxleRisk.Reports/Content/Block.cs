using System.Collections.Immutable;
using AxleRisk.Reports.Charts;

namespace AxleRisk.Reports.Content;

/// <summary>One piece of a section.</summary>
public abstract record Block;

/// <summary>A paragraph.</summary>
/// <param name="Text">Its text.</param>
public sealed record Paragraph(string Text) : Block;

/// <summary>A heading inside a section.</summary>
/// <param name="Text">Its text.</param>
public sealed record Subheading(string Text) : Block;

/// <summary>The main figure of the report: one number to remember, and what it is.</summary>
/// <param name="Label">What the number is of.</param>
/// <param name="Number">The number with its unit.</param>
/// <param name="Details">Its interval, and the number in words.</param>
public sealed record Headline(string Label, string Number, ImmutableArray<string> Details) : Block;

/// <summary>A list.</summary>
/// <param name="Items">Its items.</param>
/// <param name="IsNumbered">Whether their order is an order of rank.</param>
public sealed record ItemList(ImmutableArray<string> Items, bool IsNumbered = false) : Block;

/// <summary>What must not be overlooked.</summary>
/// <param name="Text">Its text.</param>
public sealed record Warning(string Text) : Block;

/// <summary>Lines to be typed at a terminal.</summary>
/// <param name="Lines">The lines.</param>
public sealed record CommandLines(ImmutableArray<string> Lines) : Block;

/// <summary>A figure with its caption.</summary>
/// <param name="Picture">The picture.</param>
/// <param name="Caption">What it shows, how to read it, and the run behind it.</param>
public sealed record Figure(Picture Picture, string Caption) : Block
{
    /// <summary>Its number in the report, from 1.</summary>
    public int Number { get; init; }

    /// <summary>Whether it is drawn with characters too where an answer is given as lines.</summary>
    public bool InLines { get; init; }
}

/// <summary>A chart with a name and a text for those who cannot see it.</summary>
/// <param name="Name">Unique in the report: small letters, digits and hyphens; the name of its file.</param>
/// <param name="Alternative">What a reader sees in it, in words.</param>
/// <param name="Chart">The chart.</param>
public sealed record Picture(string Name, string Alternative, Chart Chart);
