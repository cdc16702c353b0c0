using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Trips;

/// <summary>How likely an axle is to have survived what its modes of failure have used up.</summary>
/// <param name="chances">What is left to chance, averaged exactly; null to go by the limits drawn.</param>
internal sealed class TripSurvival(FailureChances? chances)
{
    /// <summary>Whether what is left to chance is averaged exactly.</summary>
    public bool IsConditional => chances is not null;

    /// <summary>
    /// P(survives what each mode has <paramref name="used"/> up | all other factors); 1 or 0 where the limits drawn are gone by.
    /// </summary>
    public double At(ReadOnlySpan<double> used, ReadOnlySpan<double> limits) =>
        chances is not null ? chances.Survival(used) : FailureChances.Exceeds(used, limits) ? 0 : 1;

    /// <summary>P(survives <paramref name="before"/> but not <paramref name="after"/> | all other factors).</summary>
    public double Fails(ReadOnlySpan<double> before, ReadOnlySpan<double> after, ReadOnlySpan<double> limits) =>
        chances is not null ? chances.Fails(before, after) : At(before, limits) - At(after, limits);
}
