using System.Text.RegularExpressions;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Tests.Sections.Figures;

/// <summary>Figures that are part of explanatory words, and no result: each with the reason why it is in no JSON.</summary>
internal static class ConstantWords
{
    private static readonly (string Pattern, string By, string Why)[] All =
    [
        (@"\b1 (axle|vehicle) in\b", "one $1 in", "the 1 of one in so many"),
        (@"\babout 1 in\b", "about one in", "the 1 of one in so many"),
        (@"\b95 % (interval|band)", "$1", "the confidence of all intervals"),
        (@"[Ii]ntervals are 95 %|all intervals are 95 %|with a probability of 95 %|times \(95 % interval\)|% \(95 % intervals\)", "", "the confidence of all intervals"),
        (@"\b(with|probability of) 90 %", "$1", "the confidence that a warranty is asked for with"),
        (@"(?<![\d.])(5|50|95) %( point|$)", "", "the points that a table heads its columns with"),
        (@"(5 %, 50 %|at \+10 %|steps of 10 %)", "", "points and steps of a method, in words"),
        (@"\b(Table|Figure) [0-9]+\.", "", "the number of a table or a figure"),
        (@"\bB[0-9]+ life", "", "the name of a life"),
        (@"per 1,000 km", "", "a unit"),
        (@"ISO 8608(:2016)?|DNV-RP-C203|EN 1993-1-9|\(Dirlik 1985|SHA-256", "", "the name of a standard or a source"),
        (@"axlerisk 0\.1\.0", "axlerisk", "the version, which the JSON has as a text"),
        (@"each below 0\.005", "", "the least index that is shown"),
        (@"The first 16 of", "", "as many rows as a chart draws"),
        (@"1\.28 is 10 %, 2\.33 is 1 %, 3\.09 is 0\.1 %", "", "points of the normal distribution, which explain beta"),
        (@"knee at [0-9.]+ MPa", "", "the knee of a published S-N curve; the JSON has its name"),
        (@"lie about [0-9]+ design points", "lie about design points", "those that were used; the JSON lists all that were found"),
        (@"the 8 factors that are strongest", "the factors that are strongest", "a setting of the method"),
        (@"all shares sum to 100 %", "", "what shares are"),
        (@"adverse fifths?", "", "a word"),
    ];

    /// <summary>A text without them.</summary>
    public static string Without(string text)
    {
        foreach (string source in Quantities.All.Concat(TripQuantities.All).Select(q => q.DefaultSource).OfType<string>()
            .Where(s => s.Any(char.IsAsciiDigit)))
        {
            text = text.Replace(source, "", StringComparison.Ordinal);
        }

        return All.Aggregate(text, (t, c) => Regex.Replace(t, c.Pattern, c.By));
    }
}
