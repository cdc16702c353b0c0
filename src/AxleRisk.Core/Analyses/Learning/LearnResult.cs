using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Fits;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.Learning;

/// <summary>What is asked of the data.</summary>
/// <param name="DistancesKm">Distances of the failure probabilities, km, ascending; none for fractions and multiples of the required
/// distance.</param>
public sealed record LearnQuestion(ImmutableArray<double> DistancesKm)
{
    private static readonly double[] Shares = [0.1, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.7, 0.75, 0.8, 0.9, 1, 1.25, 1.5, 2];

    /// <summary>Whether what was learned is wanted as a shape that a scenario can carry.</summary>
    public bool Keeps { get; init; }

    /// <summary>The distances for a scenario: those asked for, or the usual ones; the required distance is among them.</summary>
    public double[] Of(Scenario scenario) =>
        [.. (DistancesKm.IsEmpty ? Shares.Select(s => s * scenario.RequiredKm)
            : DistancesKm).Append(scenario.RequiredKm).Distinct().Order()];
}

/// <summary>What the data teach.</summary>
public sealed record LearnResult
{
    /// <summary>The records of the field.</summary>
    public required FieldData Field { get; init; }

    /// <summary>The gauge runs.</summary>
    public required GaugeData Gauges { get; init; }

    /// <summary>What the field's records say without the model.</summary>
    public required DataOnly Data { get; init; }

    /// <summary>What is unknown, before and after; that of which the data say most first.</summary>
    public required ImmutableArray<LearnedFactor> Factors { get; init; }

    /// <summary>What the data could not tell apart, the closest first.</summary>
    public required ImmutableArray<Entanglement> Entangled { get; init; }

    /// <summary>The failure probability by distance, before and after.</summary>
    public required ImmutableArray<LearnedProbability> Curve { get; init; }

    /// <summary>ln of the marginal likelihood, densities per km, with its interval.</summary>
    public required Interval LogMarginalLikelihood { get; init; }

    /// <summary>Whether data and model agree.</summary>
    public required MisfitResult Misfit { get; init; }

    /// <summary>The effective sample size of the posterior.</summary>
    public required double EffectiveSampleSize { get; init; }

    /// <summary>Values of what is unknown that were weighed.</summary>
    public required int Rows { get; init; }

    /// <summary>Vehicles that the likelihood of each was averaged over.</summary>
    public required int Vehicles { get; init; }

    /// <summary>Pilots drawn to find where the data lie.</summary>
    public required int Pilots { get; init; }

    /// <summary>Whether lives are counted and spread by a tenth, and not known exactly given the damage.</summary>
    public required bool IsCounted { get; init; }

    /// <summary>The run.</summary>
    public required RunRecord Run { get; init; }

    /// <summary>What was learned as a shape that a scenario can carry; null where nobody asked for it.</summary>
    public LearnedShape? Shape { get; init; }

    /// <summary>Other scenarios against the same data, in the order they were named; none where there is one.</summary>
    public ImmutableArray<RivalScenario> Rivals { get; init; } = [];

    /// <summary>The sample behind it.</summary>
    internal PosteriorSample? Posterior { get; init; }
}

/// <summary>Another scenario against the same data.</summary>
/// <param name="File">Its file.</param>
/// <param name="LogMarginalLikelihood">ln of the marginal likelihood under it.</param>
/// <param name="BayesFactor">How many times as likely the data are under the first scenario as under this.</param>
/// <param name="IsMisfit">Whether it and the data disagree.</param>
public sealed record RivalScenario(string File, Interval LogMarginalLikelihood, Interval BayesFactor, bool IsMisfit);

/// <summary>What the field's records say without the model.</summary>
/// <param name="Steps">Survival by Kaplan and Meier, or Turnbull where intervals overlap; none where nothing has failed.</param>
/// <param name="Weibull">The Weibull of greatest likelihood; null where the records determine none.</param>
/// <param name="Lognormal">The lognormal; null likewise.</param>
/// <param name="OfWeibull">The Weibull's failure probability at the distances asked for, with likelihood-ratio bounds.</param>
/// <param name="OfLognormal">The lognormal's.</param>
public sealed record DataOnly(
    ImmutableArray<SurvivalStep> Steps, FamilyFit? Weibull, FamilyFit? Lognormal, ImmutableArray<Interval> OfWeibull,
    ImmutableArray<Interval> OfLognormal);

