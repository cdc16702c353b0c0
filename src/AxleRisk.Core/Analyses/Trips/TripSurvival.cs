using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Trips;

/// <summary>
/// How likely an axle is to have survived what its modes of failure have used up; of a vehicle that was seen, together with what was seen
/// of it, so that ratios are of the vehicles like it.
/// </summary>
internal sealed class TripSurvival
{
    private readonly FailureChances? chances;
    private readonly SeenChances? row;

    /// <summary>That of a scenario.</summary>
    /// <param name="whole">The scenario made ready.</param>
    /// <param name="isCounted">Whether the limits drawn are gone by even where their chances are known exactly.</param>
    public TripSurvival(LifeModel whole, bool isCounted)
        : this(!isCounted && whole.Chances.IsExact ? whole.Chances : null, SeenVehicle.Of(whole), null)
    {
    }

    private TripSurvival(FailureChances? chances, SeenVehicle? seen, SeenChances? row) =>
        (this.chances, Seen, this.row) = (chances, seen, row);

    /// <summary>What was seen of the vehicle; null where nothing was.</summary>
    public SeenVehicle? Seen { get; }

    /// <summary>Whether what is left to chance is averaged exactly.</summary>
    public bool IsConditional => chances is not null;

    /// <summary>The same of an axle of which nothing was seen.</summary>
    public TripSurvival Unseen => Seen is null ? this : new(chances, null, null);

    /// <summary>The same for one thread, which hands over each row before it asks.</summary>
    public TripSurvival OfThread() => Seen is null ? this : new(chances, Seen, new SeenChances(Seen, !IsConditional));

    /// <summary>Hands over a row.</summary>
    public void Take(SeenRows? rows, int of)
    {
        if (rows is not null)
        {
            row!.Take(rows, of);
        }
    }

    /// <summary>
    /// P(survives what each mode has <paramref name="used"/> up | all other factors); 1 or 0 where the limits drawn are gone by.
    /// </summary>
    public double At(ReadOnlySpan<double> used, ReadOnlySpan<double> limits) => row?.At(used, limits)
        ?? chances?.Survival(used) ?? (FailureChances.Exceeds(used, limits) ? 0 : 1);

    /// <summary>P(survives <paramref name="before"/> but not <paramref name="after"/> | all other factors).</summary>
    public double Fails(ReadOnlySpan<double> before, ReadOnlySpan<double> after, ReadOnlySpan<double> limits) =>
        row?.Fails(before, after, limits) ?? chances?.Fails(before, after) ?? At(before, limits) - At(after, limits);
}
