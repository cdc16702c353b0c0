using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace AxleRisk.App.Tests.Sections.Figures;

/// <summary>
/// Whether the figures of a sentence are numbers of a few objects: one for each two figures and one more, so that a sentence of
/// many figures cannot be put together from all that is known. Words beside a figure say of which property it can be.
/// </summary>
internal sealed class SentenceCover
{
    private static readonly (Regex Before, Regex After, Regex Property)[] Words =
    [
        Said("seed $", "", "^seed"),
        Said("", "^ evaluations", "evaluations"),
        Said("(asked for|allowed)$|^", "^ (asked for|allowed)", "evaluations|asked"),
        Said("model (version )?$", "", "^model_version"),
        Said("", "^ cases", "^cases"),
        Said("month $", "", "month"),
        Said("", "^ design points", "design_points"),
        Said("beta $", "", "beta"),
        Said("", "^ times the average", "^lift"),
        Said("B10 life; |\\(B10 life; [0-9,]+ to $", "", "lives_km"),
    ];

    private static readonly Regex Points = new(@"^( \([^)]*\)| to [-+\d.]+\)|\))? (percentage )?points");

    private readonly ImmutableArray<PrintedFigure> figures;
    private readonly string text;
    private readonly ImmutableArray<IReadOnlyDictionary<string, double>> objects;
    private readonly bool[][] covers;
    private readonly int most;

    public SentenceCover(string text, ImmutableArray<PrintedFigure> figures, ImmutableArray<IReadOnlyDictionary<string, double>> objects)
    {
        (this.text, this.figures, this.objects) = (text, figures, objects);
        most = 1 + (figures.Length / 2) + Regex.Count(text, "; or ");
        covers = [.. figures.Select(f => CoverOf(f, f))];
    }

    /// <summary>Whether the sentence holds with another figure in a place.</summary>
    public bool Explains(int place, PrintedFigure altered)
    {
        bool[][] all = [.. covers];
        all[place] = altered == figures[place] ? covers[place] : CoverOf(altered, figures[place]);
        bool[] isCovered = new bool[all.Length];
        for (int chosen = 0; chosen < most; chosen++)
        {
            int best = Enumerable.Range(0, objects.Length).MaxBy(o =>
                Enumerable.Range(0, all.Length).Count(f => !isCovered[f] && all[f][o]));
            for (int f = 0; f < all.Length; f++)
            {
                isCovered[f] |= all[f][best];
            }
        }

        return isCovered[place];
    }

    private bool[] CoverOf(PrintedFigure figure, PrintedFigure original)
    {
        string before = text[..original.At], after = text[(original.At + original.Text.Length)..];
        Regex? property = Words.Where(w => w.Before.IsMatch(before) && w.After.IsMatch(after)).Select(w => w.Property).FirstOrDefault();
        bool isPoints = Points.IsMatch(after);
        return [.. objects.Select(o => o.Any(n => (property is null || property.IsMatch(n.Key)) && figure.Prints(n.Value, isPoints)))];
    }

    private static (Regex, Regex, Regex) Said(string before, string after, string property) =>
        (new Regex(before), new Regex(after), new Regex(property));
}
