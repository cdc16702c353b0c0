using System.Runtime.CompilerServices;
using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Damage;

/// <summary>The spectrum of one row's ride on a road, from its <see cref="RideCoefficients"/>.</summary>
internal static class RideSpectrum
{
    /// <summary>
    /// Fills <paramref name="spectrum"/> with the gain times the weights of the four moments, on a road of exponent 2 and density 1 at the
    /// grid's centre.
    /// </summary>
    public static void Fill<T>(ref float row, int stride, MomentGrid grid, AlignedBuffer<float> spectrum)
        where T : struct, IFloatLanes<T>
    {
        // Ten coefficients in ten registers: a structure of that many would go through memory.
        T real0 = Coefficient<T>(ref row, RideCoefficients.Real0, stride);
        T real1 = Coefficient<T>(ref row, RideCoefficients.Real1, stride);
        T real2 = Coefficient<T>(ref row, RideCoefficients.Real2, stride);
        T imaginary0 = Coefficient<T>(ref row, RideCoefficients.Imaginary0, stride);
        T imaginary1 = Coefficient<T>(ref row, RideCoefficients.Imaginary1, stride);
        T tyre0 = Coefficient<T>(ref row, RideCoefficients.Tyre0, stride);
        T tyre1 = Coefficient<T>(ref row, RideCoefficients.Tyre1, stride);
        T inner0 = Coefficient<T>(ref row, RideCoefficients.Inner0, stride);
        T inner1 = Coefficient<T>(ref row, RideCoefficients.Inner1, stride);
        T inner2 = Coefficient<T>(ref row, RideCoefficients.Inner2, stride);
        int points = grid.Points;
        ref float squared = ref grid.SquaredFrequencies.At(0);
        ref float weights = ref grid.Weights.At(0);
        ref float to = ref spectrum.At(0);
        for (int i = 0; i < points; i += T.Count)
        {
            // Ride.ForceGainSquared without its x^2
            T x = T.Load(in Unsafe.Add(ref squared, i));
            T numerator = T.MultiplyAdd(tyre1, x, tyre0) * T.MultiplyAdd(T.MultiplyAdd(inner2, x, inner1), x, inner0);
            T real = T.MultiplyAdd(T.MultiplyAdd(real2, x, real1), x, real0);
            T imaginary = T.MultiplyAdd(imaginary1, x, imaginary0);
            T gain = numerator / T.MultiplyAdd(real, real, imaginary * imaginary * x);
            for (int k = i; k < 4 * points; k += points)
                T.Store(gain * T.Load(in Unsafe.Add(ref weights, k)), ref Unsafe.Add(ref to, k));
        }
    }

    /// <summary>Turns the spectrum into that of a road of another exponent, which has the same density at the grid's centre.</summary>
    public static void ApplyWaviness<T>(double waviness, MomentGrid grid, AlignedBuffer<float> spectrum)
        where T : struct, IFloatLanes<T>
    {
        T exponent = T.Create((float)(2 - waviness));
        for (int i = 0; i < grid.Points; i += T.Count)
        {
            T factor = T.Exp(exponent * T.Load(in grid.LogFrequencies.At(i)));
            for (int k = i; k < 4 * grid.Points; k += grid.Points)
                T.Store(factor * T.Load(in spectrum.At(k)), ref spectrum.At(k));
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Coefficient<T>(ref float row, int column, int stride)
        where T : struct, IFloatLanes<T> => T.Create(Unsafe.Add(ref row, column * stride));
}
