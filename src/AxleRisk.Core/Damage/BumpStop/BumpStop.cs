namespace AxleRisk.Core.Damage;

/// <summary>The bump stop under a load.</summary>
/// <param name="ClearanceM">Compression of the suspension from its static position at which the stop is met, m; infinite for no stop.</param>
/// <param name="NPerM">Its rate, beside the spring's, N/m.</param>
internal readonly record struct BumpStop(double ClearanceM, double NPerM)
{
    /// <summary>The stop of a row; none where the columns have none.</summary>
    public static BumpStop Of(DamageColumns columns, int row) => columns.Layout.HasBumpStop
        ? new(columns.BumpClearanceM[row], columns.BumpStopNPerM[row])
        : new(double.PositiveInfinity, 0);
}
