using AxleRisk.App.Documents;
using AxleRisk.App.Documents.Forms;
using AxleRisk.App.Studies;

namespace AxleRisk.App.Schemas;

/// <summary>The JSON document of a command.</summary>
/// <param name="Command">The command.</param>
/// <param name="Form">The form of its figures.</param>
/// <param name="IsOfRun">Whether it is of a run.</param>
internal sealed record CommandDocument(string Command, IJsonForm Form, bool IsOfRun)
{
    /// <summary>Whether it is of a scenario, with what every such document has.</summary>
    public bool IsOfScenario { get; init; } = true;
}

/// <summary>The JSON documents of all commands.</summary>
internal static class DocumentBook
{
    /// <summary>The documents, in the order of the help.</summary>
    public static IReadOnlyList<CommandDocument> All { get; } =
    [
        new("check", CheckDocument.Form, IsOfRun: false),
        new("base", BaseDocument.Form, IsOfRun: false),
        .. StudyBook.All.Select(s => new CommandDocument(s.Name, s.Form, IsOfRun: true)),
        new("fit", FitDocument.Form, IsOfRun: false) { IsOfScenario = false },
        new("compare", CompareDocument.Form, IsOfRun: true),
        new("confirm", ConfirmDocument.Form, IsOfRun: true),
        new("merge", StudyBook.Risk.Form, IsOfRun: true),
    ];
}
