using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Analyses.Fleets;

/// <summary>How a search for the limiting value ended.</summary>
public enum SearchOutcome
{
    /// <summary>Some values meet the target and some do not: there is a limiting one.</summary>
    Found,

    /// <summary>No value of the range meets the target.</summary>
    NoneMeets,

    /// <summary>Every value of the range meets the target.</summary>
    EveryMeets,
}

/// <summary>The limiting value of one quantity.</summary>
/// <param name="Outcome">How the search ended.</param>
/// <param name="Value">The limiting value with its 95 % interval; without meaning unless found.</param>
/// <param name="Low">The lower end of the range searched.</param>
/// <param name="High">Its upper end.</param>
public sealed record SearchAnswer(SearchOutcome Outcome, Interval Value, double Low, double High);

/// <summary>The worst category that still meets a target.</summary>
/// <param name="Outcome">How the search ended.</param>
/// <param name="Category">The category; null where none meets the target.</param>
/// <param name="Probability">Its failure probability.</param>
/// <param name="Next">The next worse category, the best of all where none meets the target; null where every one does.</param>
/// <param name="NextProbability">Its failure probability.</param>
public sealed record CategoryAnswer(
    SearchOutcome Outcome, string? Category, Interval Probability, string? Next, Interval NextProbability)
{
    /// <summary>Whether the run tells both from the target: neither interval covers it.</summary>
    public bool IsClear(double target) => !Covers(Probability, target) && !Covers(NextProbability, target);

    private static bool Covers(Interval interval, double target) => interval.Low <= target && interval.High >= target;
}
