using System.Collections.Immutable;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Tests.Sections.Figures;

/// <summary>
/// Reads the sections of a report's page against JSON documents. Of a table, one property of the JSON has to explain a column, row
/// by row; the figures of a sentence have to be numbers of a few objects, which it names or which stand alone in their document.
/// </summary>
internal sealed partial class FigureCheck
{
    /// <summary>The headings of what the file states.</summary>
    private static readonly string[] Stated =
    [
        "as stated", "share of the distance", "distance, km", "of its own", "what it changes", "cost", "found", "standard deviation of the reading",
        "holds when", "likely beforehand",
    ];

    private readonly KnownNumbers known;
    private readonly StatedNumbers stated;
    private readonly Dictionary<string, double> risk;
    private readonly ImmutableArray<string> names;

    /// <param name="known">The numbers of the commands.</param>
    /// <param name="stated">The numbers that the scenario's file states.</param>
    /// <param name="evaluations">The evaluations behind the main figure, which other sections give as well.</param>
    public FigureCheck(KnownNumbers known, StatedNumbers stated, long evaluations)
    {
        this.known = known;
        this.stated = stated;
        risk = new Dictionary<string, double> { ["evaluations"] = evaluations };
        names = [.. known.Labels.Concat(stated.Names).Where(l => l.Any(char.IsAsciiDigit) && l.Any(char.IsLetter))
            .Distinct().OrderByDescending(l => l.Length)];
    }

    /// <summary>The figures of a sentence.</summary>
    /// <param name="text">The sentence.</param>
    /// <param name="named">A further name of what it tells of, if it has a place in a numbered list.</param>
    /// <param name="isOfInputs">Whether it tells what the file states.</param>
    /// <param name="more">Further numbers that it may tell of.</param>
    public IEnumerable<Reading> Sentence(string text, string named = "", bool isOfInputs = false, params double[] more)
    {
        string plain = Plain(text);
        ImmutableArray<PrintedFigure> figures = PrintedFigure.In(plain);
        if (figures.IsEmpty)
        {
            return [];
        }

        var cover = new SentenceCover(plain, figures,
        [
            .. Near($"{text} {named}").Select(o => o.Numbers), risk,
            (isOfInputs ? stated.All : stated.OfNames(text)).Concat(more).Distinct().ToDictionary(x => $"stated {x:R}"),
        ]);
        return figures.Select((f, i) => new Reading(plain, f, altered => cover.Explains(i, altered)));
    }

    /// <summary>The figures of a table.</summary>
    /// <param name="table">The table.</param>
    /// <param name="isOfInputs">Whether it tells what the file states, where a column says so.</param>
    public IEnumerable<Reading> Table(XElement table, bool isOfInputs = false)
    {
        string[] headers = [.. table.Element("thead")!.Element("tr")!.Elements().Select(TextOf)];
        Row[] rows = [.. table.Element("tbody")!.Elements("tr").Select(r => RowOf(r, isOfInputs ? headers : []))];
        return Enumerable.Range(0, headers.Length).SelectMany(column => Column(rows, column, headers));
    }

    private IEnumerable<Reading> Column(Row[] rows, int column, string[] headers)
    {
        string header = headers[column];
        KnownObject[][] named = [.. rows.Select(r => Named(r, header))];
        Property? beside = column == 0 ? Best(rows, [.. rows.Select(r => Named(r, r.Cells.Length > 1 ? headers[1] : ""))], 1, 0) : null;
        for (int i = 0; i < rows.Max(r => r.Figures[column].Length); i++)
        {
            int place = i;
            Property? best = column == 0 ? (rows[0].IsNumber ? beside : null) : Best(rows, named, column, place);
            foreach ((Row row, KnownObject[] of) in rows.Zip(named).Where(r => r.First.Figures[column].Length > place))
            {
                yield return new Reading(
                    $"{row.Words} | {header}: {row.Cells[column]}", row.Figures[column][place],
                    altered => IsKnown(altered, row, column, of, best));
            }
        }
    }

    private bool IsKnown(PrintedFigure figure, Row row, int column, KnownObject[] of, Property? best)
    {
        if (column == 0 && row.IsNumber)
        {
            // Another row's key would be one, too: what stands beside it tells.
            return known.At(figure.Value).Any(o => best is not { } p || row.Figures[1].IsEmpty
                || (o.Class == p.Class && o.Numbers.TryGetValue(p.Name, out double x) && row.Figures[1][0].Prints(x, p.IsShare)));
        }

        if (row.IsStated(column))
        {
            return stated.Of(row.Keys)
                .Concat(row.IsEvidence ? stated.OfEvidence : []).Concat(Defaults(row.Cells[column])).Any(x => figure.Prints(x));
        }

        if (of.Any(o => o.Labels.Contains(figure.Text)))
        {
            return true;
        }

        return best is { } b && of.Any(o => o.Class == b.Class)
            ? of.Any(o => o.Class == b.Class && o.Numbers.TryGetValue(b.Name, out double x) && figure.Prints(x, b.IsShare))
            : stated.Of(row.Keys).Any(x => figure.Prints(x))
                || Near(row.Words).Any(o => o.Numbers.Any(n => figure.Prints(n.Value) || figure.Prints(n.Value, isShare: true)));
    }

