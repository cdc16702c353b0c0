using AxleRisk.Core.Scenarios;

namespace AxleRisk.Files.Writing;

/// <summary>What a scenario's comments say of its inputs: where a value comes from.</summary>
public static class InputNotes
{
    /// <summary>The inputs with a note, in their order.</summary>
    public static IReadOnlyList<(Input Input, string Note)> Of(ScenarioDocument document)
    {
        var outline = Outline.Of(document.Text);
        return
        [
            .. document.Scenario.Inputs.Where(i => !i.IsDefault)
                .Select(i => (Input: i, Note: outline.Find(ScenarioEdits.PathOf(i)) is { } place ? Notes.Of(document.Text, place) : ""))
                .Where(n => n.Note.Length > 0),
        ];
    }
}
