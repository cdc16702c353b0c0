namespace AxleRisk.Core.Scenarios;

/// <summary>
/// One scalar a scenario can state: the single description that the file reader, the tables, the console and the
/// assembly of model columns all go by. The instances are in <see cref="Quantities"/>.
/// </summary>
/// <param name="Section">The table of the scenario file it stands in: <c>vehicle</c>, <c>axle</c>, <c>use</c>, <c>use.legs</c>
/// (one value a leg) or <c>fatigue</c>.</param>
/// <param name="Key">Its key there; ends in the unit.</param>
/// <param name="Label">Its name in plain words, without the unit; unique among all.</param>
/// <param name="Unit">The trade's unit as printed; empty for a pure number.</param>
/// <param name="Domain">The values that make sense.</param>
/// <param name="Meaning">What it is, in one sentence for the user.</param>
/// <param name="Default">What holds where the scenario does not state it; null where it must be stated.</param>
/// <param name="DefaultSource">Where the default comes from; null where there is no default.</param>
public sealed record Quantity(
    string Section, string Key, string Label, string Unit, Domain Domain, string Meaning, Value? Default = null,
    string? DefaultSource = null)
{
    /// <summary>
    /// What holds where a quantity without default is not stated, such as <c>no bump stop</c>; null where it must be stated.
    /// </summary>
    public string? Without { get; init; }

    /// <summary>The key, in the same section, without which this one has no meaning; null where there is none.</summary>
    public string? Needs { get; init; }

    /// <summary>The form of its label where it is that of a leg, such as <c>roughness of {0}</c>.</summary>
    public string LabelOfLeg { get; init; } = Label + " on {0}";

    /// <summary>Its label for one leg: <c>speed on gravel</c>.</summary>
    public string LabelOn(string leg) => string.Format(LabelOfLeg, leg);

    /// <summary>Whether each leg of use has its own value.</summary>
    public bool IsPerLeg => Section == Quantities.LegSection;
}

/// <summary>An interval of values that make sense for a quantity.</summary>
/// <param name="Low">The lower end.</param>
/// <param name="High">The upper end.</param>
/// <param name="LowIncluded">Whether the lower end itself is allowed.</param>
/// <param name="HighIncluded">Whether the upper end itself is allowed.</param>
public readonly record struct Domain(double Low, double High, bool LowIncluded, bool HighIncluded = true)
{
    /// <summary>Numbers above zero.</summary>
    public static Domain Positive { get; } = new(0, double.PositiveInfinity, false);

    /// <summary>Numbers from zero up.</summary>
    public static Domain NonNegative { get; } = new(0, double.PositiveInfinity, true);

    /// <summary>Numbers from 0 to 1.</summary>
    public static Domain Fraction { get; } = new(0, 1, true);

    /// <summary>Numbers between 0 and 1, neither included.</summary>
    public static Domain OpenFraction { get; } = new(0, 1, LowIncluded: false, HighIncluded: false);

    /// <summary>All finite numbers.</summary>
    public static Domain Any { get; } = new(double.NegativeInfinity, double.PositiveInfinity, false);

    /// <summary>Whether <paramref name="x"/> is finite and inside; false for NaN.</summary>
    public bool Contains(double x) =>
        double.IsFinite(x) && (LowIncluded ? x >= Low : x > Low) && (HighIncluded ? x <= High : x < High);

    /// <summary>What would be right, for an error message: <c>a number above 0</c>.</summary>
    public string Describe() => (double.IsInfinity(Low), double.IsInfinity(High)) switch
    {
        (true, true) => "a finite number",
        (false, true) => LowIncluded ? $"a number not below {Low:G6}" : $"a number above {Low:G6}",
        (true, false) => $"a number up to {High:G6}",
        _ when LowIncluded && HighIncluded => $"a number from {Low:G6} to {High:G6}",
        _ => $"a number {(LowIncluded ? "not below" : "above")} {Low:G6} and {(HighIncluded ? "up to" : "below")} {High:G6}",
    };
}
