using System.Runtime.Intrinsics;

namespace AxleRisk.Core.Numerics.Vectors;

/// <summary>The width of the registers that the batch kernel uses.</summary>
internal enum VectorWidth
{
    /// <summary>No vectors: the scalar kernel does the work.</summary>
    Scalar,

    /// <summary>128 bits: SSE, NEON.</summary>
    Bits128,

    /// <summary>256 bits: AVX2.</summary>
    Bits256,

    /// <summary>512 bits: AVX-512.</summary>
    Bits512,
}

/// <summary>What this machine has.</summary>
internal static class VectorWidths
{
    /// <summary>The widths that run in hardware, narrowest first.</summary>
    public static VectorWidth[] Supported { get; } = [.. Enum.GetValues<VectorWidth>().Where(IsSupported)];

    /// <summary>The widest of them.</summary>
    public static VectorWidth Best => Supported[^1];

    private static bool IsSupported(VectorWidth width) => width switch
    {
        VectorWidth.Bits128 => Vector128.IsHardwareAccelerated,
        VectorWidth.Bits256 => Vector256.IsHardwareAccelerated,
        VectorWidth.Bits512 => Vector512.IsHardwareAccelerated,
        _ => true,
    };
}
