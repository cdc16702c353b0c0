using AxleRisk.App.Screens.Pages;

namespace AxleRisk.App.Screens.Forms;

/// <summary>
/// A form as a plain state: fields with their refusals, and a picture beside them that follows every letter. The dialog only
/// draws it. It is accepted only when nothing is refused.
/// </summary>
internal abstract class Form
{
    private bool wasTried;

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

    /// <summary>The first refusal that is told; a form that was only opened accuses nobody.</summary>
    public string? FirstTold => Fields.FirstOrDefault(f => Told(f) is not null) is { } wrong ? $"{wrong.Label}: {wrong.Refusal}"
        : Fields.All(f => f.Refusal is null) && (wasTried || Fields.Any(f => f.IsTouched)) ? Refusal : null;

    /// <summary>The place of the field that is filled in now.</summary>
    public int Focused { get; set; }

    /// <summary>What can be opened from the chosen field, for the line below; empty for nothing.</summary>
    public virtual string Opens => "";

    /// <summary>Why a field is not right, once something was typed in it or the form was to be accepted; null where it is.</summary>
    public string? Told(FormField field) => wasTried || field.IsTouched ? field.Refusal : null;

    /// <summary>Looks whether the form may be accepted; from then on it tells all that is not right.</summary>
    public bool Try()
    {
        wasTried = true;
        return IsRight;
    }

    /// <summary>Opens a form of its own for the chosen field, where it has one.</summary>
    /// <returns>Whether it has.</returns>
    public virtual bool Open(IDialogs dialogs) => false;

    /// <summary>Takes a text into a field and looks at the whole again.</summary>
    public void Set(int field, string text)
    {
        Fields[field].Text = text;
        Fields[field].IsTouched = true;
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
