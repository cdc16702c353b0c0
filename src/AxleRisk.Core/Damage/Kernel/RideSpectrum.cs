using System.Runtime.CompilerServices;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>The spectra of the ride on a road, a row a lane, from <see cref="MomentInputs"/>.</summary>
internal static class RideSpectrum
{
    /// <summary>
    /// Fills <paramref name="spectrum"/> with the squared gain at the grid's points, without the powers of the frequency that
    /// <see cref="MomentGrid.Weights"/> hold: the spectra on a road of exponent 2 and density 1 at the grid's centre.
    /// </summary>
    public static void Fill<T>(MomentInputs inputs, int row, MomentGrid grid, AlignedBuffer<float> spectrum)
        where T : struct, IFloatLanes<T> => Fill<T>(inputs, row, grid, spectrum, spectrum, hasTravel: false);

    /// <summary>
    /// The same, and fills <paramref name="travel"/> with the part of the squared gain that force and suspension travel share, likewise
    /// without the powers of the frequency: the squared gain of the travel itself in the units of
    /// <see cref="RideCoefficients"/>.
    /// </summary>
    public static void FillBoth<T>(MomentInputs inputs, int row, MomentGrid grid, AlignedBuffer<float> spectrum,
        AlignedBuffer<float> travel)
        where T : struct, IFloatLanes<T> => Fill<T>(inputs, row, grid, spectrum, travel, hasTravel: true);

    // Inlined, so that the choice is made when it is compiled.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Fill<T>(
        MomentInputs inputs, int row, MomentGrid grid, AlignedBuffer<float> spectrum, AlignedBuffer<float> travel, bool hasTravel)
        where T : struct, IFloatLanes<T>
    {
        ref float ride = ref inputs.Ride(row);
        int stride = inputs.Stride;

        // Ten coefficients in ten registers: a structure of that many would go through memory.
        T real0 = Coefficient<T>(ref ride, RideCoefficients.Real0, stride);
        T real1 = Coefficient<T>(ref ride, RideCoefficients.Real1, stride);
        T real2 = Coefficient<T>(ref ride, RideCoefficients.Real2, stride);
        T imaginary0 = Coefficient<T>(ref ride, RideCoefficients.Imaginary0, stride);
        T imaginary1 = Coefficient<T>(ref ride, RideCoefficients.Imaginary1, stride);
        T tyre0 = Coefficient<T>(ref ride, RideCoefficients.Tyre0, stride);
        T tyre1 = Coefficient<T>(ref ride, RideCoefficients.Tyre1, stride);
        T inner0 = Coefficient<T>(ref ride, RideCoefficients.Inner0, stride);
        T inner1 = Coefficient<T>(ref ride, RideCoefficients.Inner1, stride);
        T inner2 = Coefficient<T>(ref ride, RideCoefficients.Inner2, stride);
        ref float squared = ref grid.SquaredFrequencies.At(0);
        ref float toForce = ref spectrum.At(0);
        ref float toTravel = ref travel.At(0);
        for (int i = 0; i < grid.Points; i++)
        {
            // Ride.ForceGainSquared without its x^2
            T x = T.Create(Unsafe.Add(ref squared, i));
            T tyre = T.MultiplyAdd(tyre1, x, tyre0);
            T inner = T.MultiplyAdd(T.MultiplyAdd(inner2, x, inner1), x, inner0);
            T real = T.MultiplyAdd(T.MultiplyAdd(real2, x, real1), x, real0);
            T imaginary = T.MultiplyAdd(imaginary1, x, imaginary0);
            T determinant = T.MultiplyAdd(real, real, imaginary * imaginary * x);
            if (hasTravel)
            {
                T common = tyre / determinant;
                T.Store(common, ref Unsafe.Add(ref toTravel, i * T.Count));
                T.Store(common * inner, ref Unsafe.Add(ref toForce, i * T.Count));
            }
            else
            {
                T.Store(tyre * inner / determinant, ref Unsafe.Add(ref toForce, i * T.Count));
            }
        }
    }

    /// <summary>
    /// Turns the spectra into those of roads of the rows' own exponents, which have the same density at the grid's centre.
    /// </summary>
    public static void ApplyExponent<T>(MomentInputs inputs, int row, MomentGrid grid, AlignedBuffer<float> spectrum)
        where T : struct, IFloatLanes<T>
    {
        T exponent = T.Load(in inputs.Waviness(row));
        if (!T.AnyNonzero(exponent))
        {
            return;
        }

        for (int i = 0; i < grid.Points; i++)
        {
            ref float at = ref spectrum.At(i * T.Count);
            T.Store(VectorMath.Exp(exponent * T.Create(grid.LogFrequencies.At(i))) * T.Load(in at), ref at);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Coefficient<T>(ref float row, int column, int stride)
        where T : struct, IFloatLanes<T> => T.Load(in Unsafe.Add(ref row, column * stride));
}
