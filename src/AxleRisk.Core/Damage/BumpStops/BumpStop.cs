namespace AxleRisk.Core.Damage.BumpStops;

/// <summary>The bump stop under a load.</summary>
/// <param name="ClearanceM">Compression of the suspension from its static position at which the stop is met, m; infinite for no
/// stop.</param>
/// <param name="NPerM">Its rate, beside the spring's, N/m.</param>
internal readonly record struct BumpStop(double ClearanceM, double NPerM);
