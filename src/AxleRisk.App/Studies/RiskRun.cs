using AxleRisk.Core.Analyses.Risk;

namespace AxleRisk.App.Studies;

/// <summary>The risk, and what its run leaves behind.</summary>
/// <param name="Result">The result.</param>
/// <param name="State">The state of the study, from which other distances can be answered.</param>
/// <param name="Curve">The same run at many distances, sampled alone, without rare-event answers; null where nothing is drawn.</param>
internal sealed record RiskRun(RiskResult Result, RiskState State, RiskResult? Curve = null);
