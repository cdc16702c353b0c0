namespace AxleRisk.Core.Damage.Fatigue;

/// <summary>
/// Damage of stress ranges with a Weibull density over an S-N curve: JCSS Probabilistic Model Code 3.12, annex B. Shape 1 is the
/// exponential and shape 2 the Rayleigh part of the range densities.
/// </summary>
internal static class WeibullRanges
{
    /// <summary>Mean damage per cycle: the sum of <c>E[C S^m]</c> over the pieces.</summary>
    /// <param name="scaleMPa">Weibull scale q: P(S &gt; s) = exp(-(s/q)^h).</param>
    /// <param name="shape">Weibull shape h, above 0.</param>
    /// <param name="curve">The curve.</param>
    public static double DamagePerCycle(double scaleMPa, double shape, SnConstants curve)
    {
        if (scaleMPa == 0)
        {
            return 0;
        }

        double sum = 0;
        foreach (SnPiece piece in curve.Pieces)
        {
            sum += OfPiece(scaleMPa, shape, piece);
        }

        return sum;
    }

    private static double OfPiece(double scaleMPa, double shape, in SnPiece piece)
    {
        double a = 1 + piece.Slope / shape;
        double from = Argument(piece.FromMPa, scaleMPa, shape);
        double beyond = 0;
        if (double.IsFinite(piece.ToMPa))
        {
            double to = Argument(piece.ToMPa, scaleMPa, shape);

            // Ranges far above the piece: the powers of the scale cancel against those of the argument, so they must not be formed.
            if (to < 1)
            {
                return LowerPart(piece.ToMPa, a, to, piece) - LowerPart(piece.FromMPa, a, from, piece);
            }

            beyond = PartialGamma.Upper(a, to);
        }

        return piece.Damage * Math.Pow(scaleMPa, piece.Slope) * (PartialGamma.Upper(a, from) - beyond);
    }

    private static double LowerPart(double limitMPa, double a, double argument, in SnPiece piece) =>
        limitMPa == 0 ? 0 : piece.Damage * Math.Pow(limitMPa, piece.Slope) * PartialGamma.LowerScaled(a, argument);

    private static double Argument(double limitMPa, double scaleMPa, double shape)
    {
        double y = limitMPa / scaleMPa;
        return shape == 2 ? y * y : shape == 1 ? y : Math.Pow(y, shape);
    }
}
