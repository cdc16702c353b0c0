namespace AxleRisk.Core.Damage.Kernel;

/// <summary>The input of one checked section of the axle: what the force of the wheel does there, a column a parameter.</summary>
internal sealed class SectionColumns
{
    /// <summary>Allocates columns of <paramref name="capacity"/> rows.</summary>
    /// <param name="capacity">The number of rows.</param>
    /// <param name="corrodes">Whether the wall gets thinner with distance.</param>
    public SectionColumns(int capacity, bool corrodes)
    {
        WallLeftMm = new double[capacity];
        SectionModulusMm3 = new double[capacity];
        StressPerForceMPaPerN = new double[capacity];
        ThicknessMm = new double[capacity];
        Category = new double[capacity];
        WallLastsKm = new double[corrodes ? PaddedTail.Padded(capacity) : 0];
    }

    /// <summary>Wall that is left, mm; on the way to the section modulus, and filled where the section has a wall.</summary>
    public double[] WallLeftMm { get; }

    /// <summary>Section modulus, mm^3; on the way to the stress, and filled where the section has a wall.</summary>
    public double[] SectionModulusMm3 { get; }

    /// <summary>Stress per unit of force at the detail, MPa/N; infinite where no wall is left.</summary>
    public double[] StressPerForceMPaPerN { get; }

    /// <summary>Wall thickness for the thickness correction, mm.</summary>
    public double[] ThicknessMm { get; }

    /// <summary>Index of the S-N curve among those of the section (a whole number).</summary>
    public double[] Category { get; }

    /// <summary>The distance at which no wall is left, km; infinite for never. Empty unless it corrodes, padded to registers.</summary>
    public double[] WallLastsKm { get; }
}
