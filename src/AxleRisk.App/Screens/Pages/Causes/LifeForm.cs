using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Forms;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages.Inputs;
using AxleRisk.App.Text;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Pages.Causes;

/// <summary>What is known of the life: nothing, failed at a distance, between two, or not yet.</summary>
internal sealed class LifeForm : Form
{
    private const string Nothing = "nothing", At = "failed at", Between = "failed between", Survived = "survived";

    private readonly Session session;

    public LifeForm(Session session)
    {
        this.session = session;
        (string kind, double? from, double? to) = session.Document.Scenario.Evidence.Life switch
        {
            LifeEvidence.FailedAt at => (At, (double?)at.Km, (double?)null),
            LifeEvidence.FailedBetween between => (Between, (double?)between.FromKm, (double?)between.ToKm),
            LifeEvidence.Survived survived => (Survived, (double?)survived.Km, (double?)null),
            _ => (Nothing, (double?)null, (double?)null),
        };
        Build(kind, from is double f ? FieldBook.Show(f) : "", to is double t ? FieldBook.Show(t) : "");
    }

    public override string Title => "Life of this axle";

    /// <summary>The edit; null while something is wrong.</summary>
    public ScenarioEdit? Edit => Kind == Nothing ? ScenarioEdits.Life(null) : Life is { } life ? ScenarioEdits.Life(life) : null;

    private string Kind => Fields[0].Text;

    private LifeEvidence? Life =>
        (Kind, InputEditor.Number(Fields[1].Text), Kind == Between ? InputEditor.Number(Fields[2].Text) : null) switch
        {
            (At, double km, _) when km > 0 => new LifeEvidence.FailedAt(km),
            (Survived, double km, _) when km > 0 => new LifeEvidence.Survived(km),
            (Between, double from, double to) when from >= 0 && to > from => new LifeEvidence.FailedBetween(from, to),
            _ => null,
        };

    public override IReadOnlyList<PageLine> Picture(int width, int height) => [.. Wrap.Lines(Kind switch
    {
        At => "The distance at which the axle was seen to break.",
        Between => "The last distance at which it was known to be whole, and the distance at which it was found broken.",
        Survived => "The distance it has reached unbroken.",
        _ => "Nothing is known of the life; measured factors and known states are evidence all the same.",
    }, width, "").Select(l => PageLine.Of(l, Ink.Quiet))];

    protected override void Changed(int field)
    {
        if (field == 0)
        {
            Build(Kind, Fields.Count > 1 ? Fields[1].Text : "", Fields.Count > 2 ? Fields[2].Text : "");
        }

        Check();
    }

    private void Build(string kind, string from, string to)
    {
        var life = new FormField("life", kind, "", [Nothing, At, Between, Survived]);
        Arrange(kind switch
        {
            Nothing => [life],
            Between => [life, new FormField("whole at", from, "km"), new FormField("broken at", to, "km")],
            _ => [life, new FormField("distance", from, "km")],
        });
        Check();
    }

    private void Check()
    {
        foreach (FormField field in Fields.Skip(1))
        {
            field.Refusal = InputEditor.Number(field.Text) is double km && (km > 0 || (km == 0 && field == Fields[1] && Kind == Between))
                ? null : "a distance in km, above 0";
        }

        bool areRight = Fields.All(f => f.Refusal is null);
        Refusal = !areRight ? null
            : Edit is not { } edit ? "the second distance must lie above the first"
            : session.WhyNot(edit);
    }
}
