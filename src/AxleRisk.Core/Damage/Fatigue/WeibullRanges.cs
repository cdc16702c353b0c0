namespace AxleRisk.Core.Damage.Fatigue;

/// <summary>
/// Damage of stress ranges with a Weibull density over a curve of two slopes: JCSS Probabilistic Model Code 3.12, annex B. Shape 1 is the
/// exponential and shape 2 the Rayleigh part of the range densities.
/// </summary>
internal static class WeibullRanges
{
    /// <summary>Mean damage per cycle: <c>E[C S^m]</c> over the part above the knee and the part between cut-off and knee.</summary>
    /// <param name="scaleMPa">Weibull scale q: P(S &gt; s) = exp(-(s/q)^h).</param>
    /// <param name="shape">Weibull shape h, above 0.</param>
    /// <param name="curve">The curve.</param>
    public static double DamagePerCycle(double scaleMPa, double shape, in SnConstants curve)
    {
        if (scaleMPa == 0)
        {
            return 0;
        }

        double knee = Argument(curve.KneeMPa, scaleMPa, shape);
        double above = curve.DamageAbove * Math.Pow(scaleMPa, curve.SlopeAbove) * PartialGamma.Upper(1 + curve.SlopeAbove / shape, knee);
        return above + Below(scaleMPa, shape, knee, curve);
    }

    private static double Below(double scaleMPa, double shape, double knee, in SnConstants curve)
    {
        double a = 1 + curve.SlopeBelow / shape;
        double cutOff = Argument(curve.CutOffMPa, scaleMPa, shape);
        // Ranges far above the knee: the powers of the scale cancel against those of the argument, so they must not be formed.
        if (knee < 1)
        {
            return LowerPart(curve.KneeMPa, a, knee, curve) - LowerPart(curve.CutOffMPa, a, cutOff, curve);
        }

        double part = PartialGamma.Upper(a, cutOff) - PartialGamma.Upper(a, knee);
        return curve.DamageBelow * Math.Pow(scaleMPa, curve.SlopeBelow) * part;
    }

    private static double LowerPart(double limitMPa, double a, double argument, in SnConstants curve) =>
        limitMPa == 0 ? 0 : curve.DamageBelow * Math.Pow(limitMPa, curve.SlopeBelow) * PartialGamma.LowerScaled(a, argument);

    private static double Argument(double limitMPa, double scaleMPa, double shape)
    {
        double y = limitMPa / scaleMPa;
        return shape == 2 ? y * y : shape == 1 ? y : Math.Pow(y, shape);
    }
}
