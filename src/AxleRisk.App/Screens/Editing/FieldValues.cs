using System.Globalization;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Editing;

/// <summary>The texts of fields to values of a scenario file and back.</summary>
internal static class FieldValues
{
    private static readonly char[] Between = [',', ' ', ';', '\t'];

    /// <summary>The value of a field; null with the reason where its text is none.</summary>
    public static TomlValue? Parse(string name, string text, out string reason)
    {
        reason = "";
        text = text.Trim();
        switch (name)
        {
            case "knowledge" or "file" or "column":
                return TomlValue.Of(text);
            case "values" or "weights":
                TomlValue?[] items = [.. text.Split(Between, StringSplitOptions.RemoveEmptyEntries).Select(Number)];
                reason = items.Length == 0 || items.Contains(null) ? "numbers with blanks or commas between, such as 5.2, 6.0" : "";
                return reason.Length == 0 ? TomlValue.ListOf(items.OfType<TomlValue>()) : null;
            default:
                TomlValue? number = Number(text);
                reason = number is null ? "a number with a decimal point, such as 6.5" : "";
                return number;
        }
    }

    /// <summary>A value as a field shows it.</summary>
    public static string Show(TomlValue value) => value switch
    {
        TomlValue.Text text => text.Value,
        TomlValue.List list => string.Join(", ", list.Items.Select(Show)),
        TomlValue.Number number => number.Literal ?? FieldBook.Show(number.Value),
        _ => value.Write(),
    };

    private static TomlValue.Number? Number(string text) =>
        double.TryParse(text.Replace("_", ""), NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value)
            ? new TomlValue.Number(value, text)
            : null;
}
