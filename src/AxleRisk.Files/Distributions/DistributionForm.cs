using System.Collections.Immutable;
using AxleRisk.Core.Distributions;

namespace AxleRisk.Files.Distributions;

/// <summary>One way to state a distribution of a family: a set of parameters and what makes the distribution of them.</summary>
/// <param name="Family">The family's name in a scenario file.</param>
/// <param name="Required">The parameters that must be stated.</param>
/// <param name="Optional">The parameters that may be stated.</param>
/// <param name="Make">Makes the distribution; throws a <see cref="DistributionException"/> for parameters that make none.</param>
internal sealed record DistributionForm(
    string Family, ImmutableArray<string> Required, ImmutableArray<string> Optional, Func<Arguments, Distribution> Make)
{
    /// <summary>Whether exactly these parameters are a statement in this form.</summary>
    public bool Fits(IReadOnlyCollection<string> stated) =>
        Required.All(stated.Contains) && stated.All(s => Required.Contains(s) || Optional.Contains(s));
}

/// <summary>The stated parameters of a distribution by name.</summary>
internal sealed class Arguments(IReadOnlyDictionary<string, double> numbers)
{
    public double this[string name] => numbers[name];

    public double Or(string name, double otherwise) => numbers.GetValueOrDefault(name, otherwise);
}
