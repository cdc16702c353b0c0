namespace AxleRisk.App.Studies;

/// <summary>The question of a study that asks nothing beyond its scenario.</summary>
internal readonly record struct NoQuestion;
