using AxleRisk.Core.Damage;
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
    private readonly RideLimits linear;
    private readonly RideLimits limits;
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
        details = model.DetailsOfFirstRow(workspace);
        (SnCurve mean, _) = model.FatigueOfFirstRow(workspace);
        curve = SnConstants.From(mean);
        stress = columns.StressPerForceMPaPerN[0] * mean.ThicknessFactor(columns.ThicknessMm[0]);
        ride = RideParameters.OfFirstRow(columns);

        // The scenario's own stop, under its load, unless another is asked for.
        bool isStated = columns.Layout.HasBumpStop && !double.IsFinite(question.BumpClearanceMm);
        double clearance = isStated ? columns.BumpClearanceM[0] : question.BumpClearanceMm * 1e-3;
        double stop = isStated ? columns.BumpStopNPerM[0] : question.BumpStopNPerMm * 1000;
        linear = new RideLimits { StaticTyreForceN = RideLimits.StaticTyreForce(ride), BumpClearanceM = clearance };
        limits = linear with
        {
            LiftsOff = question.LiftOff,
            BumpStopNPerM = double.IsFinite(clearance) ? stop : 0,
            BumpDamping = question.BumpDamping,
            ReboundDamping = question.ReboundDamping,
        };
    }

    public string Name { get; }

    public double LifeKm { get; }

    /// <summary>Whether the spectral model gives a finite damage, so that there is something to compare.</summary>
    public bool IsFinite => double.IsFinite(stress);

    public double StaticTyreForceN => linear.StaticTyreForceN;

    public bool IsDriven(int leg) => columns.Legs[leg].Share[0] > 0;

    public double Share(int leg) => columns.Legs[leg].Share[0];

    /// <summary>The spectral damage per km on a leg.</summary>
    public double FastPerKm(int leg) => details[leg].DamagePerKm;

    public double SpeedMPerS(int leg) => columns.Legs[leg].SpeedMPerS[0];

    /// <summary>Simulates a leg: the linear ride, and the ride with its limits where it has any.</summary>
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
        var stream = new RandomStream(new StreamKey(seed, $"confirm/{model.Scenario.Legs[leg].Name}/{(corrugated ? "corrugated" : "plain")}"));
        return limits.IsLinear
            ? simulation.Run([question], stream, periods, cancellation)
            : simulation.Run([question, question with { Limits = limits }], stream, periods, cancellation);
    }
}

/// <summary>A leg simulated off and on its corrugation: the linear ride first, then the ride with limits where there is one.</summary>
internal sealed record SimulatedLeg(SurfaceResult[] Plain, SurfaceResult[] Corrugated, double CorrugatedShare, double SpeedMPerS)
{
    /// <summary>Damage per km of a record.</summary>
    public double PerKm(bool limits, int record) =>
        Mean(limits, s => s.DamagePerSecond[record]) * 1000 / SpeedMPerS;

    /// <summary>A mean over the leg's time.</summary>
    public double Mean(bool limits, Func<SurfaceResult, double> of)
    {
        int ride = limits ? Plain.Length - 1 : 0;
        return (1 - CorrugatedShare) * of(Plain[ride]) + CorrugatedShare * of(Corrugated[ride]);
    }
}