    /// <summary>The numbers of the defaults that a text names.</summary>
    private static IEnumerable<double> Defaults(string text) =>
        Quantities.All.Where(q => q.Default is not null && text.Contains(q.Label, StringComparison.Ordinal)).SelectMany(q =>
            q.Default is Value.Uncertain u ? PrintedFigure.In(u.Distribution.ToString()).Select(f => f.Value) : [q.Default!.Nominal]);

    /// <summary>The property that explains most of a column.</summary>
    private static Property? Best(Row[] rows, KnownObject[][] named, int column, int place)
    {
        var votes = new Dictionary<Property, int>();
        foreach ((Row row, KnownObject[] of) in rows.Zip(named).Where(r => r.First.Figures[column].Length > place))
        {
            PrintedFigure figure = row.Figures[column][place];
            foreach (Property which in of.SelectMany(o => o.Numbers.SelectMany(n => new[] { false, true }
                .Where(isShare => figure.Prints(n.Value, isShare)).Select(isShare => new Property(o.Class, n.Key, isShare)))).Distinct())
            {
                votes[which] = votes.GetValueOrDefault(which) + 1;
            }
        }

        int filled = rows.Count(r => r.Figures[column].Length > place);
        return votes.Count > 0 && votes.MaxBy(v => v.Value) is { Value: var most } top && (most > 1 || filled < 3) ? top.Key : null;
    }

    /// <summary>The objects that a row is of; where some are those of its other words, or of its column's heading, only these.</summary>
    private KnownObject[] Named(Row row, string header)
    {
        KnownObject[] all = [.. row.Keys.SelectMany(known.Named).Concat(row.IsNumber ? known.At(row.Number) : []).Distinct()];
        foreach (string word in row.Cells.Skip(1).Append(header).Where(w => w.Length > 0))
        {
            foreach (IGrouping<string, KnownObject> group in all.GroupBy(o => o.Class).Where(g => g.Any(o => o.Labels.Contains(word))))
            {
                all = [.. all.Where(o => o.Class != group.Key || o.Labels.Contains(word))];
            }
        }

        return all;
    }

    /// <summary>The objects that a text may tell of.</summary>
    private IEnumerable<KnownObject> Near(string text) =>
        known.Unnamed.Concat(known.Labels.Where(l => l.Length > 2 && text.Contains(l, StringComparison.Ordinal)).SelectMany(known.Named))
            .Distinct();

    /// <summary>A text without the figures that are part of a name in the JSON, or constant words.</summary>
    private string Plain(string text)
    {
        text = text.Replace('\u00a0', ' ').Replace("..", " to ", StringComparison.Ordinal);
        foreach (string name in names)
        {
            text = text.Replace(name, new string([.. name.Where(c => !char.IsAsciiDigit(c))]), StringComparison.Ordinal);
        }

        return ConstantWords.Without(text);
    }

    private Row RowOf(XElement tr, string[] headers)
    {
        XElement[] cells = [.. tr.Elements()];
        string small = cells[0].Element("small")?.Value ?? "";
        string name = string.Concat(cells[0].Nodes().Where(n => n is not XElement { Name.LocalName: "small" or "svg" })
            .Select(n => n is XElement e ? e.Value : n.ToString())).Replace('\u00a0', ' ').Trim();
        bool isNumber = double.TryParse(name.Replace(",", "", StringComparison.Ordinal), out double number);
        string[] texts = [name, .. cells.Skip(1).Select(TextOf)];
        return new Row(
            [.. new[] { Mark().Replace(name, ""), small.Split(':')[0] }.Where(k => k.Length > 0)], isNumber, number,
            string.Join(" | ", texts), texts, headers, [.. texts.Select((t, i) => PrintedFigure.In(i == 0 && isNumber ? t : Plain(t)))]);
    }

    private static string TextOf(XElement cell) => string.Concat(cell.DescendantNodes().OfType<XText>()
        .Where(t => !t.Ancestors("svg").Any()).Select(t => t.Value)).Replace('\u00a0', ' ').Trim();

    [GeneratedRegex(@"^(\* |\(m\) )")]
    private static partial Regex Mark();

    private sealed record Row(
        string[] Keys, bool IsNumber, double Number, string Words, string[] Cells, string[] Headers,
        ImmutableArray<PrintedFigure>[] Figures)
    {
        /// <summary>Whether a column tells what the file states.</summary>
        public bool IsStated(int column) => Headers.Length > 0 && Stated.Contains(Headers[column]);

        /// <summary>Whether it tells of a piece of evidence.</summary>
        public bool IsEvidence => Headers.Contains("found");
    }

    private readonly record struct Property(string Class, string Name, bool IsShare);
}

/// <summary>A figure that was read.</summary>
/// <param name="Where">The text it stands in.</param>
/// <param name="Figure">The figure.</param>
/// <param name="Explains">Whether the JSON has a figure, this one or another in its place.</param>
internal sealed record Reading(string Where, PrintedFigure Figure, Func<PrintedFigure, bool> Explains)
{
    /// <summary>Whether the JSON has it.</summary>
    public bool IsKnown => Explains(Figure);
}
