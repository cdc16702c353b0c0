using AxleRisk.Core.Numerics;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Trips;

/// <summary>
/// How likely an axle is to have survived a damage. The one place where survival is computed: where an axle can fail in
/// more ways than by fatigue, the product of their survivals stands here.
/// </summary>
/// <param name="scale">The lognormal Miner sum and scatter, averaged exactly; null to go by those drawn.</param>
internal sealed class TripSurvival(LifeScale? scale)
{
    /// <summary>Whether the Miner sum and the scatter are averaged exactly.</summary>
    public bool IsConditional => scale is not null;

    /// <summary>P(survives <paramref name="damage"/> | all other factors); 1 or 0 where the Miner sum at failure, <paramref name="drawn"/>, is known.</summary>
    public double At(double damage, double drawn) =>
        !(damage > 0) ? 1 : scale is not { Sigma: > 0 } ? 1 - FailedBy(damage, drawn) : StandardNormal.Upper(scale.Standardised(1, damage));

    /// <summary>P(survives <paramref name="before"/> but not <paramref name="after"/> | all other factors); the difference is taken where it loses no digits.</summary>
    public double Fails(double before, double after, double drawn)
    {
        if (!(after > before))
        {
            return 0;
        }

        if (scale is not { Sigma: > 0 })
        {
            return FailedBy(after, drawn) - FailedBy(before, drawn);
        }

        double from = scale.Standardised(1, before);
        double to = scale.Standardised(1, after);
        return from < 0
            ? StandardNormal.Cumulative(to) - StandardNormal.Cumulative(from)
            : StandardNormal.Upper(from) - StandardNormal.Upper(to);
    }

    private double FailedBy(double damage, double drawn) =>
        !(damage > 0) ? 0 : scale is null ? (damage > drawn ? 1 : 0) : scale.FailureProbability(1, damage);
}
