using AxleRisk.App.Charts;
using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Screens.Forms;
using AxleRisk.App.Screens.Live;
using AxleRisk.App.Text;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Pages.Inputs;

/// <summary>The form of a quantity: a number, a distribution in any way it can be stated, or a tolerance; with its density drawn.</summary>
internal sealed class QuantityForm : Form
{
    private const string KindHelp =
        "How the value is stated: as one number, or as a distribution. What each is for stands below its picture.";

    private const string WayHelp = "Which figures state the distribution: those that you know best.";
    private const string KindLabel = "kind";
    private const string WayLabel = "stated by";

    private static readonly string[] InUnit = ["value", "mean", "sd", "median", "low", "high", "mode", "x1", "x2", "min", "max", "nominal",
        "location", "scale"];

    private readonly IValueJudge judge;
    private readonly Quantity quantity;
    private readonly Input input;
    private readonly ToleranceFields tolerance;
    private ValueForm form;
    private bool isTolerance;
    private FormCheck check;

    /// <summary>The form of an input of the scenario.</summary>
    /// <param name="session">The open scenario.</param>
    /// <param name="row">The input.</param>
    /// <param name="asTolerance">Whether it begins with the tolerance.</param>
    public QuantityForm(Session session, InputRow row, bool asTolerance = false)
        : this(session.Document.Scenario.Inputs.Single(i => i.Name == row.Name), i => new InputJudge(session.Edited, i), asTolerance)
    {
    }

    /// <summary>The form of a value.</summary>
    /// <param name="input">The input, or what stands for it.</param>
    /// <param name="judgeOf">Who judges it.</param>
    /// <param name="asTolerance">Whether it begins with the tolerance.</param>
    public QuantityForm(Input input, Func<Input, IValueJudge> judgeOf, bool asTolerance = false)
    {
        isTolerance = asTolerance;
        Focused = asTolerance ? 1 + ToleranceFields.Plus : 0;
        this.input = input;
        quantity = input.Quantity;
        judge = judgeOf(input);
        form = ValueForm.Of(input, judge.Text);
        tolerance = new ToleranceFields(input, judge.Text);
        check = FormCheck.Of(form, judge);
        Build();
    }

    public override string Title => $"{input.Label}: {TextTable.Shorten(quantity.Meaning, 48)}";

    /// <summary>The edit; null while something is wrong.</summary>
    public ScenarioEdit? Edit => isTolerance ? tolerance.Edit() : check.Edit;

    /// <summary>The kinds to choose from.</summary>
    private IReadOnlyList<string> Kinds => quantity.Unit == "mm" ? [.. FieldBook.Kinds, ToleranceFields.Kind] : FieldBook.Kinds;

    private StatedForm[] Ways => form.Form is null || isTolerance ? [] : [.. StatedForms.Of(form.Kind)];

    /// <summary>The fields before those of the value: kind, and how it is stated where there are several ways.</summary>
    private int Before => Ways.Length > 1 ? 2 : 1;

    public override IReadOnlyList<PageLine> Picture(int width, int height)
    {
        Value? value = isTolerance
            ? tolerance.Edit() is { } edit ? judge.Judge(edit).Value : null
            : check.Value;
        PageLine[] advice = Focused >= Before || isTolerance || form.Form is null ? []
            : [.. Wrap.Lines(DistributionFormat.WhenOf(form.Kind), width, "").Select(l => PageLine.Of(l, Ink.Quiet))];
        return [.. Drawn(value, width, height - advice.Length), .. advice];
    }

    private IReadOnlyList<PageLine> Drawn(Value? value, int width, int height) =>
        value switch
        {
            Value.Uncertain uncertain =>
            [
                .. Pictures.Lines(DensityChart.Draw(uncertain.Distribution, quantity.Unit, width, Math.Clamp(height - 2, 4, 14))),
                PageLine.Of($"base case {Figures.Number(uncertain.Nominal)} {quantity.Unit}", Ink.Quiet),
            ],
            Value.Certain certain =>
                [PageLine.Of("Certain:", Ink.Quiet), PageLine.Of($"{Figures.Number(certain.Number)} {quantity.Unit}", Ink.Strong)],
            _ => [PageLine.Of("No picture: something is not right yet.", Ink.Quiet)],
        };

    protected override void Changed(int field)
    {
        string text = Fields[field].Text;
        if (field == 0)
        {
            isTolerance = text == ToleranceFields.Kind;
            if (!isTolerance)
            {
                form = form.ToKind(text) ?? Empty(StatedForms.Of(text)[0]);
            }

            Build();
        }
        else if (field < Before)
        {
            StatedForm way = Ways.First(w => WayName(w) == text);
            form = form.ToForm(way) ?? Empty(way);
            Build();
        }
        else if (isTolerance)
        {
            if (tolerance.Set(field - 1, text))
            {
                Arrange([.. Fields]);
            }
        }
        else
        {
            form = form.With(form.Fields[field - Before].Name, text);
        }

        Check();
    }

    private static string WayName(StatedForm way) => string.Join(", ", way.Required);

    private ValueForm Empty(StatedForm way) => form with { Form = way, Fields = [.. FieldBook.Of(way)] };

    private void Build()
    {
        var fields = new List<FormField> { new(KindLabel, isTolerance ? ToleranceFields.Kind : form.Kind, "", Kinds) { Help = KindHelp } };
        if (Ways.Length > 1)
        {
            fields.Add(new FormField(WayLabel, WayName(form.Form!), "", [.. Ways.Select(WayName)]) { Help = WayHelp });
        }

        fields.AddRange(isTolerance
            ? tolerance.Fields
            : form.Fields.Select(f => new FormField(f.Name, f.Text, InUnit.Contains(f.Name) ? quantity.Unit : "",
                f.Words.Count > 0 ? f.Words : null)
            { Help = Printable.Capital(f.Hint) + ".", IsNumber = f.Name is not ("file" or "column") }));
        Arrange(fields);
        Check();
    }

    private void Check()
    {
        if (isTolerance)
        {
            string? problem = tolerance.Problem;
            Refusal = problem ?? (tolerance.Edit() is { } edit && judge.Judge(edit).Errors is [var first, ..] ? first.Message : null);
            return;
        }

        check = FormCheck.Of(form, judge);
        form = check.Value is { } value ? form.WithSource(value) : form;
        for (int i = 0; i < form.Fields.Length; i++)
        {
            Fields[Before + i].Refusal = check.Reasons.GetValueOrDefault(form.Fields[i].Name);
        }

        Refusal = check.Others.Count > 0 ? check.Others[0] : null;
    }
}
