using System.Collections.Immutable;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads the weld detail: a category of a catalogue, or several with weights.</summary>
internal sealed class DetailReader(ErrorLog errors)
{
    /// <summary>Reads the table; null, with the errors logged, where it is wrong.</summary>
    /// <param name="table">The table.</param>
    /// <param name="isWhole">Whether it states nothing but the detail.</param>
    public Detail? Read(TableReader table, bool isWhole = true)
    {
        string? name = ReadCatalogue(table);
        double? exponent = table.Number("thickness_exponent");
        TableReader? curve = table.Inner("curve");
        OwnCurve? own = curve is null ? null : new OwnCurveReader(errors).Read(curve);
        if (name == Detail.OwnCatalogue)
        {
            RejectBesideOwn(table);
            RejectUnknown(table, isWhole);
            return own is null ? null : new Detail(name, [Detail.OwnCategory], [1], Knowledge.Unknown, exponent) { Own = own };
        }

        TomlEntry? category = table.Require("category");
        WordChoice? environment = table.Find("environment") is TomlEntry entry
            ? Read(table.NameOf("environment"), entry.Node, name) : null;
        RejectUnknown(table, isWhole);
        WordChoice? read = category is null ? null : Read(table.NameOf("category"), category.Node, name);
        return name is null || read is null
            ? null
            : new Detail(name, read.Words, read.Weights, read.Knowledge, exponent) { Environment = environment, Own = own };
    }

    private static void RejectUnknown(TableReader table, bool isWhole)
    {
        if (isWhole)
        {
            table.RejectUnknown();
        }
    }

    private string? ReadCatalogue(TableReader table)
    {
        if (table.Text("catalogue") is not string name)
        {
            return null;
        }

        ImmutableArray<string> known = DetailFormat.Detail.Find("catalogue")!.Words;
        if (known.Contains(name))
        {
            return name;
        }

        errors.Add(table.Find("catalogue")!.Node.At, $"unknown catalogue {MessageText.Quote(name)}{NearestName.Hint(name, known)}");
        return null;
    }

    private void RejectBesideOwn(TableReader table)
    {
        foreach (string key in new[] { "category", "environment" })
        {
            if (table.Find(key) is TomlEntry entry)
            {
                errors.Add(entry.KeyAt, $"{table.NameOf(key)} does not belong to a curve of your own: leave it out, or name a catalogue");
            }
        }

        if (table.Find("curve") is null)
        {
            errors.Add(table.Find("catalogue")!.Node.At, $"a curve of your own must be stated under [{table.NameOf("curve")}]");
        }
    }

    /// <summary>Reads a category or environment, or a choice of several; null, with the errors logged, where it is wrong.</summary>
    /// <param name="name">Which, as the inputs are named.</param>
    /// <param name="node">What stands there.</param>
    /// <param name="catalogue">The catalogue; null where that is wrong and reported already.</param>
    public WordChoice? Read(string name, TomlNode node, string? catalogue) =>
        node is TomlTable choice ? ReadChoice(name, new TableReader(choice, name, DetailFormat.WordChoice, errors), catalogue)
        : IsWord(name, node, catalogue, name) ? WordChoice.Sure(((TomlText)node).Text)
        : null;

    private WordChoice? ReadChoice(string name, TableReader table, string? catalogue)
    {
        string? family = table.Text("distribution");
        if (family is not null and not "choice")
        {
            errors.Add(table.Table.Find("distribution")!.Node.At,
                $"{table.NameOf("distribution")} must be \"choice\", not {MessageText.Quote(family)}");
        }

        Knowledge knowledge = table.Word("knowledge", FormatWords.KnowledgeKinds) ?? Knowledge.Varies;
        DiscreteReader lists = new(errors);
        TomlArray? values = lists.ReadArray(table, "values");
        double[]? weights = lists.ReadWeights(table, values?.Items.Count);
        table.RejectUnknown();

        bool sound = values is not null;
        HashSet<string> seen = [];
        foreach (TomlNode item in values?.Items ?? [])
        {
            bool good = IsWord(name, item, catalogue, table.NameOf("values"));
            if (good && !seen.Add(CurveOf(catalogue, ((TomlText)item).Text)))
            {
                errors.Add(item.At, $"{table.NameOf("values")} has {item.Shown} twice");
                good = false;
            }

            sound &= good;
        }

        return sound && weights is not null && values is not null
            ? new WordChoice([.. values.Items.Select(i => ((TomlText)i).Text)], [.. weights], knowledge)
            : null;
    }

    private bool IsWord(string name, TomlNode node, string? catalogue, string where) =>
        CheckedSection.FirstName(name) == Change.EnvironmentName
            ? IsEnvironment(node, catalogue, where) : IsCategory(node, catalogue, where);

    private bool IsEnvironment(TomlNode node, string? catalogue, string where)
    {
        // Of an unknown catalogue, an error of its own, nothing more is asked than of the one with the most.
        ImmutableArray<string> possible = SnCatalogue.Environments(catalogue ?? SnCatalogue.Catalogues[0]);
        if (node is TomlText { Text: string text } && possible.Contains(text))
        {
            return true;
        }

        errors.Add(
            node.At,
            $"{where} must be {MessageText.List([.. possible.Select(MessageText.Quote)], "or")}"
            + $"{(possible.Length == 1 ? $" with {catalogue}, which tells of no other" : "")}, not {node.Shown}");
        return false;
    }

    private bool IsCategory(TomlNode node, string? catalogueName, string name)
    {
        if (node is not TomlText { Text: string text })
        {
            errors.Add(node.At, $"{name} must be a category in quotes, not {node.Shown}");
            return false;
        }

        if (catalogueName is null || SnCatalogue.Find(catalogueName, text) is not null)
        {
            return true;
        }

        string possible = string.Join(", ", SnCatalogue.Categories(catalogueName));
        errors.Add(node.At, $"{catalogueName} has no category {MessageText.Quote(text)}; possible: {possible}");
        return false;
    }

    // A curve may have two names.
    private static string CurveOf(string? catalogueName, string category) =>
        catalogueName is null ? category : SnCatalogue.Find(catalogueName, category)?.Category ?? category;
}
