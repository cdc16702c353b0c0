namespace AxleRisk.Files.Writing;

/// <summary>
/// A dimension with a tolerance on a drawing as a normal distribution, for a process of an assumed capability. The capability
/// index is the tolerance over six standard deviations, Cp = (U - L) / (6 sd), and Cpk the nearer limit's distance from the mean
/// over three (ISO 22514-2, for a normal process; from memory). That parts outside the limits are sorted out is an assumption,
/// and that the mean
/// is off toward the lower limit where Cpk is below Cp another, on the safe side for a wall.
/// </summary>
/// <param name="Nominal">The value on the drawing.</param>
/// <param name="Minus">How far below it is allowed, not below 0.</param>
/// <param name="Plus">How far above it is allowed, not below 0.</param>
/// <param name="Cp">The assumed capability, above 0.</param>
/// <param name="Cpk">The assumed capability of the nearer limit, above 0 and up to <paramref name="Cp"/>; null for a centred
/// process.</param>
/// <param name="Sorted">Whether parts outside the limits are sorted out.</param>
public sealed record Tolerance(double Nominal, double Minus, double Plus, double Cp, double? Cpk = null, bool Sorted = true)
{
    /// <summary>The capability that quality agreements of the trade ask for at least (common practice, no source).</summary>
    public const double UsualCp = 1.33;

    /// <summary>The standard deviation.</summary>
    public double StandardDeviation => (Plus + Minus) / (6 * Cp);

    /// <summary>The mean: the middle of the limits, lower by what Cpk is less than Cp.</summary>
    public double Mean => Nominal + ((Plus - Minus) / 2) - (3 * StandardDeviation * (Cp - (Cpk ?? Cp)));

    /// <summary>What is wrong with it; null where nothing is.</summary>
    public string? Problem =>
        !double.IsFinite(Nominal) ? "the nominal value must be a number"
        : !(Minus >= 0 && Plus >= 0 && Minus + Plus > 0 && double.IsFinite(Minus + Plus))
            ? "the tolerances must not be below 0, and not both 0"
        : !(Cp > 0 && double.IsFinite(Cp)) ? "Cp must be a number above 0"
        : Cpk is double k && !(k > 0 && k <= Cp) ? $"Cpk must be above 0 and up to Cp ({Cp:G6})"
        : null;

    /// <summary>The distribution as a value of a scenario file; its base case is the drawing's value.</summary>
    public TomlValue.Table ToValue(string knowledge = "varies") => TomlValue.TableOf(
    [
        ("distribution", TomlValue.Of("normal")),
        ("mean", TomlValue.Of(Rounded(Mean))),
        ("sd", TomlValue.Of(Rounded(StandardDeviation))),
        .. Sorted ? new (string, TomlValue)[]
            { ("min", TomlValue.Of(Rounded(Nominal - Minus))), ("max", TomlValue.Of(Rounded(Nominal + Plus))) } : [],
        ("nominal", TomlValue.Of(Nominal)),
        ("knowledge", TomlValue.Of(knowledge)),
    ]);

    // More figures than any process is known to.
    private static double Rounded(double x) => double.Parse(x.ToString("G6"));
}
