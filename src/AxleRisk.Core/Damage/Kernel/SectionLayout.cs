using System.Collections.Immutable;
using AxleRisk.Core.Damage.Fatigue;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>A further checked section, as the damage model knows it.</summary>
/// <param name="Curves">The mean S-N curves that its <see cref="SectionColumns.Category"/> points into.</param>
/// <param name="Corrodes">Whether its wall gets thinner with distance.</param>
internal sealed record SectionLayout(ImmutableArray<SnCurve> Curves, bool Corrodes);
