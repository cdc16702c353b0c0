using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace AxleRisk.Core.Numerics.Vectors;

/// <summary>Loads of whole registers from columns.</summary>
internal static class ColumnLanes
{
    /// <summary>The lanes from a row on, rounded; unchecked.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Load<T>(double[] column, int row)
        where T : struct, IFloatLanes<T> => T.Load(in Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(column), row));
}