/// <summary>A failure probability before and after: the mean and the middle 95 % of what is unknown.</summary>
/// <param name="DistanceKm">The distance, km.</param>
/// <param name="Before">Before the data.</param>
/// <param name="After">With them.</param>
/// <param name="Error">The mean after with the 95 % interval of the sample.</param>
public sealed record LearnedProbability(double DistanceKm, Interval Before, Interval After, Interval Error);

/// <summary>Something unknown, before and after the data.</summary>
public sealed record LearnedFactor
{
    /// <summary>The name of its column.</summary>
    public required string Name { get; init; }

    /// <summary>The factor.</summary>
    public required Factor Factor { get; init; }

    /// <summary>Before the data; null for a choice.</summary>
    public required Moments? Prior { get; init; }

    /// <summary>With the data; null for a choice.</summary>
    public required Moments? Posterior { get; init; }

    /// <summary>The states of a choice with their probabilities before and after; none for others.</summary>
    public required ImmutableArray<(string State, double Prior, double Posterior)> States { get; init; }

    /// <summary>What the data say of it, in bits: the divergence of after from before, of a continuous one as of normal scores.</summary>
    public required double Bits { get; init; }
}

/// <summary>A distribution in brief, in the factor's unit.</summary>
/// <param name="Mean">The mean.</param>
/// <param name="StandardDeviation">The standard deviation.</param>
/// <param name="Low">The 5 % point.</param>
/// <param name="Median">The median.</param>
/// <param name="High">The 95 % point.</param>
public sealed record Moments(double Mean, double StandardDeviation, double Low, double Median, double High);

/// <summary>Two things that the data know together better than each by itself.</summary>
/// <param name="First">The name of one.</param>
/// <param name="Second">The name of the other.</param>
/// <param name="Strength">Their correlation after the data, in scores; of a choice the share of the other's variance that its states
/// explain.</param>
/// <param name="IsChoice">Whether the first is a choice.</param>
/// <param name="ByState">Of a choice: for each state its probability after, and the mean of the other with it.</param>
public sealed record Entanglement(
    string First, string Second, double Strength, bool IsChoice, ImmutableArray<(string State, double Probability, double Mean)> ByState);

/// <summary>Whether the records look like records of the model that has learned from them.</summary>
/// <param name="PValue">The posterior predictive p-value (Rubin 1984; Gelman, Meng and Stern 1996) of the counts of failures by
/// distance.</param>
/// <param name="ByDistance">Failures seen and expected between distances.</param>
/// <param name="ByGroup">The same by group, with a p-value each; none where no group is named.</param>
/// <param name="Draws">Values of what is unknown that it rests on.</param>
public sealed record MisfitResult(
    double PValue, ImmutableArray<MisfitCount> ByDistance, ImmutableArray<MisfitGroup> ByGroup, int Draws)
{
    /// <summary>A p-value below which data and model are said to disagree.</summary>
    public const double Bad = 0.05;

    /// <summary>Whether data and model disagree.</summary>
    public bool IsMisfit => PValue < Bad;

    /// <summary>Failures seen.</summary>
    public double Seen => ByDistance.Sum(d => d.Seen);

    /// <summary>Failures expected of vehicles that went as far.</summary>
    public double Expected => ByDistance.Sum(d => d.Expected);
}

/// <summary>Failures between two distances.</summary>
/// <param name="FromKm">The first, km.</param>
/// <param name="ToKm">The second, km.</param>
/// <param name="Seen">Those seen; parts of one where only an interval is known.</param>
/// <param name="Expected">Those expected of vehicles that went as far.</param>
public sealed record MisfitCount(double FromKm, double ToKm, double Seen, double Expected);

/// <summary>Failures of one group.</summary>
/// <param name="Name">The group.</param>
/// <param name="Vehicles">Its vehicles.</param>
/// <param name="Seen">Its failures.</param>
/// <param name="Expected">Those expected.</param>
/// <param name="PValue">How often chance alone is as far from what is expected.</param>
public sealed record MisfitGroup(string Name, double Vehicles, double Seen, double Expected, double PValue);
