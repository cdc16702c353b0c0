namespace AxleRisk.App.Charts;

/// <summary>An axis of a chart.</summary>
/// <param name="Title">What it is, with the unit.</param>
/// <param name="IsLog">Whether it is logarithmic; what is not above 0 is then left out.</param>
/// <param name="Label">Writes the numbers; null for <see cref="Ticks.Label"/>.</param>
internal sealed record ChartAxis(string Title, bool IsLog = false, Func<double, string>? Label = null)
{
    /// <summary>The range; null for that of the data.</summary>
    public (double Low, double High)? Range { get; init; }

    /// <summary>Whether it is a probability scale; it needs a range inside 0 to 1.</summary>
    public bool IsProbability { get; init; }

    /// <summary>A number of the axis as text.</summary>
    public string Show(double value) => (Label ?? Ticks.Label)(value);
}

/// <summary>One line of a chart; a point that is not finite is a gap.</summary>
/// <param name="Name">Its name in the legend; empty for none.</param>
/// <param name="X">Across, ascending.</param>
/// <param name="Y">Up, as many.</param>
/// <param name="Dash">How it is dashed.</param>
internal sealed record ChartSeries(string Name, IReadOnlyList<double> X, IReadOnlyList<double> Y, Dash Dash = Dash.Solid);

/// <summary>Single points of a chart, drawn as rings.</summary>
/// <param name="Name">Their name in the legend; empty for none.</param>
/// <param name="X">Across.</param>
/// <param name="Y">Up, as many.</param>
internal sealed record ChartPoints(string Name, IReadOnlyList<double> X, IReadOnlyList<double> Y);

/// <summary>An interval along a chart.</summary>
/// <param name="Name">Its name in the legend; empty for none.</param>
/// <param name="X">Across, ascending.</param>
/// <param name="Low">The lower ends.</param>
/// <param name="High">The upper ends.</param>
internal sealed record ChartBand(string Name, IReadOnlyList<double> X, IReadOnlyList<double> Low, IReadOnlyList<double> High);

/// <summary>A place on the axis up, marked over the whole width.</summary>
/// <param name="Y">The place.</param>
/// <param name="Label">Its label.</param>
internal sealed record ChartLevel(double Y, string Label);

/// <summary>A place on the axis across, marked over the whole height.</summary>
/// <param name="X">The place.</param>
/// <param name="Label">Its label.</param>
internal sealed record ChartMark(double X, string Label);
