using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Forms;
using AxleRisk.App.Screens.Live;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Pages.Inputs;

/// <summary>Chooses one of the words an input may be.</summary>
internal sealed class WordForm : Form
{
    private readonly Session session;
    private readonly InputRow row;

    public WordForm(Session session, InputRow row)
    {
        this.session = session;
        this.row = row;
        Arrange([new FormField(row.Label, row.Words.Contains(row.ValueText) ? row.ValueText : row.Words[0], "", row.Words)]);
    }

    public override string Title => row.Name;

    /// <summary>The edit as it stands.</summary>
    public ScenarioEdit Edit => ScenarioEdit.Set(row.Path, TomlValue.Of(Fields[0].Text));

    protected override void Changed(int field) => Fields[0].Refusal = session.WhyNot(Edit);
}
