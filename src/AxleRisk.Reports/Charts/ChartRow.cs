using System.Collections.Immutable;
using AxleRisk.Core.Numerics;

namespace AxleRisk.Reports.Charts;

/// <summary>One row of a <see cref="RowsChart"/>.</summary>
/// <param name="Label">What it is about; shortened where there is no room.</param>
/// <param name="Value">Its figure as text.</param>
/// <param name="Marks">What is drawn.</param>
public sealed record ChartRow(string Label, string Value, ImmutableArray<ChartMark> Marks);

/// <summary>The shapes of marks. They tell themselves apart without colour.</summary>
public enum MarkShape
{
    /// <summary>A bar from 0.</summary>
    Bar,

    /// <summary>A filled dot.</summary>
    Dot,

    /// <summary>An open ring.</summary>
    Ring,

    /// <summary>An upright stroke.</summary>
    Stroke,

    /// <summary>A line from the lower to the upper end of the interval, and nothing at the estimate.</summary>
    Link,
}

/// <summary>One mark, at an estimate; its interval, where it has one, is a thin line through it.</summary>
/// <param name="Shape">Its shape.</param>
/// <param name="At">Where it stands, and its interval.</param>
public sealed record ChartMark(MarkShape Shape, Interval At)
{
    /// <summary>A mark without an interval.</summary>
    public ChartMark(MarkShape shape, double at)
        : this(shape, new Interval(at, double.NaN, double.NaN))
    {
    }
}
