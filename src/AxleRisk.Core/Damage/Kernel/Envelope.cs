namespace AxleRisk.Core.Damage;

/// <summary>
/// Where in an <see cref="EnvelopingTable"/> the gains of a shift lie: at the grid's point i it is
/// <c>Values[i] + Fraction Slopes[i]</c>.
/// </summary>
/// <param name="values">The first value.</param>
/// <param name="slopes">The first slope.</param>
/// <param name="fraction">How far between two phases.</param>
internal readonly ref struct Envelope(ref float values, ref float slopes, float fraction)
{
    public readonly ref float Values = ref values;

    public readonly ref float Slopes = ref slopes;

    public readonly float Fraction = fraction;
}
