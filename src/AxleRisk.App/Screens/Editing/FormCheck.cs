using AxleRisk.Core.Scenarios;
using AxleRisk.Files;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Editing;

/// <summary>What the reader of scenarios says of a form as it is filled in: it alone judges.</summary>
/// <param name="Reasons">What is wrong with a field, by its name.</param>
/// <param name="Others">What is wrong otherwise.</param>
/// <param name="Edit">The edit; null where a field's text is no value.</param>
/// <param name="Value">The value; null where something is wrong.</param>
internal sealed record FormCheck(IReadOnlyDictionary<string, string> Reasons, IReadOnlyList<string> Others, ScenarioEdit? Edit,
    Value? Value)
{
    /// <summary>Whether the form can be accepted.</summary>
    public bool IsRight => Reasons.Count == 0 && Others.Count == 0 && Edit is not null;

    /// <summary>Checks a form against the scenario it is to change.</summary>
    public static FormCheck Of(ValueForm form, EditedScenario scenario) => Of(form, new InputJudge(scenario, form.Input));

    /// <summary>Checks a form with whoever judges the value.</summary>
    public static FormCheck Of(ValueForm form, IValueJudge judge)
    {
        if (form.ToEdit(out IReadOnlyDictionary<string, string> wrong) is not { } edit)
        {
            return new FormCheck(wrong, [], null, null);
        }

        (string text, Value? value, IReadOnlyList<ScenarioError> errors) = judge.Judge(edit);
        var reasons = new Dictionary<string, string>();
        List<string> others = [];
        foreach (ScenarioError error in errors)
        {
            string? field = form.Fields.Select(f => f.Name)
                .FirstOrDefault(f => ScenarioEditor.PlaceOf(text, PathOf(form, f)) == (error.Line, error.Column));
            if (field is null || !reasons.TryAdd(field, error.Message))
            {
                others.Add(error.Message);
            }
        }

        return new FormCheck(reasons, others, edit, value);
    }

    private static TomlPath PathOf(ValueForm form, string field) => (form.Form, field) switch
    {
        (null, _) => form.Path,
        (_, "p1" or "x1" or "p2" or "x2") => form.Path.Then("quantiles").At(field[1] - '1').At(field[0] == 'p' ? 0 : 1),
        _ => form.Path.Then(field),
    };
}
