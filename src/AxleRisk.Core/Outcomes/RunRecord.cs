namespace AxleRisk.Core.Outcomes;

/// <summary>What must be known to repeat a run, and how much of it was done.</summary>
/// <param name="Evaluations">Evaluations of the damage model behind the result.</param>
/// <param name="Requested">Evaluations asked for.</param>
/// <param name="Seed">The seed.</param>
/// <param name="Sampling">The name of the sampling plan.</param>
/// <param name="ModelVersion">The version of the damage model.</param>
/// <param name="IsPartial">Whether the run was ended before its time; the result then rests on what was done.</param>
public sealed record RunRecord(long Evaluations, long Requested, ulong Seed, string Sampling, int ModelVersion, bool IsPartial);
