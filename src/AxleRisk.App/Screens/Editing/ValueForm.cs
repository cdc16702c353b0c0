using System.Collections.Immutable;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Editing;

/// <summary>The form of one input while it is being filled: a number, or a distribution stated in one of the possible ways.</summary>
/// <param name="Input">The input.</param>
/// <param name="Form">How the distribution is stated; null for a number.</param>
/// <param name="Fields">The fields with what is typed in them.</param>
/// <param name="Source">The value that the form began with, which conversions go back to until the form is checked.</param>
internal sealed record ValueForm(Input Input, StatedForm? Form, ImmutableArray<ValueField> Fields, Value Source)
{
    /// <summary>What of the keys with a default the file states, which are written even where they say the same as it.</summary>
    private bool StatesKnowledge { get; init; }

    /// <summary>The kind: <c>number</c> or the family's name.</summary>
    public string Kind => Form?.Family ?? FieldBook.Number;

    /// <summary>Where the input stands in the file.</summary>
    public TomlPath Path => ScenarioEdits.PathOf(Input);

    /// <summary>The form of an input as the text states it; of a default, the default.</summary>
    public static ValueForm Of(Input input, string text)
    {
        TomlValue? stated = input.IsDefault ? null : ScenarioEditor.Read(text, ScenarioEdits.PathOf(input));
        if (stated is TomlValue.Table table && table["distribution"] is TomlValue.Text family)
        {
            string[] keys = [.. table.Items.Select(i => i.Key)
                .Where(k => k is not ("distribution" or "min" or "max" or "nominal" or "knowledge"))];
            StatedForm form = StatedForms.Of(family.Value).First(f => f.Fits(keys));
            return new ValueForm(input, form, [.. FieldBook.Of(form).Select(f => f with { Text = TextOf(table, f.Name) ?? f.Text })],
                input.Value)
            { StatesKnowledge = table["knowledge"] is not null };
        }

        var empty = new ValueForm(input, null, [.. FieldBook.OfNumber], input.Value);
        return input.Value is Value.Uncertain uncertain
            ? empty.ToKind(uncertain.Distribution.Family)!
            : empty.With("value", stated is null ? FieldBook.Show(input.Value.Nominal) : FieldValues.Show(stated));
    }

    /// <summary>What stands in a field; empty where there is no such field.</summary>
    public string this[string name] => Fields.FirstOrDefault(f => f.Name == name)?.Text ?? "";

    /// <summary>The form with another text in a field.</summary>
    public ValueForm With(string name, string text) =>
        this with { Fields = [.. Fields.Select(f => f.Name == name ? f with { Text = text } : f)] };

    /// <summary>The form with what was typed as the value to convert from: what <see cref="FormCheck"/> found it to be.</summary>
    public ValueForm WithSource(Value value) => this with { Source = value };

    /// <summary>The form as a number or another family with the same median and spread; null where the family has no such member.</summary>
    public ValueForm? ToKind(string kind) => kind == FieldBook.Number
        ? this with { Form = null, Fields = [FieldBook.OfNumber[0] with { Text = FieldBook.Show(Source.Nominal) }] }
        : ToForm(StatedForms.Of(kind)[0]);

    /// <summary>The form with the distribution stated in another way; null where that family has no such member.</summary>
    public ValueForm? ToForm(StatedForm form)
    {
        var uncertain = Source as Value.Uncertain;
        Distribution source = uncertain?.Distribution ?? ValueConversion.About(Source.Nominal);
        if (ValueConversion.Parameters(form, source) is not { } texts)
        {
            return null;
        }

        bool keepsCut = form.CanBeCut && (form.Family == source.Family || !ValueConversion.IsBounded(form.Family));
        return this with
        {
            Form = form,
            Fields = [.. FieldBook.Of(form).Select(f => f with { Text = texts.GetValueOrDefault(f.Name) ?? Kept(f, uncertain, keepsCut) })],
        };
    }

    /// <summary>The edit that writes what is typed; null with the reasons by field where a field's text is no value.</summary>
    public ScenarioEdit? ToEdit(out IReadOnlyDictionary<string, string> reasons)
    {
        var wrong = new Dictionary<string, string>();
        var values = new Dictionary<string, TomlValue>();
        foreach (ValueField field in Fields)
        {
            if (string.IsNullOrWhiteSpace(field.Text))
            {
                _ = field.IsOptional || wrong.TryAdd(field.Name, "must be filled in");
            }
            else if (FieldValues.Parse(field.Name, field.Text, out string reason) is { } value)
            {
                values.Add(field.Name, value);
            }
            else
            {
                wrong.Add(field.Name, reason);
            }
        }

        reasons = wrong;
        return wrong.Count > 0 ? null : ScenarioEdit.Set(Path, Form is null ? values["value"] : Table(Form, values));
    }

    private TomlValue.Table Table(StatedForm form, Dictionary<string, TomlValue> values)
    {
        TomlValue Quantiles() =>
            TomlValue.ListOf(TomlValue.ListOf(values["p1"], values["x1"]), TomlValue.ListOf(values["p2"], values["x2"]));
        IEnumerable<(string, TomlValue)> parameters = form.Required is ["quantiles"]
            ? [("quantiles", Quantiles())]
            : form.Required.Concat(form.Optional).Where(values.ContainsKey).Select(name => (name, values[name]));
        string[] others = ["min", "max", "nominal", "knowledge"];
        return TomlValue.TableOf([("distribution", TomlValue.Of(form.Family)), .. parameters,
            .. others.Where(n => values.ContainsKey(n) && !IsDefault(n, values[n])).Select(n => (n, values[n]))]);
    }

    /// <summary>Whether a key says what holds without it, and the file does not state it.</summary>
    private bool IsDefault(string name, TomlValue value) => name == "knowledge" && !StatesKnowledge
        && value is TomlValue.Text word && word.Value == ScenarioEdits.KnowledgeWord(Knowledge.Varies);

    private static string? TextOf(TomlValue.Table table, string field)
    {
        TomlValue? value = field is "p1" or "x1" or "p2" or "x2"
            ? ((table["quantiles"] as TomlValue.List)?.Items[field[1] - '1'] as TomlValue.List)?.Items[field[0] == 'p' ? 0 : 1]
            : table[field];
        return value is null ? null : FieldValues.Show(value);
    }

    private static double Limit(Truncated cut, string name) =>
        cut.Parameters.FirstOrDefault(p => p.Name == name, new Parameter("", double.NaN)).Value;

    /// <summary>The end of what the input can be: there the reader cuts by itself.</summary>
    private double End(string name) => name == "min" ? Input.Quantity.Domain.Low : Input.Quantity.Domain.High;

    // What is not of the family goes along.
    private string Kept(ValueField field, Value.Uncertain? source, bool keepsCut) => field.Name switch
    {
        "knowledge" => source is null ? field.Text : ScenarioEdits.KnowledgeWord(source.Knowledge),
        "nominal" => source?.StatedNominal is double nominal ? FieldBook.Show(nominal) : "",
        "min" or "max" when keepsCut && source?.Distribution is Truncated cut =>
            Limit(cut, field.Name) is var limit && limit == End(field.Name) ? "" : FieldBook.Show(limit),
        _ => this[field.Name] is { Length: > 0 } typed && field.Name is "file" or "column" ? typed : "",
    };
}
