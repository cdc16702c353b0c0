using System.Collections.Immutable;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>What of the damage model a scenario asks for.</summary>
/// <param name="Legs">The number of legs.</param>
internal sealed record DamageLayout(int Legs)
{
    /// <summary>Whether the suspension can strike a bump stop.</summary>
    public bool HasBumpStop { get; init; }

    /// <summary>Whether the wall of the first checked section gets thinner with distance.</summary>
    public bool Corrodes { get; init; }

    /// <summary>The checked sections beside the first.</summary>
    public ImmutableArray<SectionLayout> Sections { get; init; } = [];

    /// <summary>Whether true over computed damage of the further sections is told by leg.</summary>
    public bool HasRatios { get; init; }

    /// <summary>Makes the columns of each mode of failure beside fatigue of the sections, for a number of rows.</summary>
    public ImmutableArray<Func<int, ModeColumns>> Modes { get; init; } = [];

    /// <summary>The number of further rates of failure: those of the further sections, then those of the modes.</summary>
    public int Further => Sections.Length + Modes.Length;

    /// <summary>Whether there is more than the plain fatigue of the linear ride.</summary>
    public bool HasMore => HasBumpStop || Modes.Length > 0;
}
