namespace AxleRisk.Files.Writing;

/// <summary>
/// Changes the text of a scenario and nothing else in it: comments, order, blank lines and the manner of numbers stay, and so
/// does every line that is not changed. It knows TOML and not what a scenario means; whether the result is valid the reader says. One
/// comment alone goes with what it was behind: that a value is a starting value (<see cref="NewScenario.Mark"/>).
/// </summary>
public static class ScenarioEditor
{
    /// <summary>The text after a change.</summary>
    /// <exception cref="EditException">The text cannot be changed so.</exception>
    public static string Apply(string text, ScenarioEdit edit) => edit.Steps.Aggregate(text, Apply);

    /// <summary>What stands at a path, numbers with their texts; null where nothing does or the text's syntax is broken.</summary>
    public static TomlValue? Read(string text, TomlPath path)
    {
        try
        {
            return Outline.Of(text).Find(path)?.Value;
        }
        catch (EditException)
        {
            return null;
        }
    }

    /// <summary>
    /// Where the value of a path begins, line and column from 1 as in a <see cref="ScenarioError"/>; null where there is none.
    /// </summary>
    public static (int Line, int Column)? PlaceOf(string text, TomlPath path)
    {
        try
        {
            return Outline.Of(text).Find(path)?.At is Toml.Position at ? (at.Line, at.Column) : null;
        }
        catch (EditException)
        {
            return null;
        }
    }

    /// <summary>The note of a value: the comment behind it, else that directly above it; empty where there is none.</summary>
    public static string NoteOf(string text, TomlPath path)
    {
        try
        {
            return Outline.Of(text).Find(path) is { } place ? Notes.Of(text, place) : "";
        }
        catch (EditException)
        {
            return "";
        }
    }

    private static string Apply(string text, TomlEdit step)
    {
        Outline outline = Outline.Of(text);
        Place? there = outline.Find(step.Path);
        return step switch
        {
            TomlEdit.Set { Value: var value } =>
                there is null ? Insert(outline, step.Path, value)
                    : Unmarked(text, there, Replace(outline, there, step.Path, value), step.Path),
            TomlEdit.Remove => there is null ? text : Without(text, there),
            TomlEdit.Append { Table: var table } => Append(outline, there, step.Path, table),
            TomlEdit.Swap { Index: var index } => there is ArrayPlace array
                ? Splice.Apply(text, Exchange.Of(text, array, index)) : throw new EditException($"{step.Path} is no list of tables"),
            TomlEdit.Note { Text: var note } => there is null
                ? throw new EditException($"there is no {step.Path}") : Splice.Apply(text, Notes.Write(text, there, note)),
            _ => throw new EditException($"{step.Path} cannot be changed so"),
        };
    }

    // A value of the reader's own is no starting value any more.
    private static string Unmarked(string before, Place there, string text, TomlPath path) =>
        text != before && Notes.Of(before, there) == NewScenario.Mark && Outline.Of(text).Find(path) is { } place
        && Notes.Of(text, place) == NewScenario.Mark ? Splice.Apply(text, Notes.Write(text, place, "")) : text;

    private static string Without(string text, Place place) => Splice.Apply(text, Removal.Of(text, place.Pieces));

    private static string Replace(Outline outline, Place there, TomlPath path, TomlValue value)
    {
        string text = outline.Text;
        if (there.Value.Equals(value))
        {
            return text;
        }

        if (there is TablePlace table && value is TomlValue.Table wanted)
        {
            bool sameKeys = table.Children.Count == wanted.Items.Length && wanted.Items.All(i => table.Children.ContainsKey(i.Key));
            if (table.Inline is null || sameKeys)
            {
                return Merge(text, table, path, wanted);
            }
        }

        ValuePlace? one = there switch
        {
            ValuePlace scalar => scalar,
            TablePlace inline => inline.Inline,
            ArrayPlace list => list.Inline,
            _ => null,
        };
        if (one is not null)
        {
            return Splice.Apply(text,
                [new Splice(one.Syntax.Span.Start.Offset, one.Syntax.Span.End.Offset + 1, KeptNotation.Of(there.Value, value))]);
        }

        return Insert(Outline.Of(Without(text, there)), path, value);
    }

    // Key by key, so that what stays the same is not touched.
    private static string Merge(string text, TablePlace table, TomlPath path, TomlValue.Table wanted)
    {
        IEnumerable<TomlEdit> steps = table.Children.Keys.Where(k => wanted[k] is null)
            .Select(k => (TomlEdit)new TomlEdit.Remove(path.Then(k)))
            .Concat(wanted.Items.Select(i => new TomlEdit.Set(path.Then(i.Key), i.Value)));
        return steps.Aggregate(text, Apply);
    }

    private static string Insert(Outline outline, TomlPath path, TomlValue value)
    {
        if (path.Parts is not [.., { Key: string key }])
        {
            throw new EditException($"there is no {path}");
        }

        TomlPath parent = path.Parent;
        switch (outline.Find(parent))
        {
            case TablePlace table:
                return Splice.Apply(outline.Text,
                    [Insertion.Key(outline, table, SectionOf(outline, parent), TomlText.Key(key), value.Write())]);
            case null when parent.Parts.All(p => p.Key is not null) && !IsInArray(outline, parent):
                string section = string.Join('.', parent.Parts.Select(p => TomlText.Key(p.Key!)));
                return Splice.Apply(outline.Text,
                    [Insertion.Header(outline, section, $"[{section}]", [$"{TomlText.Key(key)} = {value.Write()}"])]);
            case null:
                throw new EditException($"there is no {parent}");
            default:
                throw new EditException($"{parent} is no table, so it has no {key}");
        }
    }

    private static string Append(Outline outline, Place? there, TomlPath path, TomlValue.Table table)
    {
        string section = SectionOf(outline, path);
        return there switch
        {
            ArrayPlace { Inline: not null } or ArrayPlace { Items.Count: > 0 } =>
                Splice.Apply(outline.Text, [Insertion.Element(outline, (ArrayPlace)there, section, table)]),
            null => Splice.Apply(outline.Text, [Insertion.Header(outline, section, $"[[{section}]]", Insertion.Lines(table))]),
            _ => throw new EditException($"{path} is no list of tables"),
        };
    }

    /// <summary>The name of the header that a path stands under: its keys without the elements of arrays.</summary>
    private static string SectionOf(Outline outline, TomlPath path)
    {
        List<string> keys = [];
        TomlPath walked = TomlPath.Root;
        foreach (PathPart part in path.Parts)
        {
            bool isElement = outline.Find(walked) is ArrayPlace;
            walked = part.Key is null ? walked.At(part.Index) : walked.Then(part.Key);
            if (!isElement)
            {
                keys.Add(TomlText.Key(part.Key!));
            }
        }

        return string.Join('.', keys);
    }

    private static bool IsInArray(Outline outline, TomlPath path) =>
        Enumerable.Range(0, path.Parts.Length)
            .Any(n => outline.Find(path.Parts[..n].Aggregate(TomlPath.Root, (p, part) => p.Then(part.Key!))) is ArrayPlace);
}
