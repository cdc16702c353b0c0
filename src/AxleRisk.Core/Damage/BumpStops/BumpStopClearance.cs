using AxleRisk.Core.Damage.Rides;

namespace AxleRisk.Core.Damage.BumpStops;

/// <summary>What is left of the clearance to the bump stop.</summary>
internal static class BumpStopClearance
{
    /// <summary>
    /// Clearance under load, m: that of the empty vehicle less the payload's deflection <c>m g / ks</c>; 0 where the body rests on
    /// the stop. A stiffer spring (a helper) leaves more.
    /// </summary>
    /// <param name="emptyM">Clearance without payload, m.</param>
    /// <param name="payloadOnWheelKg">The wheel's part of the payload, kg.</param>
    /// <param name="springNPerM">Suspension rate with any helper spring, N/m.</param>
    public static double UnderLoad(double emptyM, double payloadOnWheelKg, double springNPerM) =>
        Math.Max(0, emptyM - payloadOnWheelKg * RideLimits.Gravity / springNPerM);
}
