using AxleRisk.Core.Scenarios;
using AxleRisk.Files;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Editing;

/// <summary>
/// A scenario that is being edited: its text, what the reader makes of it, and the way back. The text is the one truth; every
/// edit goes through the text and the reader, and one that the reader refuses changes nothing.
/// </summary>
internal sealed class EditedScenario
{
    private readonly EditHistory history = new();
    private readonly IReadOnlyList<string>? dataFolders;

    private EditedScenario(ScenarioText opened, IReadOnlyList<string>? dataFolders = null)
    {
        this.dataFolders = dataFolders;
        File = new ScenarioFile(opened);
        Text = opened.Text;
        Errors = [];
        Adopt(opened.Text);
        Edition = 0;
    }

    /// <summary>The file, and what stands beside it.</summary>
    public ScenarioFile File { get; }

    /// <summary>The file's path.</summary>
    public string Path => File.Path;

    /// <summary>The text as it is now.</summary>
    public string Text { get; private set; }

    /// <summary>The scenario of the text; null while the text is not valid.</summary>
    public ScenarioDocument? Document { get; private set; }

    /// <summary>What is wrong with the text; empty where nothing is.</summary>
    public IReadOnlyList<ScenarioError> Errors { get; private set; }

    /// <summary>Whether the text is not what the file holds.</summary>
    public bool IsUnsaved => File.IsNew || Text != File.Text;

    /// <summary>A number that changes with every change of the text.</summary>
    public int Edition { get; private set; }

    /// <summary>The name of the step that would be undone; null where there is none.</summary>
    public string? UndoName => history.UndoName;

    /// <summary>The name of the step that would be done again; null where there is none.</summary>
    public string? RedoName => history.RedoName;

    /// <summary>Why nothing can be changed here; null where it can.</summary>
    public string? WhyOnlyLook => File.Holder is { } holder
        ? $"only to look at: {holder} has it open; S saves it under another name" : null;

    /// <summary>Opens a scenario, also one that is not valid.</summary>
    /// <param name="path">Its path.</param>
    /// <param name="dataFolders">Folders that its data files may lie in besides its own.</param>
    /// <exception cref="ScenarioException">The file cannot be read.</exception>
    public static EditedScenario Open(string path, IReadOnlyList<string>? dataFolders = null) => new(ScenarioText.Open(path), dataFolders);

    /// <summary>A new scenario, not yet saved.</summary>
    public static EditedScenario New(string path, string text) => new(ScenarioText.New(path, text));

    /// <summary>Makes an edit, or says why it cannot be made; then nothing changes.</summary>
    public EditOutcome Apply(ScenarioEdit edit)
    {
        if (WhyOnlyLook is { } why)
        {
            return new EditOutcome([why]);
        }

        string text;
        try
        {
            text = ScenarioEditor.Apply(Text, edit);
        }
        catch (EditException e)
        {
            return new EditOutcome([e.Message]);
        }

        return Take(edit.Name, text);
    }

    /// <summary>What the reader would make of the text after an edit, without making it.</summary>
    public (string Text, ScenarioDocument? Document, IReadOnlyList<ScenarioError> Errors) Try(ScenarioEdit edit)
    {
        string text = ScenarioEditor.Apply(Text, edit);
        (ScenarioDocument? document, IReadOnlyList<ScenarioError> errors) = Read(text, Path);
        return (text, document, errors);
    }

    /// <summary>Reads a value that stands by itself, its data beside this scenario.</summary>
    public (Value? Value, IReadOnlyList<ScenarioError> Errors) ReadValue(string text, string key, Domain domain) =>
        ValueText.Read(text, key, domain, Path, dataFolders);

    /// <summary>Puts another text in place of the whole, valid or not, as a step that can be undone.</summary>
    /// <param name="name">The step's name.</param>
    /// <param name="text">The text.</param>
    public void Rewrite(string name, string text)
    {
        if (text != Text)
        {
            history.Add(name, Text, text);
            Adopt(text);
        }
    }

