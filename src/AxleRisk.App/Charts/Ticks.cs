using System.Globalization;

namespace AxleRisk.App.Charts;

/// <summary>Round numbers along an axis and their labels.</summary>
internal static class Ticks
{
    private static readonly double[] WithinDecade = [1, 2, 5];

    /// <summary>The round probabilities, those first that are wanted where there is room for few.</summary>
    private static readonly double[] RoundProbabilities =
        [0.01, 0.5, 0.1, 0.9, 0.001, 0.99, 1e-4, 1e-5, 1e-6, 1e-7, 1e-8, 0.999, 0.05, 0.2, 0.8, 0.95, 0.02, 0.005, 0.3, 0.7];

    /// <summary>The round numbers on a scale, at most so many.</summary>
    public static IReadOnlyList<double> On(Scale scale, int most) => most < 1 ? []
        : scale.IsProbability ? Probabilities(scale, most) : scale.IsLog ? Log(scale, most) : Linear(scale, most);

    /// <summary>The step 1, 2 or 5 times a power of ten that gives at most so many steps.</summary>
    public static double Step(double range, int most)
    {
        double rough = range / Math.Max(1, most);
        double decade = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        double part = rough / decade;
        return decade * (part <= 1 + 1e-9 ? 1 : part <= 2 + 1e-9 ? 2 : part <= 5 + 1e-9 ? 5 : 10);
    }

    /// <summary>A number for an axis, short: <c>0.05</c>, <c>150k</c>, <c>2M</c>, <c>1e-6</c>.</summary>
    public static string Label(double value)
    {
        double size = Math.Abs(value);
        return size == 0 ? "0"
            : size is < 1e-3 or >= 1e9 ? Power(value)
            : size >= 1e6 ? Short(value / 1e6) + "M"
            : size >= 1e4 ? Short(value / 1e3) + "k"
            : Short(value);
    }

    /// <summary>A probability for an axis, in percent: <c>5 %</c>.</summary>
    public static string Percent(double value) => $"{Label(100 * value)} %";

    private static string Short(double value) =>
        double.Parse(value.ToString("G6", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture)
        .ToString("0.######", CultureInfo.InvariantCulture);

    private static string Power(double value)
    {
        int exponent = (int)Math.Floor(Math.Log10(Math.Abs(value)) + 1e-9);
        double mantissa = Math.Round(value / Math.Pow(10, exponent), 3);
        return $"{mantissa.ToString("0.###", CultureInfo.InvariantCulture)}e{exponent}";
    }

    private static List<double> Linear(Scale scale, int most)
    {
        double step = Step(scale.High - scale.Low, most);
        double first = Math.Ceiling((scale.Low / step) - 1e-9);
        List<double> ticks = [];
        for (double i = first; i * step <= scale.High + (1e-9 * step) && ticks.Count <= most + 1; i++)
        {
            // Without the noise of 3 * 0.1, and without a sign on zero.
            ticks.Add(Math.Round(i * step / step) * step + 0.0);
        }

        return ticks;
    }

    private static IReadOnlyList<double> Probabilities(Scale scale, int most)
    {
        var taken = new List<double>();
        foreach (double p in RoundProbabilities.Where(p => p >= scale.Low * (1 - 1e-9) && p <= scale.High * (1 + 1e-9)))
        {
            if (taken.Count < most && taken.TrueForAll(t => Math.Abs(scale.Position(t) - scale.Position(p)) > 0.7 / most))
            {
                taken.Add(p);
            }
        }

        return [.. taken.Order()];
    }

    private static List<double> Log(Scale scale, int most)
    {
        int first = (int)Math.Floor(Math.Log10(scale.Low) + 1e-9);
        int last = (int)Math.Ceiling(Math.Log10(scale.High) - 1e-9);
        int every = Math.Max(1, (int)Math.Ceiling((last - first + 1) / (double)most));
        double[] parts = (last - first) * 3 <= most ? WithinDecade : [1];
        return
        [
            .. from e in Enumerable.Range(first, last - first + 1)
               where e % every == 0
               from part in parts
               let v = part * Math.Pow(10, e)
               where v >= scale.Low * (1 - 1e-9) && v <= scale.High * (1 + 1e-9)
               select v,
        ];
    }
}
