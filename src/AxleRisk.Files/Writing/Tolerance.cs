using System.Globalization;
using System.Text.RegularExpressions;

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
public sealed partial record Tolerance(double Nominal, double Minus, double Plus, double Cp, double? Cpk = null, bool Sorted = true)
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

    /// <summary>
    /// What the distribution does not tell, for the note of the value: <c>tolerance 7 +0.2 -0.2, Cp 1.33 assumed, parts outside
    /// sorted out</c>.
    /// </summary>
    public string ToNote() => string.Create(CultureInfo.InvariantCulture,
        $"tolerance {Nominal:0.#####} +{Plus:0.#####} -{Minus:0.#####}, Cp {Cp:0.#####}{(Cpk is { } k ? $" Cpk {k:0.#####}" : "")} assumed, parts outside {(Sorted ? "sorted out" : "delivered too")}");

    /// <summary>The tolerance that a note tells; null where it tells none.</summary>
    public static Tolerance? OfNote(string note)
    {
        if (NoteForm().Match(note) is not { Success: true } match)
        {
            return null;
        }

        double Of(string group) => double.Parse(match.Groups[group].ValueSpan, NumberStyles.Float, CultureInfo.InvariantCulture);
        return new Tolerance(Of("nominal"), Of("minus"), Of("plus"), Of("cp"), match.Groups["cpk"].Success ? Of("cpk") : null,
            match.Groups["fate"].Value == "sorted out");
    }

    /// <summary>A note with this tolerance in the place of the one it tells, or behind what it says.</summary>
    public string Into(string note) => NoteForm().IsMatch(note) ? NoteForm().Replace(note, ToNote().Replace("$", "$$"), 1)
        : note.Length > 0 ? $"{note}; {ToNote()}" : ToNote();

    /// <summary>
    /// The distribution as a value of a scenario file; its base case is the drawing's value. A key whose default says the same is
    /// left out.
    /// </summary>
    /// <param name="knowledge">Why it is uncertain.</param>
    /// <param name="before">What stands there: its keys stay, and its numbers where these are the same to four figures.</param>
    public TomlValue.Table ToValue(string knowledge = "varies", TomlValue.Table? before = null)
    {
        TomlValue Number(string key, double number, int figures) => before?[key] is TomlValue.Number was
            && Math.Abs(was.Value - number) <= 5e-5 * Math.Abs(number) ? was : TomlValue.Of(Rounded(number, figures));
        return TomlValue.TableOf(
        [
            ("distribution", TomlValue.Of("normal")),
            ("mean", Number("mean", Mean, 6)),
            ("sd", Number("sd", StandardDeviation, 4)),
            .. Sorted
                ? new (string, TomlValue)[] { ("min", Number("min", Nominal - Minus, 6)), ("max", Number("max", Nominal + Plus, 6)) } : [],
            .. before?["nominal"] is not null || Rounded(Mean, 6) != Nominal
                ? new (string, TomlValue)[] { ("nominal", Number("nominal", Nominal, 6)) } : [],
            .. before?["knowledge"] is not null || knowledge != "varies"
                ? new (string, TomlValue)[] { ("knowledge", TomlValue.Of(knowledge)) } : [],
        ]);
    }

    // More figures than any process is known to.
    private static double Rounded(double x, int figures) =>
        double.Parse(x.ToString($"G{figures}", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    [GeneratedRegex(@"tolerance (?<nominal>[-\d.]+) \+(?<plus>[\d.]+) -(?<minus>[\d.]+), Cp (?<cp>[\d.]+)( Cpk (?<cpk>[\d.]+))? assumed, parts outside (?<fate>sorted out|delivered too)")]
    private static partial Regex NoteForm();
}
