using System.Collections.Immutable;
using AxleRisk.Core.Distributions;
using ScottPlot;
using ScottPlot.Plottables;

namespace AxleRisk.Reports.Charts;

/// <summary>A small picture of how likely the values of one input are, without axes: the numbers stand beside it.</summary>
/// <param name="Heights">The heights of the picture's steps or bars, from the lowest value to the highest; none below 0.</param>
/// <param name="AreStates">Whether each is a state of its own, drawn as a bar, or a step of a density.</param>
/// <param name="Nominal">Where the base case lies, from 0 at the left end to 1 at the right; NaN outside.</param>
public sealed record DistributionPicture(ImmutableArray<double> Heights, bool AreStates, double Nominal) : Chart
{
    private const int Steps = 60;

    /// <summary>The share of all values that lies beyond each end of the picture at most.</summary>
    private const double Tail = 0.001;

    /// <inheritdoc/>
    public override bool HasNarrowForm => false;

    /// <summary>The picture of a distribution.</summary>
    /// <param name="distribution">The distribution.</param>
    /// <param name="nominal">The value of the base case.</param>
    public static DistributionPicture Of(Distribution distribution, double nominal)
    {
        if (distribution is NumberChoice choice)
        {
            return OfStates([.. choice.Values.Select(choice.Density)], choice.Values.IndexOf(nominal));
        }

        (double low, double high) = (distribution.Quantile(Tail), distribution.UpperQuantile(Tail));
        double width = (high - low) / Steps;

        // Differences of the cumulative: finite also where a density is not, and there for a sample, which has no density.
        double[] heights = [.. Enumerable.Range(0, Steps).Select(i =>
            Math.Max(0, distribution.Cumulative(low + ((i + 1) * width)) - distribution.Cumulative(low + (i * width))))];
        double place = (nominal - low) / (high - low);
        return new DistributionPicture([.. heights], false, place is >= 0 and <= 1 ? place : double.NaN);
    }

    /// <summary>The picture of separate states.</summary>
    /// <param name="heights">Their probabilities.</param>
    /// <param name="nominal">The place of the state of the base case; below 0 for none.</param>
    public static DistributionPicture OfStates(ImmutableArray<double> heights, int nominal) =>
        new(heights, true, nominal < 0 ? double.NaN : (nominal + 0.5) / heights.Length);

    /// <inheritdoc/>
    internal override (int Width, int Height) Size(ChartWidth form) => (132, 36);

    /// <inheritdoc/>
    private protected override void Draw(Plot plot, Palette colours, ChartWidth form)
    {
        plot.HideAxesAndGrid();
        plot.Layout.Frameless();
        double most = Math.Max(Heights.Append(0).Max(), double.Epsilon);
        plot.Axes.SetLimits(-0.03, 1.03, -0.06, 1.12);
        double width = 1.0 / Heights.Length;
        double gap = Math.Min(0.25 * width, 0.04);
        Coordinates[] outline = AreStates
            ? [.. Heights.SelectMany((h, i) => new Coordinates[]
            {
                new((i * width) + gap, 0), new((i * width) + gap, h / most), new(((i + 1) * width) - gap, h / most),
                new(((i + 1) * width) - gap, 0),
            })]
            : [
                new(0, 0), new(0, Heights[0] / most), .. Heights.Select((h, i) => new Coordinates((i + 0.5) * width, h / most)),
                new(1, Heights[^1] / most), new(1, 0),
            ];
        Polygon area = plot.Add.Polygon(outline);
        area.FillColor = colours[Tone.Accent].WithAlpha(0.5);
        area.LineWidth = 0;
        LinePlot ground = plot.Add.Line(0, 0, 1, 0);
        ground.LineWidth = 1;
        ground.LineColor = colours[Tone.Muted];
        if (!double.IsNaN(Nominal))
        {
            LinePlot nominal = plot.Add.Line(Nominal, 0, Nominal, 1.1);
            nominal.LineWidth = 1.5f;
            nominal.LineColor = colours[Tone.Ink];
        }
    }
}
