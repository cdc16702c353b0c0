using System.Collections.Immutable;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Damage.Rides;
using AxleRisk.Core.Damage.Spectra;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.BaseCase;

/// <summary>
/// Whether the spectral model's own numbers say that wheels leave the ground, in the base case: how often the tyre force of the linear ride
/// falls to nothing, <c>nu0 exp(-W^2 / (2 sigma^2))</c> a second (Rice 1944), W the static force, sigma the RMS about it.
/// </summary>
public static class LiftOffCheck
{
    /// <summary>
    /// A leg is named from this many times a km on: sigma is about 0.3 of W then, and lift-off changes the damage by less than
    /// 0.5 % (docs/model.md).
    /// </summary>
    public const double NamedPerKm = 5;

    /// <summary>Legs that bring less of the damage are not named.</summary>
    public const double LeastDamageShare = 0.05;

    /// <summary>The legs of the base case, in the scenario's order; of a history those of each stretch, their damage shares those of
    /// the stretch.</summary>
    public static ImmutableArray<LiftOffLeg> Run(LifeModel model) => Stretches.Of(model.Scenario) is { IsEmpty: false } stretches
        ? [.. stretches.SelectMany(s => Legs(new LifeModel(s.Scenario, model.Factors)).Select(l => l with { Name = s.NameOf(l.Name) }))]
        : Legs(model);

    private static ImmutableArray<LiftOffLeg> Legs(LifeModel model)
    {
        Workspace workspace = BaseCaseAnalysis.EvaluateNominal(model);
        DamageColumns columns = workspace.Damage;
        RideParameters ride = columns.RideOf(0);
        double weight = RideLimits.StaticTyreForce(ride);
        Span<double> spectrum = stackalloc double[FrequencyGrid.Points];

        // With no mass outboard the force through the section is the tyre's.
        ForceSpectrum.FillRide(ride with { OutboardShare = 0 }, spectrum);
        var legs = ImmutableArray.CreateBuilder<LiftOffLeg>();
        for (int leg = 0; leg < columns.Legs.Length; leg++)
        {
            LegLoads loads = LegLoads.Of(columns, leg, 0, spectrum);
            double perKm = 1000 / loads.SpeedMPerS
                * ((1 - loads.CorrugatedShare) * PerSecond(loads.Plain, weight) + loads.CorrugatedShare * PerSecond(loads.Corrugated,
                    weight));
            double share = workspace.DamageByLeg[leg][0] / workspace.DamagePerKm[0];
            legs.Add(new(model.Scenario.Legs[leg].Name, loads.Corrugated.Rms / weight, perKm, share));
        }

        return legs.ToImmutable();
    }

    private static double PerSecond(in SpectralMoments tyre, double weight) =>
        tyre.UpCrossingsPerSecond * Math.Exp(-0.5 * weight * weight / tyre.M0);
}

/// <summary>How near a leg comes to lift-off in the base case.</summary>
/// <param name="Name">The leg.</param>
/// <param name="TyreForceRatio">RMS of the tyre force about its static value over that, on the worse of its surfaces.</param>
/// <param name="PerKm">How often a km the tyre force falls to nothing, by Rice's formula.</param>
/// <param name="DamageShare">The leg's share of the damage.</param>
public sealed record LiftOffLeg(string Name, double TyreForceRatio, double PerKm, double DamageShare)
{
    /// <summary>Whether the leg should be looked at in time.</summary>
    public bool IsLikely => PerKm >= LiftOffCheck.NamedPerKm && DamageShare >= LiftOffCheck.LeastDamageShare;
}
