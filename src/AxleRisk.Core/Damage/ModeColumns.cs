namespace AxleRisk.Core.Damage;

/// <summary>
/// What bump stop, first yield and wheel bearing need beside <see cref="DamageColumns"/>: one column a parameter, one row an evaluation. Of
/// a mode that is off the columns are not read.
/// </summary>
public sealed class ModeColumns
{
    /// <summary>Allocates columns of <paramref name="capacity"/> rows; none where no mode is on.</summary>
    public ModeColumns(int capacity)
    {
        BumpClearanceM = new double[capacity];
        BumpStopNPerM = new double[capacity];
        NominalStressMPaPerN = new double[capacity];
        YieldMPa = new double[capacity];
        BearingLoadFactor = new double[capacity];
        BearingRatingN = new double[capacity];
        RevolutionsPerKm = new double[capacity];
    }

    /// <summary>Clearance to the bump stop under load, m; infinite for no stop.</summary>
    public double[] BumpClearanceM { get; }

    /// <summary>Rate of the bump stop, N/m.</summary>
    public double[] BumpStopNPerM { get; }

    /// <summary>Nominal stress per unit of force, MPa/N: as <see cref="DamageColumns.StressPerForceMPaPerN"/>, without the detail's stress concentration.</summary>
    public double[] NominalStressMPaPerN { get; }

    /// <summary>Yield strength, MPa.</summary>
    public double[] YieldMPa { get; }

    /// <summary>Load of the more loaded bearing over the wheel's force.</summary>
    public double[] BearingLoadFactor { get; }

    /// <summary>Basic dynamic load rating of the bearing, N.</summary>
    public double[] BearingRatingN { get; }

    /// <summary>Revolutions of the wheel per km.</summary>
    public double[] RevolutionsPerKm { get; }
}
