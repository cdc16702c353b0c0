using System.Globalization;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Toml;
using CsvHelper;

namespace AxleRisk.Files.Distributions;

/// <summary>Reads one column of measured values from a CSV file with a header.</summary>
/// <param name="file">The file's name for messages.</param>
/// <param name="anchor">Where the scenario refers to it.</param>
/// <param name="errors">Where errors go.</param>
internal sealed class SampleColumn(string file, Position anchor, ErrorLog errors)
{
    private const int MostErrors = 10;
    private const int LongestName = 40;

    // No thousands separators: "1,5" must not become 15.
    private const NumberStyles NoThousands = NumberStyles.Float;

    private static readonly CsvReaderOptions Options = CsvReaderOptions.Default with
    {
        TrackLineNumbers = true,
        FieldCountMismatch = CsvFieldCountHandling.Throw,
        MalformedData = CsvMalformedDataHandling.Throw,
        TrimWhitespace = true,
    };

    /// <summary>The values of a column, all in <paramref name="domain"/>; null where there are errors.</summary>
    public double[]? Read(byte[] bytes, string column, Domain domain)
    {
        if (Utf8Text.Decode(bytes, out Position invalidAt) is not string text)
        {
            Error(invalidAt.Line, "the text is not valid UTF-8");
            return null;
        }

        try
        {
            using CsvReader csv = CsvReader.FromText(text, Options);
            return Read(csv, column, domain);
        }
        catch (CsvFormatException e)
        {
            // Not its own words: they quote the file, and this may be no table at all.
            Error(
                (int)Math.Clamp(e.LineNumber, 1, int.MaxValue),
                "the line does not hold as many values as the first line names columns, or a quotation mark is not closed");
            return null;
        }
    }

    private double[]? Read(CsvReader csv, string column, Domain domain)
    {
        if (!csv.TryGetFieldIndex(column, out int index))
        {
            string[] names = [.. csv.Headers];
            Error(1, $"there is no column {MessageText.Quote(column)}{(IsTable(csv, names) ? NearestName.Hint(column, names) : " named in its first line")}");
            return null;
        }

        List<double> values = [];
        int wrong = 0;
        while (wrong < MostErrors && csv.Read())
        {
            string field = csv.GetString(index);
            if (double.TryParse(field, NoThousands, CultureInfo.InvariantCulture, out double value) && domain.Contains(value))
            {
                values.Add(value);
                continue;
            }

            if (wrong == 0 && values.Count == 0 && !HasNumber(csv))
            {
                // No word of it is told: this may be a file that nobody meant to show.
                Error((int)Math.Min(csv.LineNumber, int.MaxValue),
                    "there is no number in this line: a table has names in its first line and numbers below");
                return null;
            }

            wrong++;
            Error((int)Math.Min(csv.LineNumber, int.MaxValue), $"{column} must be {domain.Describe()}, not {MessageText.Quote(field)}");
        }

        if (wrong == 0 && values.Count == 0)
        {
            Error(1, $"there are no values in column {MessageText.Quote(column)}");
        }

        return wrong == 0 && values.Count > 0 ? [.. values] : null;
    }

    /// <summary>
    /// Whether a file looks like a table, so that its words may stand in a message: plain names, and a number in the line below
    /// them.
    /// </summary>
    private static bool IsTable(CsvReader csv, string[] names) =>
        names.All(n => n.Length <= LongestName && n.All(c => char.IsLetterOrDigit(c) || " _-.()/%".Contains(c))) && csv.Read()
            && HasNumber(csv);

    private static bool HasNumber(CsvReader csv) =>
        Enumerable.Range(0, csv.FieldCount)
            .Any(i => double.TryParse(csv.GetString(i), NoThousands, CultureInfo.InvariantCulture, out double _));

    private void Error(int line, string message) => errors.AddInDataFile(file, line, anchor, message);
}
