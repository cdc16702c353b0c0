using System.Collections.Immutable;

namespace AxleRisk.Core.Scenarios;

/// <summary>What the field says: vehicles of the scenario's kind, and how far their axles got.</summary>
/// <param name="File">The file of the records, as the scenario names it; empty for none.</param>
/// <param name="Records">The records, in file order; equal ones are not joined.</param>
public sealed record FieldData(string File, ImmutableArray<FieldRecord> Records)
{
    /// <summary>SHA-256 of the file; empty for none.</summary>
    public string Digest { get; init; } = "";

    /// <summary>No records.</summary>
    public static FieldData None { get; } = new("", []);

    /// <summary>The most rows of a file.</summary>
    public const int MostRows = 200_000;

    /// <summary>The number of vehicles.</summary>
    public double Vehicles => Records.Sum(r => r.Vehicles);

    /// <summary>Those that have failed.</summary>
    public double Failures => Records.Where(r => r.HasFailed).Sum(r => r.Vehicles);
}

/// <summary>Some vehicles of which the same is known.</summary>
/// <param name="FromKm">The distance at which the axle was whole, km; 0 where that is not known.</param>
/// <param name="ToKm">The distance at which it had failed, km; infinite where it has not. The same as <paramref name="FromKm"/> where it
/// failed
/// just there.</param>
/// <param name="Vehicles">How many vehicles, above 0.</param>
/// <param name="Group">The design or region they belong to; empty for none.</param>
/// <param name="Measured">What was measured on each of them.</param>
/// <param name="Line">The line of the file.</param>
public sealed record FieldRecord(
    double FromKm, double ToKm, double Vehicles, string Group, ImmutableArray<FieldMeasurement> Measured, int Line)
{
    /// <summary>A look for the crack that was done on each of them, whole then; null where there was none.</summary>
    public CrackLook? Look { get; init; }

    /// <summary>Whether they have failed.</summary>
    public bool HasFailed => double.IsFinite(ToKm);

    /// <summary>Whether the distance of the failure is known.</summary>
    public bool IsExact => FromKm == ToKm;
}

/// <summary>A factor's value on a vehicle.</summary>
/// <param name="Factor">The factor's name.</param>
/// <param name="Value">The value, in its unit; of a choice that of the state.</param>
/// <param name="StandardDeviation">The standard deviation of the error of measurement; 0 where the value is known.</param>
public sealed record FieldMeasurement(string Factor, double Value, double StandardDeviation);

/// <summary>What gauges on test vehicles say.</summary>
/// <param name="File">The file of the runs, as the scenario names it; empty for none.</param>
/// <param name="Runs">The runs, in file order.</param>
public sealed record GaugeData(string File, ImmutableArray<GaugeRun> Runs)
{
    /// <summary>SHA-256 of the file; empty for none.</summary>
    public string Digest { get; init; } = "";

    /// <summary>No runs.</summary>
    public static GaugeData None { get; } = new("", []);
}

/// <summary>One run with gauges on the checked section.</summary>
/// <param name="Leg">The index of the leg of use that it was driven on, or whose class of road it was; inputs that are not stated are
/// that leg's.</param>
/// <param name="Stated">What was stated of it: inputs by name, such as the leg's speed or the payload; what is not stated and differs
/// between
/// vehicles is at its median.</param>
/// <param name="DamagePerKm">The damage per km from the gauge's record, with the scenario's S-N curve; null where that is not
/// stated.</param>
/// <param name="StressRmsMPa">The RMS of the stress in the section, MPa; null where that is not stated.</param>
/// <param name="StandardDeviationOfLn">The standard deviation of ln of the measured value: that of gauge and run.</param>
/// <param name="Line">The line of the file.</param>
public sealed record GaugeRun(
    int Leg, ImmutableArray<FieldMeasurement> Stated, double? DamagePerKm, double? StressRmsMPa,
    double StandardDeviationOfLn, int Line);
