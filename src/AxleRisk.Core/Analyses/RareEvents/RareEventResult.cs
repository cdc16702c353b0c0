using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;

namespace AxleRisk.Core.Analyses.RareEvents;

/// <summary>The probability of failing before one distance, where that is rare.</summary>
public sealed record RareEventResult
{
    /// <summary>The distance, km.</summary>
    public required double DistanceKm { get; init; }

    /// <summary>
    /// P(life &lt; distance) with its 95 % interval. Where no failure was found the estimate is 0 and the upper end is the
    /// probability down to which was looked (<see cref="FailureFound"/>).
    /// </summary>
    public required Interval Probability { get; init; }

    /// <summary>The coefficient of variation of the probability; NaN where no failure was found.</summary>
    public required double Cov { get; init; }

    /// <summary>Whether any failure was found.</summary>
    public required bool FailureFound { get; init; }

    /// <summary>The method in words.</summary>
    public required string Method { get; init; }

    /// <summary>Why the method fits, or what the answer means, in a sentence.</summary>
    public required string MethodReason { get; init; }

    /// <summary>Why the answer cannot be relied on; null where it can.</summary>
    public required string? Doubt { get; init; }

    /// <summary>
    /// The states of the discrete factors, the greatest part of the failures first; one state of probability 1 where there are no
    /// such factors.
    /// </summary>
    public required ImmutableArray<RareEventState> States { get; init; }

    /// <summary>The effective sample size of the weights.</summary>
    public required double EffectiveSize { get; init; }

    /// <summary>The share of the probability that the largest weight alone brings.</summary>
    public required double LargestShare { get; init; }

    /// <summary>Evaluations spent on design points.</summary>
    public required long SearchEvaluations { get; init; }

    /// <summary>Evaluations spent on importance sampling.</summary>
    public required long SamplingEvaluations { get; init; }

    /// <summary>The cross-check; null where none was asked for.</summary>
    public required RareEventEstimate? CrossCheck { get; init; }

    /// <summary>The run behind the probability, without the cross-check.</summary>
    public required RunRecord Run { get; init; }

    /// <summary>The reliability index beta = -Phi^-1(P) with its interval; infinite ends where the probability's are 0.</summary>
    public Interval Beta => new(
        -StandardNormal.Quantile(Probability.Estimate), -StandardNormal.Quantile(Probability.High),
            -StandardNormal.Quantile(Probability.Low));

    /// <summary>
    /// How many standard errors of both together the cross-check lies from the probability, on the logarithm's scale; NaN without
    /// one.
    /// </summary>
    public double CrossCheckDistance => CrossCheck is { } check
        ? Math.Abs(Math.Log(check.Probability.Estimate / Probability.Estimate)) / Math.Sqrt((check.Cov * check.Cov) + (Cov * Cov))
        : double.NaN;
}

/// <summary>A failure probability by one method.</summary>
/// <param name="Method">The method in words.</param>
/// <param name="Probability">The probability with its 95 % interval.</param>
/// <param name="Cov">The coefficient of variation; NaN where no failure was found.</param>
/// <param name="Evaluations">Evaluations of the damage model spent.</param>
public sealed record RareEventEstimate(string Method, Interval Probability, double Cov, long Evaluations);

/// <summary>One state of the discrete factors.</summary>
/// <param name="Name">The state (<c>detail.category E</c>); empty where there are no discrete factors.</param>
/// <param name="Label">The state in plain words (<c>weld category E</c>).</param>
/// <param name="Probability">The probability of the state.</param>
/// <param name="FailureProbability">P(fail | state).</param>
/// <param name="DesignPoints">Its design points, the nearest first.</param>
public sealed record RareEventState(
    string Name, string Label, double Probability, double FailureProbability, ImmutableArray<DesignPointReport> DesignPoints);

/// <summary>The likeliest way to fail: a design point in the factors' own units.</summary>
/// <param name="Beta">Its distance from the medians in standard normals, the first-order reliability index.</param>
/// <param name="Coordinates">The factors, the most important first.</param>
/// <param name="IsApproximate">Whether the search did not converge there, and the point is only a failing one near the closest.</param>
public sealed record DesignPointReport(double Beta, ImmutableArray<DesignCoordinate> Coordinates, bool IsApproximate);

/// <summary>One column of the sample at a design point.</summary>
/// <param name="Name">The factor's name, or the leg's share of an uncertain road mix.</param>
/// <param name="Label">The same in plain words.</param>
/// <param name="Unit">Its unit as printed; empty for a pure number.</param>
/// <param name="Value">Its value at the design point.</param>
/// <param name="Cosine">
/// The direction cosine of its standard normal, positive where larger values bring failure nearer; the squares sum to 1.
/// For factors with a rank correlation it belongs to what the factor adds to those before it.
/// </param>
public sealed record DesignCoordinate(string Name, string Label, string Unit, double Value, double Cosine);
