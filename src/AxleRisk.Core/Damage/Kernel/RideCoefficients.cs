using System.Runtime.CompilerServices;
using AxleRisk.Core.Damage.Rides;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>
/// The coefficients of <see cref="Ride.ForceGainSquared"/> as polynomials in the squared frequency X, several rows at a time. Masses are in
/// units of ms, frequencies in units of the grid's centre w, hence rates in ms w^2 and dampers in ms w; the gain lacks the factor
/// (ms w^2)^2 X^2.
/// </summary>
internal static class RideCoefficients
{
    // The places of a row's coefficients, each a column.
    public const int Real0 = 0;
    public const int Real1 = 1;
    public const int Real2 = 2;
    public const int Imaginary0 = 3;
    public const int Imaginary1 = 4;
    public const int Tyre0 = 5;
    public const int Tyre1 = 6;
    public const int Inner0 = 7;
    public const int Inner1 = 8;
    public const int Inner2 = 9;

    // What the choice of the grid needs, see GridRule.
    public const int LowerSquared = 10;
    public const int UpperSquared = 11;
    public const int LowerDamping = 12;
    public const int UpperDamping = 13;

    public const int Count = 14;

    private static readonly float Centre = (float)(2 * Math.PI * MomentGrid.CentreHz);

    /// <summary>Fills them and the road's exponent from the rows <paramref name="first"/> and on.</summary>
    public static void Fill<T>(DamageColumns columns, int first, int rows, MomentInputs to)
        where T : struct, IFloatLanes<T>
    {
        for (int row = 0; row < rows; row += T.Count)
        {
            int at = first + row;
            T perMass = T.Create(1) / ColumnLanes.Load<T>(columns.SprungMassKg, at);
            T perRate = perMass * T.Create(1 / (Centre * Centre));
            T perDamping = perMass * T.Create(1 / Centre);
            T mu = ColumnLanes.Load<T>(columns.UnsprungMassKg, at) * perMass;
            T ks = ColumnLanes.Load<T>(columns.SpringNPerM, at) * perRate;
            T cs = ColumnLanes.Load<T>(columns.DamperNsPerM, at) * perDamping;
            T kt = ColumnLanes.Load<T>(columns.TyreNPerM, at) * perRate;
            T ct = ColumnLanes.Load<T>(columns.TyreDampingNsPerM, at) * perDamping;
            T inner = mu - ColumnLanes.Load<T>(columns.OutboardShare, at) * mu; // mu (1 - phi)
            ref float start = ref to.Ride(row);
            Determinant(mu, ks, cs, kt, ct, ref start, to.Stride);
            Numerator(inner, ks, cs, kt, ct, ref start, to.Stride);
            T.Store(T.Create(2) - ColumnLanes.Load<T>(columns.Waviness, at), ref to.Waviness(row));
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Determinant<T>(T mu, T ks, T cs, T kt, T ct, ref float start, int stride)
        where T : struct, IFloatLanes<T>
    {
        T real0 = ks * kt;
        T undamped = ks * mu + ks + kt;
        T imaginary0 = cs * kt + ct * ks;
        T imaginary1 = cs * mu + cs + ct;
        Put(real0, ref start, Real0, stride);
        Put(T.Create(0) - undamped - cs * ct, ref start, Real1, stride);
        Put(mu, ref start, Real2, stride);
        Put(imaginary0, ref start, Imaginary0, stride);
        Put(T.Create(0) - imaginary1, ref start, Imaginary1, stride);

        // The eigenfrequencies as in Ride, the damping by perturbation: zeta = |Im det| / (2 w |d Re det / d(w^2)|).
        T root = T.Sqrt(undamped * undamped - T.Create(4) * mu * real0);
        T sum = undamped + root;
        T lower = (real0 + real0) / sum;
        T upper = sum / (mu + mu);
        Put(lower, ref start, LowerSquared, stride);
        Put(upper, ref start, UpperSquared, stride);
        T lowerDamping = (imaginary0 - lower * imaginary1) / root;
        T upperDamping = (upper * imaginary1 - imaginary0) / root;
        Put(lowerDamping * lowerDamping / lower, ref start, LowerDamping, stride);
        Put(upperDamping * upperDamping / upper, ref start, UpperDamping, stride);
    }

    // (kt^2 + ct^2 X) [(inner X - ks M)^2 + (cs M)^2 X], M = 1 + inner
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Numerator<T>(T inner, T ks, T cs, T kt, T ct, ref float start, int stride)
        where T : struct, IFloatLanes<T>
    {
        T mass = T.Create(1) + inner;
        T spring = ks * mass;
        T damper = cs * mass;
        Put(kt * kt, ref start, Tyre0, stride);
        Put(ct * ct, ref start, Tyre1, stride);
        Put(spring * spring, ref start, Inner0, stride);
        Put(damper * damper - T.Create(2) * inner * spring, ref start, Inner1, stride);
        Put(inner * inner, ref start, Inner2, stride);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Put<T>(T value, ref float start, int column, int stride)
        where T : struct, IFloatLanes<T> => T.Store(value, ref Unsafe.Add(ref start, column * stride));
}
