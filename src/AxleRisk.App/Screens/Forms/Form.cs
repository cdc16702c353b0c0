using AxleRisk.App.Screens.Pages;

namespace AxleRisk.App.Screens.Forms;

/// <summary>
/// A form as a plain state: fields with their refusals, and a picture beside them that follows every letter. The dialog only
/// draws it. It is accepted only when nothing is refused.
/// </summary>
internal abstract class Form
{
    /// <summary>The title of its window.</summary>
    public abstract string Title { get; }

    /// <summary>The fields, from top to bottom.</summary>
    public IReadOnlyList<FormField> Fields { get; private set; } = [];

    /// <summary>Changes when other fields take the place of those there were.</summary>
    public int Arrangement { get; private set; }

    /// <summary>Why the fields, each right by itself, are not right together; null where they are.</summary>
    public string? Refusal { get; protected set; }

    /// <summary>Whether the form may be accepted.</summary>
    public bool IsRight => Refusal is null && Fields.All(f => f.Refusal is null);

    /// <summary>The first refusal in full, with its field; null where nothing is refused.</summary>
    public string? FirstRefusal => Fields.FirstOrDefault(f => f.Refusal is not null) is { } wrong
        ? $"{wrong.Label}: {wrong.Refusal}" : Refusal;

    /// <summary>Takes a text into a field and looks at the whole again.</summary>
    public void Set(int field, string text)
    {
        Fields[field].Text = text;
        Changed(field);
    }

    /// <summary>The picture beside the fields; may be empty.</summary>
    public virtual IReadOnlyList<PageLine> Picture(int width, int height) => [];

    /// <summary>A field has another text: refuses what is not right, arranges other fields where they follow from it.</summary>
    protected abstract void Changed(int field);

    /// <summary>Puts other fields in the place of those there were.</summary>
    protected void Arrange(IReadOnlyList<FormField> fields)
    {
        Fields = fields;
        Arrangement++;
    }
}
