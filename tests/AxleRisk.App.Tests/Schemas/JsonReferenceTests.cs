using AxleRisk.App.Documents.Forms;
using AxleRisk.App.Schemas;
using AxleRisk.App.Tests.Files;
using Xunit;

namespace AxleRisk.App.Tests.Schemas;

/// <summary>The reference of the JSON answers has a table of every form, made of it.</summary>
public class JsonReferenceTests
{
    private static readonly Dictionary<string, IJsonForm> Parts = [];

    static JsonReferenceTests()
    {
        foreach (CommandDocument document in DocumentBook.All)
        {
            Find(document.Form);
        }
    }

    [Fact]
    public void Every_table_is_that_of_its_form()
    {
        var page = new MarkedPage("docs", "json.md");
        page.Check(TableOf);
        Assert.Equal(
            ["every document", "every run", .. DocumentBook.All.Select(d => d.Command).Except(["merge"]), .. Parts.Keys.Order()],
            page.Names.Take(2 + DocumentBook.All.Count - 1).Concat(page.Names.Skip(2 + DocumentBook.All.Count - 1).Order()));
    }

    private static string TableOf(string name) => MarkedPage.Table(["Key", "Is", "Meaning"], name switch
    {
        "every document" => Rows([.. CommonForms.Head.Keys, .. CommonForms.Notes.Keys], ""),
        "every run" => Rows(CommonForms.Run.Keys, ""),
        _ => Rows((Parts.GetValueOrDefault(name) ?? DocumentBook.All.First(d => d.Command == name).Form).Keys, ""),
    });

    // The keys of an object that stands in one place alone follow it.
    private static IEnumerable<string[]> Rows(IEnumerable<JsonKey> keys, string before) => keys.SelectMany(k => (IEnumerable<string[]>)
    [
        [$"`{before}{k.Name}`", Words(k.Shape) + (k.IsNullable ? " or null" : "") + (k.IsOptional ? "; may be left out" : ""), k.Meaning],
        .. k.Shape switch
        {
            JsonShape.Object { Form: { Name: null } form } => Rows(form.Keys, $"{before}{k.Name}."),
            JsonShape.List { Of: JsonShape.Object { Form: { Name: null } form } } => Rows(form.Keys, $"{before}{k.Name}[]."),
            _ => [],
        },
    ]);

    private static string Words(JsonShape shape) => shape switch
    {
        JsonShape.Number => "number",
        JsonShape.Whole => "whole number",
        JsonShape.Text => "text",
        JsonShape.Flag => "true or false",
        JsonShape.TextOrNumber => "text or number",
        JsonShape.Word w => string.Join(", ", w.Words.SkipLast(1).Select(x => $"`\"{x}\"`")) + $" or `\"{w.Words[^1]}\"`",
        JsonShape.Object { Form.Name: string name } => $"[{name}](#{name})",
        JsonShape.Object => "object",
        JsonShape.List { Of: JsonShape.Object { Form.Name: null } } => "list of objects",
        JsonShape.List l => $"list: {Words(l.Of)}",
        JsonShape.Map m => $"by name: {Words(m.Of)}{(m.MayBeNull ? " or null" : "")}",
        _ => throw new InvalidOperationException(),
    };

    private static void Find(IJsonForm form)
    {
        if (form.Name is string name && !Parts.TryAdd(name, form))
        {
            return;
        }

        foreach (JsonShape shape in form.Keys.Select(k => k.Shape))
        {
            if ((shape is JsonShape.List list ? list.Of : shape is JsonShape.Map map ? map.Of : shape) is JsonShape.Object o)
            {
                Find(o.Form);
            }
        }
    }
}
