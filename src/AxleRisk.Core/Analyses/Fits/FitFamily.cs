using System.Collections.Immutable;
using AxleRisk.Core.Distributions;

namespace AxleRisk.Core.Analyses.Fits;

/// <summary>A family that can be fitted, under its name and its parameters' names in a scenario file.</summary>
/// <param name="Name">The family.</param>
/// <param name="Parameters">The parameters that are fitted.</param>
/// <param name="FormFor">What is fitted to some data; null where the family does not allow their range.</param>
internal sealed record FitFamily(string Name, ImmutableArray<string> Parameters, Func<FitData, FitForm?> FormFor)
{
    /// <summary>
    /// Whether its ends are fitted too: it is then fitted to known values alone, and its likelihood is not regular, so that there
    /// are no standard errors.
    /// </summary>
    public bool HasEnds { get; init; }
}

/// <summary>A family over some data, with free parameters that may have any value.</summary>
/// <param name="Start">Where the search begins: the free parameters.</param>
/// <param name="Natural">From the free parameters to those of the family, in the order of its names.</param>
/// <param name="Make">From those to the distribution.</param>
internal sealed record FitForm(
    ImmutableArray<double> Start, Func<IReadOnlyList<double>, double[]> Natural, Func<double[], Distribution> Make)
{
    /// <summary>The inverse of <see cref="Natural"/>; null for families with ends.</summary>
    public Func<double[], double[]>? Free { get; init; }

    /// <summary>Whether the start is the greatest likelihood, by a closed form.</summary>
    public bool IsSolved { get; init; }
}
