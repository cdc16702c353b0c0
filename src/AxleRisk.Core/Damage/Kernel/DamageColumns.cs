using System.Collections.Immutable;
using AxleRisk.Core.Damage.BumpStops;
using AxleRisk.Core.Damage.Rides;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>
/// The damage model's input as a structure of arrays: one column a parameter, one row an evaluation, SI units except
/// stress in MPa. Allocated once a worker and filled again for every block.
/// </summary>
internal sealed class DamageColumns
{
    /// <summary>
    /// Allocates columns of <paramref name="capacity"/> rows for <paramref name="legs"/> legs, without a bump stop and for
    /// fatigue alone.
    /// </summary>
    public DamageColumns(int capacity, int legs)
        : this(capacity, new DamageLayout(legs))
    {
    }

    /// <summary>Allocates columns of <paramref name="capacity"/> rows.</summary>
    internal DamageColumns(int capacity, DamageLayout layout)
    {
        Layout = layout;
        Capacity = capacity;
        Sections = [new(capacity, layout.Corrodes), .. layout.Sections.Select(s => new SectionColumns(capacity, s.Corrodes))];
        SprungMassKg = new double[capacity];
        UnsprungMassKg = new double[capacity];
        SpringNPerM = new double[capacity];
        DamperNsPerM = new double[capacity];
        TyreNPerM = new double[capacity];
        TyreDampingNsPerM = new double[capacity];
        OutboardShare = new double[capacity];
        ContactLengthM = new double[capacity];
        Waviness = new double[capacity];
        BumpClearanceM = new double[layout.HasBumpStop ? capacity : 0];
        BumpStopNPerM = new double[layout.HasBumpStop ? capacity : 0];
        Modes = [.. layout.Modes.Select(create => create(capacity))];
        Legs = [.. Enumerable.Range(0, layout.Legs).Select(_ => new LegColumns(capacity)
        { DamageRatio = new double[layout.HasRatios ? capacity : 0] })];
    }

    /// <summary>The number of rows.</summary>
    public int Capacity { get; }

    /// <summary>Sprung mass with its part of the payload, kg.</summary>
    public double[] SprungMassKg { get; }

    /// <summary>Unsprung mass, kg.</summary>
    public double[] UnsprungMassKg { get; }

    /// <summary>Suspension rate with any helper spring, N/m.</summary>
    public double[] SpringNPerM { get; }

    /// <summary>Damper rate in its present condition, N s/m.</summary>
    public double[] DamperNsPerM { get; }

    /// <summary>Tyre rate, N/m.</summary>
    public double[] TyreNPerM { get; }

    /// <summary>Tyre damping, N s/m.</summary>
    public double[] TyreDampingNsPerM { get; }

    /// <summary>Share of the unsprung mass outboard of the section, 0 to 1.</summary>
    public double[] OutboardShare { get; }

    /// <summary>Contact length, m.</summary>
    public double[] ContactLengthM { get; }

    /// <summary>Wall that is left, mm; on the way to the section modulus, and filled where the section has a wall.</summary>
    internal double[] WallLeftMm => First.WallLeftMm;

    /// <summary>Section modulus, mm^3; on the way to the stress, and filled where the section has a wall.</summary>
    internal double[] SectionModulusMm3 => First.SectionModulusMm3;

    /// <summary>
    /// Stress per unit of force at the detail, MPa/N: stress factor times stress concentration times arm over section modulus.
    /// Infinite where no wall is left.
    /// </summary>
    public double[] StressPerForceMPaPerN => First.StressPerForceMPaPerN;

    /// <summary>Wall thickness for the thickness correction, mm.</summary>
    public double[] ThicknessMm => First.ThicknessMm;

    /// <summary>Exponent of the road spectrum.</summary>
    public double[] Waviness { get; }

    /// <summary>Index of the S-N curve among those handed to the kernel (a whole number).</summary>
    public double[] Category => First.Category;

    /// <summary>Clearance to the bump stop under load, m; infinite for no stop. Empty where the layout has none.</summary>
    public double[] BumpClearanceM { get; }

    /// <summary>Rate of the bump stop, N/m. Empty where the layout has none.</summary>
    public double[] BumpStopNPerM { get; }

    /// <summary>
    /// The distance at which no wall is left, km; infinite for never. Empty unless the layout corrodes, and padded to whole
    /// registers.
    /// </summary>
    public double[] WallLastsKm => First.WallLastsKm;

    /// <summary>The checked sections, the first before the others.</summary>
    internal ImmutableArray<SectionColumns> Sections { get; }

    /// <summary>What each further mode of failure needs.</summary>
    internal ImmutableArray<ModeColumns> Modes { get; }

    /// <summary>Which columns there are.</summary>
    internal DamageLayout Layout { get; }

    /// <summary>The columns of each leg.</summary>
    public LegColumns[] Legs { get; }

    private SectionColumns First => Sections[0];

    /// <summary>The ride of a row.</summary>
    internal RideParameters RideOf(int row) => new(
        SprungMassKg[row], UnsprungMassKg[row], SpringNPerM[row], DamperNsPerM[row], TyreNPerM[row], TyreDampingNsPerM[row],
        OutboardShare[row]);

    /// <summary>The bump stop of a row; none where the columns have none.</summary>
    internal BumpStop StopOf(int row) => Layout.HasBumpStop
        ? new(BumpClearanceM[row], BumpStopNPerM[row])
        : new(double.PositiveInfinity, 0);
}

/// <summary>The columns of one leg of use.</summary>
/// <param name="capacity">The number of rows.</param>
internal sealed class LegColumns(int capacity)
{
    /// <summary>Share of the distance, 0 to 1.</summary>
    public double[] Share { get; } = new double[capacity];

    /// <summary>Speed, m/s.</summary>
    public double[] SpeedMPerS { get; } = new double[capacity];

    /// <summary>Displacement spectral density of the road at 0.1 cycles/m, m^3.</summary>
    public double[] RoughnessM3 { get; } = new double[capacity];

    /// <summary>Share of the leg that is corrugated, 0 to 1.</summary>
    public double[] CorrugatedShare { get; } = new double[capacity];

    /// <summary>Wavelength of the corrugation, m.</summary>
    public double[] CorrugationWavelengthM { get; } = new double[capacity];

    /// <summary>RMS amplitude of the corrugation, m.</summary>
    public double[] CorrugationRmsM { get; } = new double[capacity];

    /// <summary>True over computed damage of the further sections on the leg. Empty where the layout has none.</summary>
    internal double[] DamageRatio { get; init; } = [];
}
