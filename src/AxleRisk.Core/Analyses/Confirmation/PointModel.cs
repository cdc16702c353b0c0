using System.Collections.Immutable;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Damage.Rides;
using AxleRisk.Core.Damage.TimeDomain;
using AxleRisk.Core.Randomness;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Confirmation;

/// <summary>A point ready to be simulated: its ride, its roads and what the spectral model says of it.</summary>
internal sealed class PointModel
{
    private readonly LifeModel model;
    private readonly DamageColumns columns;
    private readonly LegDetail[] details;
    private readonly RideParameters ride;
    private readonly LegDetail[] linearDetails;
    private readonly RideLimits linear;
    private readonly ImmutableArray<(RideStepKind Kind, RideLimits Limits)> steps;
    private readonly double stress;
    private readonly SnConstants curve;
    private readonly ulong seed;

    public PointModel(LifeModel model, ChosenPoint point, ConfirmationQuestion question)
    {
        this.model = model;
        Name = point.Name;
        seed = question.Seed;
        Workspace workspace = model.CreateWorkspace(1);
        double[][] values = model.CreateColumns(1);
        for (int i = 0; i < values.Length; i++)
        {
            values[i][0] = point.Values[i];
        }

        model.Evaluate(values, 1, workspace);
        LifeKm = workspace.LifeKm[0];
        columns = workspace.Damage;
        details = model.Axle.DetailsOfFirstRow(workspace.Damage, strikes: true);
        linearDetails = model.Axle.DetailsOfFirstRow(workspace.Damage, strikes: false);
        (SnCurve mean, _) = model.Axle.FatigueOfFirstRow(workspace.Damage);
        curve = mean.Constants;
        stress = columns.StressPerForceMPaPerN[0] * mean.ThicknessFactor(columns.ThicknessMm[0]);
        ride = columns.RideOf(0);

        // The scenario's own stop, under its load, unless another is asked for.
        bool isStated = columns.Layout.HasBumpStop && !double.IsFinite(question.BumpClearanceMm);
        double clearance = isStated ? columns.BumpClearanceM[0] : question.BumpClearanceMm * 1e-3;
        double stop = isStated ? columns.BumpStopNPerM[0] : question.BumpStopNPerMm * 1000;
        linear = new RideLimits { StaticTyreForceN = RideLimits.StaticTyreForce(ride), BumpClearanceM = clearance };
        RideLimits damped = linear with { BumpDamping = question.BumpDamping, ReboundDamping = question.ReboundDamping };
        RideLimits stopped = damped with { BumpStopNPerM = double.IsFinite(clearance) ? stop : 0 };
        RideLimits lifted = stopped with { LiftsOff = question.LiftOff };
        (RideStepKind, RideLimits, RideLimits Before)[] all =
            [(RideStepKind.TwoRateDamper, damped, linear), (RideStepKind.BumpStop, stopped, damped),
                (RideStepKind.LiftOff, lifted, stopped)];
        steps = [.. all.Where(s => s.Item2 != s.Before).Select(s => (s.Item1, s.Item2))];
    }

    /// <summary>What the simulation adds to the linear ride, one after the other.</summary>
    public ImmutableArray<RideStepKind> Steps => [.. steps.Select(s => s.Kind)];

    public string Name { get; }

    public double LifeKm { get; }

    /// <summary>Whether the spectral model gives a finite damage, so that there is something to compare.</summary>
    public bool IsFinite => double.IsFinite(stress);

    public double StaticTyreForceN => linear.StaticTyreForceN;

    public double Share(int leg) => columns.Legs[leg].Share[0];

    /// <summary>The spectral damage per km on a leg.</summary>
    public double FastPerKm(int leg) => details[leg].DamagePerKm;

    /// <summary>The same of the linear ride alone, where a bump stop is among the scenario's inputs.</summary>
    public double LinearPerKm(int leg) => linearDetails[leg].DamagePerKm;

    public double SpeedMPerS(int leg) => columns.Legs[leg].SpeedMPerS[0];

    /// <summary>Simulates a leg: the linear ride, and the ride after each step.</summary>
    /// <exception cref="OperationCanceledException">The run was ended inside a record.</exception>
    public SimulatedLeg Simulate(int leg, double km, SurfaceSimulation simulation, CancellationToken cancellation)
    {
        LegColumns l = columns.Legs[leg];
        int periods = (int)Math.Ceiling(1000 * km / l.SpeedMPerS[0] / RecordGrid.Seconds);
        double share = l.CorrugatedShare[0];
        SurfaceResult[] plain = Surface(leg, false, periods, simulation, cancellation);
        return new(plain, share > 0 ? Surface(leg, true, periods, simulation, cancellation) : plain, share, l.SpeedMPerS[0]);
    }

    private SurfaceResult[] Surface(int leg, bool corrugated, int periods, SurfaceSimulation simulation, CancellationToken cancellation)
    {
        LegColumns l = columns.Legs[leg];
        var road = new double[RecordGrid.Bins];
        (double speed, double contact, double roughness, double waviness) =
            (l.SpeedMPerS[0], columns.ContactLengthM[0], l.RoughnessM3[0], columns.Waviness[0]);
        if (corrugated)
        {
            RoadAmplitudes.FillCorrugated(
                speed, contact, roughness, waviness, l.CorrugationWavelengthM[0], l.CorrugationRmsM[0], road);
        }
        else
        {
            RoadAmplitudes.Fill(speed, contact, roughness, waviness, road);
        }

        var question = new SurfaceQuestion(ride, linear, road, stress, curve);
        var stream = new RandomStream(new StreamKey(seed,
            $"confirm/{model.Scenario.Legs[leg].Name}/{(corrugated ? "corrugated" : "plain")}"));
        return simulation.Run([question, .. steps.Select(s => question with { Limits = s.Limits })], stream, periods, cancellation);
    }
}

/// <summary>A leg simulated off and on its corrugation: the linear ride first, then the ride after each step.</summary>
internal sealed record SimulatedLeg(SurfaceResult[] Plain, SurfaceResult[] Corrugated, double CorrugatedShare, double SpeedMPerS)
{
    /// <summary>The number of rides.</summary>
    public int Rides => Plain.Length;

    /// <summary>Damage per km of a record, by ride.</summary>
    public double PerKm(int ride, int record) =>
        Mean(ride, s => s.DamagePerSecond[record]) * 1000 / SpeedMPerS;

    /// <summary>A mean over the leg's time.</summary>
    public double Mean(int ride, Func<SurfaceResult, double> of) =>
        (1 - CorrugatedShare) * of(Plain[ride]) + CorrugatedShare * of(Corrugated[ride]);
}
