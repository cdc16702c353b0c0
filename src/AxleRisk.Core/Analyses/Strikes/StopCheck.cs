using System.Collections.Immutable;
using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Damage.Rides;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Strikes;

/// <summary>
/// How often the suspension meets its bump stop in the base case, by Rice's formula (1944) for its travel, and what that adds to the
/// damage; without a stated stop, how much clearance it would take for strikes to be rare.
/// </summary>
public static class StopCheck
{
    /// <summary>Legs are named from this many strikes a km on.</summary>
    public const double NamedPerKm = 5;

    /// <summary>Strikes are told of from this share of the damage on, however often they come.</summary>
    public const double NamedShare = 0.05;

    /// <summary>Below this clearance, in standard deviations of the travel, the formula of the strikes is rough (docs/model.md).</summary>
    public const double RoughLevel = 0.6;

    /// <summary>The legs of the usual use, then those of the trip.</summary>
    public static StopResult Run(Scenario scenario)
    {
        var whole = new LifeModel(Trip.Whole(scenario));
        ImmutableArray<StopLeg> use = Use(scenario, whole.Factors);
        Scenario vehicle = VehicleOfTrip(whole.Scenario);
        IEnumerable<(int Leg, StopLeg Told)> trip = scenario.Trip is not { } planned ? []
            : TripLegScenario.Of(vehicle, Enumerable.Range(0, planned.Legs.Length)).SelectMany(s =>
                s.Legs.Zip(Legs(
                    new LifeModel(s.Scenario, whole.Factors), [.. s.Legs.Select(l => planned.Legs[l].Name)], isTrip: true)));
        return new StopResult(
            whole.Modes.Layout.HasBumpStop, use.Sum(l => l.DamageShare * l.StrikeShare),
            [.. use, .. trip.OrderBy(t => t.Leg).Select(t => t.Told)]);
    }

    // Of a history the legs of each stretch, their shares those of the damage up to the required distance.
    private static ImmutableArray<StopLeg> Use(Scenario scenario, FactorSet factors)
    {
        ImmutableArray<string> names = [.. scenario.Legs.Select(l => l.Name)];
        if (Stretches.Of(scenario) is not { IsEmpty: false } stretches)
        {
            return Legs(new LifeModel(scenario, factors), names, isTrip: false);
        }

        LifeModel[] models = [.. stretches.Select(s => new LifeModel(s.Scenario, factors))];
        double[] damage = [.. stretches.Zip(models, (s, m) =>
            Math.Max(0, Math.Min(s.ToKm, scenario.RequiredKm) - s.FromKm) * BaseCaseAnalysis.EvaluateNominal(m).DamagePerKm[0])];
        return
        [
            .. stretches.SelectMany((s, i) => Legs(models[i], [.. names.Select(s.NameOf)], isTrip: false)
                .Select(l => l with { DamageShare = l.DamageShare * damage[i] / damage.Sum() })),
        ];
    }

    private static Scenario VehicleOfTrip(Scenario whole)
    {
        double km = whole.Find(TripQuantities.AlreadyDriven)?.Value.Nominal ?? 0;
        return Stretches.VehiclesOf(whole).LastOrDefault(v => v.FromKm <= km)?.Scenario ?? whole;
    }

    private static ImmutableArray<StopLeg> Legs(LifeModel model, ImmutableArray<string> names, bool isTrip)
    {
        Workspace workspace = BaseCaseAnalysis.EvaluateNominal(model);
        (LegLoad Plain, LegLoad Corrugated, double Share)[] loads = ScalarFurther.LoadsOf(workspace.Damage, 0);
        LegDetail[] with = model.Axle.DetailsOfFirstRow(workspace.Damage, strikes: true);
        LegDetail[] without = model.Axle.DetailsOfFirstRow(workspace.Damage, strikes: false);
        double payload = (model.Scenario.Find(Quantities.Payload)?.Value.Nominal ?? 0)
            * (model.Scenario.Find(Quantities.PayloadShare)?.Value.Nominal ?? 0);
        return
        [
            .. loads.Select((load, leg) =>
            {
                (LegLoad plain, LegLoad corrugated, double share) = load;
                double added = 1 - (without[leg].DamagePerKm / with[leg].DamagePerKm);
                return new StopLeg(
                    names[leg], isTrip, ((1 - share) * PerKm(plain)) + (share * PerKm(corrugated)),
                    Math.Min(Level(plain), Level(corrugated)), double.IsFinite(added) ? added : 0,
                    workspace.DamageByLeg[leg][0] / workspace.DamagePerKm[0],
                    1000 * (payload * RideLimits.Gravity / plain.Ride.SpringNPerM + Math.Max(Needed(plain), Needed(corrugated))));
            }),
        ];
    }

    private static double Level(in LegLoad load) => load.Stop.ClearanceM / Math.Sqrt(load.Moments.Travel0);

    private static double PerKm(in LegLoad load) => Level(load) is var level
        ? CrossingsPerKm(load) * Math.Exp(-0.5 * level * level) : 0;

    // The compression that is crossed once a km.
    private static double Needed(in LegLoad load) =>
        Math.Sqrt(load.Moments.Travel0 * 2 * Math.Max(0, Math.Log(CrossingsPerKm(load))));

    private static double CrossingsPerKm(in LegLoad load) =>
        1000 / load.SpeedMPerS * Math.Sqrt(load.Moments.Travel2 / load.Moments.Travel0);
}

/// <summary>What the bump stop does in the base case.</summary>
/// <param name="IsStated">Whether the scenario states one.</param>
/// <param name="StrikeShare">The share of the damage of the usual use that strikes add.</param>
/// <param name="Legs">The legs of use, then those of the trip.</param>
public sealed record StopResult(bool IsStated, double StrikeShare, ImmutableArray<StopLeg> Legs);

/// <summary>How a leg meets the bump stop in the base case.</summary>
/// <param name="Name">The leg.</param>
/// <param name="IsTrip">Whether it is the trip's.</param>
/// <param name="PerKm">Strikes a km; 0 without a stop.</param>
/// <param name="Level">The clearance under load over the standard deviation of the travel, on the worse of its surfaces; infinite without
/// a stop.</param>
/// <param name="StrikeShare">The share of its damage that strikes add.</param>
/// <param name="DamageShare">Its share of the damage of the use.</param>
/// <param name="RareFromMm">The clearance of the empty vehicle with which a strike would come once a km, mm.</param>
public sealed record StopLeg(
    string Name, bool IsTrip, double PerKm, double Level, double StrikeShare, double DamageShare, double RareFromMm)
{
    /// <summary>Whether strikes are so many that they are named.</summary>
    public bool IsOften => PerKm >= StopCheck.NamedPerKm;

    /// <summary>Whether the formula of the strikes is rough here, and is not idle.</summary>
    public bool IsRough => Level < StopCheck.RoughLevel;
}