    /// <summary>Reads the text once more: a data file it refers to may have been mended.</summary>
    public void Recheck() => Adopt(Text);

    /// <summary>Undoes the last step.</summary>
    /// <returns>Its name; null where there is none.</returns>
    public string? Undo() => Move(history.UndoName, history.Undo());

    /// <summary>Does the step undone last again.</summary>
    /// <returns>Its name; null where there is none.</returns>
    public string? Redo() => Move(history.RedoName, history.Redo());

    /// <summary>Saves to the scenario's own file.</summary>
    /// <param name="overwrite">Whether to save although another program has changed the file.</param>
    /// <param name="unprotect">Whether to save although the file is marked as not to be written.</param>
    public SaveOutcome Save(bool overwrite = false, bool unprotect = false) => ReadAgain(File.Save(Text, overwrite, unprotect));

    /// <summary>Saves to another file, which is the scenario's from then on.</summary>
    /// <param name="path">The other file.</param>
    /// <param name="overwrite">Whether to save although the file is there.</param>
    public SaveOutcome SaveAs(string path, bool overwrite = false)
    {
        if (System.IO.Path.GetFullPath(path) == System.IO.Path.GetFullPath(Path))
        {
            return Save(overwrite);
        }

        // Data files are looked for beside the scenario, so the same text may be wrong in another folder.
        return Document is not null && Read(Text, path).Errors is { Count: > 0 } errors
            ? new SaveOutcome(SaveResult.Failed, errors[0].ToString())
            : ReadAgain(File.SaveAs(path, Text, overwrite));
    }

    /// <summary>Takes the file's text as it is now on disk, as a step that can be undone.</summary>
    /// <exception cref="ScenarioException">The file cannot be read.</exception>
    public void Reload() => Rewrite("read again", File.Read());

    /// <summary>Keeps what is not saved beside the file, or removes what was kept where all is saved.</summary>
    /// <returns>Null, or why it could not be kept.</returns>
    public string? KeepUnsaved()
    {
        if (IsUnsaved)
        {
            return File.Keep(Text);
        }

        File.DropKept();
        return null;
    }

    /// <summary>Takes the changes of the earlier session, as a step that can be undone.</summary>
    public void TakeRecovered()
    {
        if (File.TakeRecovered() is { } text)
        {
            Rewrite("recovered changes", text);
        }
    }

    private (ScenarioDocument? Document, IReadOnlyList<ScenarioError> Errors) Read(string text, string path)
    {
        try
        {
            return (ScenarioReader.ParseFor(text, path, dataFolders), []);
        }
        catch (ScenarioException e)
        {
            return (null, e.Errors);
        }
    }

    private EditOutcome Take(string name, string text)
    {
        if (text == Text)
        {
            return EditOutcome.Accepted;
        }

        (ScenarioDocument? document, IReadOnlyList<ScenarioError> errors) = Read(text, Path);

        // A file that was opened with errors is mended one by one: what was wrong before is no reason against an edit.
        string[] reasons = [.. errors.Select(e => e.Message).Except(Errors.Select(e => e.Message))];
        if (reasons.Length > 0)
        {
            return new EditOutcome(reasons);
        }

        history.Add(name, Text, text);
        (Text, Document, Errors) = (text, document, errors);
        Edition++;
        return EditOutcome.Accepted;
    }

    private string? Move(string? name, string? text)
    {
        if (text is not null)
        {
            Adopt(text);
        }

        return name;
    }

    private void Adopt(string text)
    {
        Text = text;
        (Document, Errors) = Read(text, Path);
        Edition++;
    }

    /// <summary>After saving the same text may stand in another file, beside other data.</summary>
    private SaveOutcome ReadAgain(SaveOutcome outcome)
    {
        if (outcome.Result == SaveResult.Saved)
        {
            (Document, Errors) = Read(Text, Path);
        }

        return outcome;
    }
}
