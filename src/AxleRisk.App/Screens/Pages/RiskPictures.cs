using AxleRisk.App.Charts;
using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Screens.Pages;

/// <summary>The pictures of the risk: the failure probability over distance, where the lives lie, and the interval as it shrinks.</summary>
internal static class RiskPictures
{
    /// <summary>The target drawn where the scenario states none.</summary>
    private const double UsualTarget = 0.01;

    /// <summary>The axis goes from the target and the answer a factor of this down, and as far up.</summary>
    private const double Room = 10;

    private const double Least = 1e-8, Most = 0.999;

    /// <summary>The failure probability that is to be met: the fleet's, else the trip's, else 1 %.</summary>
    public static ChartLevel TargetOf(Scenario scenario) => scenario switch
    {
        { Fleet.TargetLife: { } life } => new(life.Fraction, $"target {Ticks.Percent(life.Fraction)} by {Figures.Exact(life.Km)} km"),
        { Trip.TargetRisk: { } risk } => new(risk, $"target of the trip {Ticks.Percent(risk)}"),
        _ => new(UsualTarget, Ticks.Percent(UsualTarget)),
    };

    /// <summary>
    /// The failure probability over distance with its interval, the required distance and the target, on a probability scale:
    /// what is small is as easy to read as what is not.
    /// </summary>
    public static Picture Curve(RiskResult answer, ChartLevel target, int width, int height)
    {
        DistanceRisk[] curve = [.. answer.Picture.Where(d => double.IsFinite(d.Probability.Estimate))];
        double[] km = [.. curve.Select(d => d.DistanceKm)];
        return new LineChart(
            new ChartAxis("distance, km", IsLog: true),
            new ChartAxis("failed by then", Label: Ticks.Percent) { IsProbability = true, Range = RangeOf(answer, target) })
        {
            Levels = [target],
            Series = [new ChartSeries("estimate", km, [.. curve.Select(d => d.Probability.Estimate)])],
            Bands = [new ChartBand("95 %", km, [.. curve.Select(d => d.Probability.Low)], [.. curve.Select(d => d.Probability.High)])],
            Marks = [new ChartMark(answer.RequiredKm, "required")],
        }.Draw(width, height);
    }

    private static (double Low, double High) RangeOf(RiskResult answer, ChartLevel target)
    {
        double[] known = [.. answer.Picture.Select(d => d.Probability.Estimate).Where(p => p is > Least and < Most)];
        double required = answer.AtRequired.Probability.Estimate;
        double low = Math.Min(target.Y, required is > Least and < Most ? required : target.Y) / Room;
        double high = Math.Max(known.DefaultIfEmpty(0).Max(), 1 - ((1 - target.Y) / 2));
        return (Math.Max(Least, low), Math.Min(Most, high));
    }

    /// <summary>Where the lives lie: the share of the vehicles that fails within each step of distance.</summary>
    public static Picture Lives(RiskResult answer, int width, int height)
    {
        DistanceRisk[] curve = [.. answer.Picture];
        double[] km = [.. curve.Skip(1).Select((d, i) => Math.Sqrt(d.DistanceKm * curve[i].DistanceKm))];
        double[] share = [.. curve.Skip(1).Select((d, i) => Known(d) - Known(curve[i]))];
        double step = (curve[1].DistanceKm / curve[0].DistanceKm) - 1;
        return new LineChart(
            new ChartAxis("life, km", IsLog: true), new ChartAxis($"fail within {100 * step:0} % more km", Label: Ticks.Percent))
        {
            Series = [new ChartSeries("", km, share)],
            Bands = [new ChartBand("", km, [.. share.Select(_ => 0.0)], share)],
            Marks = [new ChartMark(answer.RequiredKm, "required")],
        }.Draw(width, height);
    }

    // What was not resolved is nothing on the scale of this picture.
    private static double Known(DistanceRisk d) => d.IsResolved ? d.Probability.Estimate : 0;

    /// <summary>An interval on a scale that stays, so that it is seen to shrink: <c>7.1 |   [==*==]    | 7.7 %</c>.</summary>
    /// <param name="now">The interval as it is.</param>
    /// <param name="first">The interval that the scale was made for.</param>
    /// <param name="width">Characters.</param>
    public static PageLine Interval(Interval now, Interval first, int width)
    {
        if (!(first.High > first.Low && double.IsFinite(first.High - first.Low)))
        {
            return PageLine.Empty;
        }

        double room = 0.25 * (first.High - first.Low);
        (double low, double high) = (Math.Max(0, first.Low - room), Math.Min(1, first.High + room));
        (string left, string right) = ($"  {Figures.Probability(low)} |", $"| {Figures.Probability(high)}");
        int cells = width - left.Length - right.Length;
        if (cells < 10)
        {
            return PageLine.Empty;
        }

        int Place(double p) => (int)Math.Clamp(Math.Round((p - low) / (high - low) * (cells - 1)), 0, cells - 1);
        char[] bar = [.. new string(' ', cells)];
        for (int i = Place(now.Low); i <= Place(now.High); i++)
        {
            bar[i] = '=';
        }

        (bar[Place(now.Low)], bar[Place(now.High)]) = ('[', ']');
        bar[Place(double.IsNaN(now.Estimate) ? now.Low : now.Estimate)] = '*';
        return PageLine.Of(new Piece(left, Ink.Quiet), new Piece(new string(bar), Ink.Strong), new Piece(right, Ink.Quiet));
    }
}
