using System.Text.Json.Nodes;
using AxleRisk.App.Documents.Forms;
using AxleRisk.App.Text;
using AxleRisk.Core.Outcomes;
using AxleRisk.Files;

namespace AxleRisk.App.Documents;

/// <summary>A whole JSON document: what it is about, the figures, the run, and the notes that stand with every answer.</summary>
internal static class WholeDocument
{
    /// <summary>Writes a document.</summary>
    /// <param name="command">The command.</param>
    /// <param name="document">The scenario.</param>
    /// <param name="form">The form of the figures.</param>
    /// <param name="result">The result.</param>
    /// <param name="run">The run and the time it took; null where nothing was sampled.</param>
    /// <param name="assumed">The defaults in force; null for those of the scenario.</param>
    public static JsonObject Write<T>(
        string command, ScenarioDocument document, JsonForm<T> form, T result, (RunRecord Record, TimeSpan? Elapsed)? run = null,
        IReadOnlyList<Assumption>? assumed = null)
    {
        JsonObject json = form.AddTo(CommonForms.Head.Write((command, document)), result);
        if (run is { } told)
        {
            CommonForms.Run.AddTo(json, told);
        }

        return CommonForms.Notes.AddTo(json, (document, assumed ?? Frame.Assumed(document.Scenario)));
    }

    /// <summary>The keys of a document.</summary>
    /// <param name="form">The form of its figures.</param>
    /// <param name="isOfRun">Whether it is of a run.</param>
    public static IEnumerable<JsonKey> Keys(IJsonForm form, bool isOfRun) =>
        [.. CommonForms.Head.Keys, .. form.Keys, .. isOfRun ? CommonForms.Run.Keys : [], .. CommonForms.Notes.Keys];
}
