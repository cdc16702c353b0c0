namespace AxleRisk.App.Charts;

/// <summary>What a cell of a picture is; the view gives each role its colour. Nothing is told by the role alone.</summary>
internal enum ChartRole
{
    /// <summary>Nothing.</summary>
    Blank,

    /// <summary>Axes, ticks and frames.</summary>
    Axis,

    /// <summary>Labels and titles.</summary>
    Text,

    /// <summary>The first series, or a bar.</summary>
    Line,

    /// <summary>The second series.</summary>
    SecondLine,

    /// <summary>The third and further series.</summary>
    ThirdLine,

    /// <summary>An interval, or the area under a curve.</summary>
    Band,

    /// <summary>A marked place with its label.</summary>
    Mark,

    /// <summary>A strong value of a grid.</summary>
    Strong,

    /// <summary>The name and value of a row that is chosen.</summary>
    Chosen,
}

/// <summary>One cell of a picture.</summary>
/// <param name="Glyph">The character, one column wide.</param>
/// <param name="Role">What it is.</param>
internal readonly record struct ChartCell(char Glyph, ChartRole Role)
{
    public static ChartCell Empty { get; } = new(' ', ChartRole.Blank);
}
