using System.Collections.Immutable;
using AxleRisk.Core.Distributions;

namespace AxleRisk.Core.Analyses.Fits;

/// <summary>What families say of measured values.</summary>
public sealed record FitResult
{
    /// <summary>The observations, each once with its count, in ascending order.</summary>
    public required ImmutableArray<Observation> Observations { get; init; }

    /// <summary>The number of values.</summary>
    public required double Count { get; init; }

    /// <summary>Whether every value is known.</summary>
    public required bool IsExact { get; init; }

    /// <summary>
    /// The fits, that of the least corrected AIC first, where 10 is added for fitted ends; those without one last.
    /// </summary>
    public required ImmutableArray<FamilyFit> Fits { get; init; }

    /// <summary>The predictive form of the best fit that two quantiles determine; null where there is none.</summary>
    public required Prediction? Predictive { get; init; }

    /// <summary>Values of each such sample: those of the data, or fewer where the p-value no longer depends on their number.</summary>
    public required int ReplicateSize { get; init; }

    /// <summary>The seed.</summary>
    public required ulong Seed { get; init; }
}

/// <summary>One family with the parameters of greatest likelihood.</summary>
/// <param name="Distribution">The distribution.</param>
/// <param name="Parameters">Its parameters as the scenario format names them.</param>
/// <param name="StandardErrors">Their standard errors by the observed information; NaN where the likelihood is not regular.</param>
/// <param name="LogLikelihood">ln likelihood; densities per unit of the quantity.</param>
/// <param name="CorrectedAic">
/// 2 k - 2 ln likelihood + 2 k (k + 1) / (n - k - 1) (Hurvich and Tsai 1989); NaN where there are too few values for k parameters.
/// </param>
/// <param name="Statistic">Anderson and Darling's; NaN where values are not known exactly, or lie on the fitted ends.</param>
/// <param name="PValue">The share of samples of the fit, fitted alike, with a greater one; NaN where there is none.</param>
public sealed record FamilyFit(
    Distribution Distribution, ImmutableArray<Parameter> Parameters, ImmutableArray<double> StandardErrors, double LogLikelihood,
    double CorrectedAic, double Statistic, double PValue)
{
    /// <summary>Samples drawn for the p-value.</summary>
    public int Replicates { get; init; }
}

/// <summary>A distribution of the next value, the parameters being known from the data alone.</summary>
/// <param name="Fit">The fit it belongs to.</param>
/// <param name="Low">The value that 5 % of the next values lie below.</param>
/// <param name="High">The value that 95 % lie below.</param>
/// <param name="Widening">How many times as far apart these are as those of the fit.</param>
/// <param name="IsBootstrap">Whether parameters are drawn by bootstrap, or from their asymptotic distribution.</param>
/// <param name="Draws">Parameters drawn.</param>
public sealed record Prediction(FamilyFit Fit, double Low, double High, double Widening, bool IsBootstrap, int Draws);
