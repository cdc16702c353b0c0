using AxleRisk.Core.Modes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Fleets;

/// <summary>
/// Vehicles of which ln life is normal about a centre each: fatigue alone, with what the Miner sum and the S-N scatter leave to chance.
/// Where their part of chance is not known exactly their lives are as drawn, and certain.
/// </summary>
internal sealed class LognormalVehicles : FleetVehicles
{
    private readonly LifeModel? model;
    private readonly double[][] lnCentre;
    private readonly double sigma;

    /// <summary>Room for vehicles of a scenario.</summary>
    public LognormalVehicles(LifeModel model, double[][] lnCentre)
        : this(lnCentre, model.Scale.IsLognormal ? Held(model, _ => 1).Sigma : 0) => this.model = model;

    /// <summary>Given vehicles.</summary>
    /// <param name="lnCentre">The median of ln life (km) by outer draw and vehicle.</param>
    /// <param name="sigma">The standard deviation of ln life given the vehicle; 0 where its life is certain.</param>
    public LognormalVehicles(double[][] lnCentre, double sigma) => (this.lnCentre, this.sigma) = (lnCentre, sigma);

    /// <inheritdoc/>
    public override Reader CreateReader() => (draw, first, lnKm, failed) =>
    {
        ReadOnlySpan<double> centre = lnCentre[draw].AsSpan(first, lnKm.Length);
        for (int i = 0; i < lnKm.Length; i++)
        {
            failed[i] = sigma > 0 ? StandardNormal.Cumulative((lnKm[i] - centre[i]) / sigma) : centre[i] < lnKm[i] ? 1 : 0;
        }
    };

    /// <inheritdoc/>
    public override void Keep(int draw, int first, int count, Workspace space, double[][] values)
    {
        Span<double> centre = lnCentre[draw].AsSpan(first, count);
        if (!model!.Scale.IsLognormal)
        {
            for (int row = 0; row < count; row++)
            {
                centre[row] = model.Modes.IsPlain
                    ? Math.Log(space.Scale[row]) - Math.Log(space.DamagePerKm[row])
                    : Math.Log(space.LifeKm[row]); // of the mode that is first
            }

            return;
        }

        // What the fleet shares has one value in the block.
        double mu = Held(model, f => values[f.FirstColumn][0]).Mu;
        for (int row = 0; row < count; row++)
        {
            centre[row] = mu - Math.Log(space.DamagePerKm[row]);
        }
    }

    /// <inheritdoc/>
    public override double[] NumbersOf(int draw, int first, int count) => lnCentre[draw].AsSpan(first, count).ToArray();

    /// <inheritdoc/>
    public override void Put(int draw, int first, int count, ReadOnlySpan<double> numbers) =>
        numbers.CopyTo(lnCentre[draw].AsSpan(first, count));

    private static LifeScale Held(LifeModel model, Func<Factor, double> value) =>
        model.Factors.Factors.Where(f => NestedPlan.IsShared(f) && LifeScale.Contains(f))
            .Aggregate(model.Scale, (scale, f) => scale.Hold(f, value(f)));
}
