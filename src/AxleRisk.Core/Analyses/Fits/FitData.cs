using System.Collections.Immutable;

namespace AxleRisk.Core.Analyses.Fits;

/// <summary>Observations made ready for fits: equal ones together, with what starting values are made of.</summary>
internal sealed class FitData
{
    /// <summary>Makes them ready.</summary>
    /// <param name="observations">At least one.</param>
    public FitData(IEnumerable<Observation> observations)
    {
        Observations =
        [
            .. observations.GroupBy(o => (o.Low, o.High)).Select(g => new Observation(g.Key.Low, g.Key.High, g.Sum(o => o.Count)))
                .OrderBy(o => o.Low).ThenBy(o => o.High),
        ];
        Count = Observations.Sum(o => o.Count);
        IsExact = Observations.All(o => o.IsExact);
        double[] ends = [.. Observations.SelectMany(o => new[] { o.Low, o.High }).Where(double.IsFinite)];
        (Least, Greatest) = (ends.Min(), ends.Max());
        Middles = [.. Observations.Select(o => (Middle(o), o.Count))];
        (Mean, Deviation) = Moments(x => x);
        (MeanOfLn, DeviationOfLn) = Least > 0 ? Moments(Math.Log) : (double.NaN, double.NaN);
    }

    /// <summary>The observations, each once with its count, in ascending order.</summary>
    public ImmutableArray<Observation> Observations { get; }

    /// <summary>The number of values.</summary>
    public double Count { get; }

    /// <summary>Whether every value is known.</summary>
    public bool IsExact { get; }

    /// <summary>The least finite end of an observation.</summary>
    public double Least { get; }

    /// <summary>The greatest.</summary>
    public double Greatest { get; }

    /// <summary>A rough mean and standard deviation of the values; exact where all are known.</summary>
    public double Mean { get; }

    /// <summary>The deviation of the maximum likelihood: over the count.</summary>
    public double Deviation { get; }

    /// <summary>The same of the logarithms; NaN where some value is not above 0.</summary>
    public double MeanOfLn { get; }

    /// <summary>The deviation of the logarithms.</summary>
    public double DeviationOfLn { get; }

    private ImmutableArray<(double Value, double Count)> Middles { get; }

    private static double Middle(Observation o) => double.IsInfinity(o.High) ? o.Low : double.IsInfinity(o.Low) ? o.High
        : 0.5 * (o.Low + o.High);

    private (double Mean, double Deviation) Moments(Func<double, double> of)
    {
        double mean = Middles.Sum(m => m.Count * of(m.Value)) / Count;
        double deviation = Math.Sqrt(Middles.Sum(m => m.Count * Math.Pow(of(m.Value) - mean, 2)) / Count);
        return (mean, deviation > 0 ? deviation : Math.Max(1e-3 * Math.Abs(mean), 1e-3));
    }
}
