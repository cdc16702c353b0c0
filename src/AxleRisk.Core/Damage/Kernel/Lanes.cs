using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Damage;

/// <summary>Loads of whole registers from columns.</summary>
internal static class Lanes
{
    /// <summary>The lanes from a row on, rounded; unchecked.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Load<T>(double[] column, int row)
        where T : struct, IFloatLanes<T> => T.Load(in Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(column), row));
}
