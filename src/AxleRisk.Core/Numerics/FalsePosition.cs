namespace AxleRisk.Core.Numerics;

/// <summary>
/// The zero of a function that is dear to evaluate and has no derivative: the rule of false position with the weight of the
/// end that stays halved (the Illinois method, Dowell and Jarratt 1971). MathNet's Brent would evaluate both ends again, which the caller
/// has asked already, and gives nothing where the evaluations run out.
/// </summary>
internal static class FalsePosition
{
    /// <summary>A point and the function's value there.</summary>
    public readonly record struct Point(double X, double Value);

    /// <summary>The zero between two points whose values have opposite signs.</summary>
    /// <param name="function">The function; it need not be smooth.</param>
    /// <param name="low">The point at one end.</param>
    /// <param name="high">The point at the other end.</param>
    /// <param name="tolerance">The search ends when two points, or the ends, are this close.</param>
    /// <param name="most">The most evaluations; then the best point so far is good enough.</param>
    /// <returns>The zero, to within the tolerance where the evaluations allow.</returns>
    /// <exception cref="ArgumentException">The values have one sign.</exception>
    public static double Zero(Func<double, double> function, Point low, Point high, double tolerance, int most)
    {
        if (!(low.Value <= 0 && high.Value >= 0) && !(low.Value >= 0 && high.Value <= 0))
        {
            throw new ArgumentException("the values at the ends must have opposite signs", nameof(low));
        }

        if (low.Value == 0 || high.Value == 0)
        {
            return low.Value == 0 ? low.X : high.X;
        }

        double before = double.NaN;
        double x = low.X;
        for (int i = 0; i < most && Math.Abs(high.X - low.X) > tolerance; i++)
        {
            x = ((low.X * high.Value) - (high.X * low.Value)) / (high.Value - low.Value);
            double value = function(x);
            if (value == 0 || Math.Abs(x - before) <= tolerance)
            {
                return x;
            }

            if (Math.Sign(value) == Math.Sign(high.Value))
            {
                low = low with { Value = low.Value / 2 };
                high = new Point(x, value);
            }
            else
            {
                // From here on "high" is the end that was found last.
                (low, high) = (high, new Point(x, value));
            }

            before = x;
        }

        return x;
    }

    /// <summary>
    /// The last point found whose value is not above 0, within a width of one whose value is: for a limit that must be kept. Both ends
    /// move, and values may be infinite; where the rule gives no point between the ends the middle is taken.
    /// </summary>
    /// <param name="function">The function; it need not be smooth.</param>
    /// <param name="kept">A point whose value is not above 0.</param>
    /// <param name="above">A point whose value is above 0, on either side of the other.</param>
    /// <param name="width">The search ends when the two are this close; above 0.</param>
    public static double LastNotAbove(Func<double, double> function, double kept, double above, double width)
    {
        double atKept = function(kept), atAbove = function(above);
        int side = 0;
        while (Math.Abs(above - kept) > width)
        {
            double x = ((kept * atAbove) - (above * atKept)) / (atAbove - atKept);
            double margin = 0.25 * width * Math.Sign(above - kept);
            x = double.IsFinite(x) && (x - kept) * (above - x) > 0 ? Between(x, kept + margin, above - margin) : (kept + above) / 2;
            double value = function(x);
            if (value > 0)
            {
                (above, atAbove) = (x, value);
                atKept = side > 0 ? atKept / 2 : atKept;
                side = 1;
            }
            else
            {
                (kept, atKept) = (x, value);
                atAbove = side < 0 ? atAbove / 2 : atAbove;
                side = -1;
            }
        }

        return kept;

        static double Between(double x, double a, double b) => Math.Clamp(x, Math.Min(a, b), Math.Max(a, b));
    }
}
