using System.Collections.Immutable;

namespace AxleRisk.Core.Scenarios;

/// <summary>One stretch of a vehicle's use, past or future: what of the scenario is otherwise in it.</summary>
/// <param name="FromKm">Where it begins, km.</param>
/// <param name="ToKm">Where it ends, km; infinite for the last, which is open.</param>
/// <param name="Changes">What is otherwise than the scenario states, each input once; the changes of other stretches do not count
/// here.</param>
public sealed record Stretch(double FromKm, double ToKm, ImmutableArray<Change> Changes)
{
    /// <summary>Whether the dampers are renewed at its beginning: their wear counts from there.</summary>
    public bool RenewsDampers { get; init; }
}

/// <summary>A stretch as a scenario of its own, on the factors of the whole.</summary>
/// <param name="Place">Its place among the stretches as stated, from 1; of several that are alike the first.</param>
/// <param name="FromKm">Where it begins, km.</param>
/// <param name="ToKm">Where it ends, km; infinite for the last.</param>
/// <param name="Scenario">The scenario as it is in the stretch, without a history.</param>
public sealed record StretchScenario(int Place, double FromKm, double ToKm, Scenario Scenario)
{
    /// <summary>What a leg is called in it.</summary>
    internal string NameOf(string leg) => leg + Stretches.LabelOfPlace(Place);
}

/// <summary>Where in the vehicle's life a scenario holds, and what ageing there was before.</summary>
/// <param name="FromKm">Where it begins, km.</param>
/// <param name="ToKm">Where it ends, km.</param>
/// <param name="DamperWear">The wear of the dampers it has, in order; the last is in force.</param>
/// <param name="Corrosion">The axle's corrosion, likewise.</param>
/// <param name="OfSections">That of each further section; empty for one that has the axle's.</param>
internal sealed record StretchAge(
    double FromKm, double ToKm, ImmutableArray<AgeingPart> DamperWear, ImmutableArray<AgeingPart> Corrosion,
    ImmutableArray<ImmutableArray<AgeingPart>> OfSections)
{
    /// <summary>Whether nothing of it ages.</summary>
    public bool IsOfNothing => DamperWear.IsEmpty && Corrosion.IsEmpty && OfSections.All(s => s.IsEmpty);
}

/// <summary>A rate of ageing and the distance over which it holds.</summary>
/// <param name="Rate">The rate.</param>
/// <param name="FromKm">Where it begins, km.</param>
/// <param name="ToKm">Where it ends, km.</param>
internal sealed record AgeingPart(Input Rate, double FromKm, double ToKm)
{
    /// <summary>A rate that holds from the first km on.</summary>
    public static AgeingPart Always(Input rate) => new(rate, 0, double.PositiveInfinity);

    /// <summary>How much of it has been driven at an age, km.</summary>
    public double Driven(double ageKm) => Math.Clamp(ageKm, FromKm, ToKm) - FromKm;
}
