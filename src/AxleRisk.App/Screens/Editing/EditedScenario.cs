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
    private ScenarioText saved;
    private RecoveryFile recovery;

    private EditedScenario(ScenarioText opened, IReadOnlyList<string>? dataFolders = null)
    {
        this.dataFolders = dataFolders;
        saved = opened;
        recovery = new RecoveryFile(opened.Path);
        Text = opened.Text;
        Errors = [];
        Adopt(opened.Text);
        Edition = 0;
        if (recovery.Read() is { } found && found.Text != Text)
        {
            Recovered = found;
        }
    }

    /// <summary>The file's path.</summary>
    public string Path => saved.Path;

    /// <summary>The text as it is now.</summary>
    public string Text { get; private set; }

    /// <summary>The scenario of the text; null while the text is not valid, which only a file opened so can be.</summary>
    public ScenarioDocument? Document { get; private set; }

    /// <summary>What is wrong with the text; empty where nothing is.</summary>
    public IReadOnlyList<ScenarioError> Errors { get; private set; }

    /// <summary>Whether the text is not what the file holds.</summary>
    public bool IsUnsaved => saved.Digest is null || Text != saved.Text;

    /// <summary>A number that changes with every change of the text.</summary>
    public int Edition { get; private set; }

    /// <summary>The name of the step that would be undone; null where there is none.</summary>
    public string? UndoName => history.UndoName;

    /// <summary>The name of the step that would be done again; null where there is none.</summary>
    public string? RedoName => history.RedoName;

    /// <summary>
    /// Changes of an earlier session that were not saved, and whether the scenario was written after them; null where there are
    /// none, or once they were taken or dropped.
    /// </summary>
    public (string Text, bool IsOlder)? Recovered { get; private set; }

    /// <summary>Opens a scenario, also one that is not valid.</summary>
    /// <param name="path">Its path.</param>
    /// <param name="dataFolders">Folders that its data files may lie in besides its own.</param>
    /// <exception cref="ScenarioException">The file cannot be read.</exception>
    public static EditedScenario Open(string path, IReadOnlyList<string>? dataFolders = null) => new(ScenarioText.Open(path), dataFolders);

    /// <summary>A new scenario, not yet saved.</summary>
    public static EditedScenario New(string path, string title) => new(ScenarioText.New(path, NewScenario.Text(title)));

    /// <summary>Makes an edit, or says why it cannot be made; then nothing changes.</summary>
    public EditOutcome Apply(ScenarioEdit edit)
    {
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

    /// <summary>Undoes the last step.</summary>
    /// <returns>Its name; null where there is none.</returns>
    public string? Undo() => Move(history.UndoName, history.Undo());

    /// <summary>Does the step undone last again.</summary>
    /// <returns>Its name; null where there is none.</returns>
    public string? Redo() => Move(history.RedoName, history.Redo());

    /// <summary>Saves to the scenario's own file.</summary>
    /// <param name="overwrite">Whether to save although another program has changed the file.</param>
    public SaveOutcome Save(bool overwrite = false) => !overwrite && saved.ChangedOnDisk()
        ? new SaveOutcome(SaveResult.WouldOverwrite,
            saved.Digest is null ? $"{Path} is there already" : $"{Path} was changed by another program since it was opened")
        : Write(saved);

    /// <summary>
    /// Writes what is not saved to the recovery file, or removes that file where all is saved. To be called some time after
    /// edits.
    /// </summary>
    /// <returns>Null, or why it could not be written.</returns>
    public string? KeepUnsaved()
    {
        if (Recovered is not null)
        {
            // Not before the user has said what is to become of the old one.
            return null;
        }

        if (IsUnsaved)
        {
            return recovery.Write(Text);
        }

        recovery.Delete();
        return null;
    }

    /// <summary>Takes the changes of the earlier session, as a step that can be undone.</summary>
    public void TakeRecovered()
    {
        if (Recovered is { } found)
        {
            Recovered = null;
            history.Add("recovered changes", Text, found.Text);
            Adopt(found.Text);
        }
    }

    /// <summary>Drops the changes of the earlier session, and at leaving without saving those of this one.</summary>
    public void DropRecovered()
    {
        Recovered = null;
        recovery.Delete();
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

    private SaveOutcome Write(ScenarioText target)
    {
        try
        {
            saved = target.Save(Text);
        }
        catch (ScenarioException e)
        {
            return new SaveOutcome(SaveResult.Failed, e.Errors[0].ToString());
        }

        recovery.Delete();
        recovery = new RecoveryFile(Path);
        Recovered = null;
        (Document, Errors) = Read(Text, Path);
        return new SaveOutcome(SaveResult.Saved);
    }
}
