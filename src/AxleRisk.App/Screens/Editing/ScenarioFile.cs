using AxleRisk.Files;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Editing;

/// <summary>
/// The file of a scenario under edit and what stands beside it: what it held last, whether it is another console's, what was
/// kept of changes not saved.
/// </summary>
internal sealed class ScenarioFile
{
    private ScenarioText saved;
    private RecoveryFile recovery;
    private OpenMark? mark;
    private (DateTime Written, long Length) seen;

    /// <summary>Whether what is kept is this session's, to be removed when it is no longer needed.</summary>
    private bool hasKept;

    public ScenarioFile(ScenarioText opened)
    {
        saved = opened;
        recovery = new RecoveryFile(opened.Path);
        seen = Stamp();
        FindRecovered();
    }

    public string Path => saved.Path;

    /// <summary>What the file held when it was read or saved last.</summary>
    public string Text => saved.Text;

    /// <summary>Whether there is no file yet.</summary>
    public bool IsNew => saved.Digest is null;

    /// <summary>The other console that has the file open: here it is only looked at. Null where there is none.</summary>
    public OpenMark.Holder? Holder { get; private set; }

    /// <summary>What has become of the file since it was read or saved, as seen last.</summary>
    public DiskState Disk { get; private set; }

    /// <summary>
    /// Changes of an earlier session that were not saved, and whether the scenario was written after them; null where there are
    /// none, or they are another console's, or were decided upon.
    /// </summary>
    public (string Text, bool IsOlder)? Recovered { get; private set; }

    /// <summary>Whether a text that was kept is there.</summary>
    public bool IsKept => recovery.IsThere;

    /// <summary>Claims the file for this console; where another has it, it becomes the <see cref="Holder"/>.</summary>
    /// <param name="evenIfHeld">Whether to take it from another.</param>
    public void Claim(bool evenIfHeld = false)
    {
        mark ??= new OpenMark(Path);
        bool wasHeld = Holder is not null;
        Holder = mark.Take(evenIfHeld);
        if (Holder is not null)
        {
            // They may be that console's own, and so is the usual place.
            Recovered = null;
            hasKept &= recovery.Path != new RecoveryFile(Path).Path;
        }
        else if (wasHeld)
        {
            FindRecovered();
        }
    }

    /// <summary>Gives the file free for others.</summary>
    public void Release() => mark?.Release();

    /// <summary>Looks whether the file has changed, read only where its time or length has, and whether it is this console's.</summary>
    public void Look()
    {
        if (mark is not null)
        {
            Claim();
        }

        if (Stamp() is var now && (now != seen || Disk is not DiskState.Same))
        {
            seen = now;
            Disk = saved.OnDisk();
        }
    }

    /// <summary>What the file holds now; it is what it held last from then on.</summary>
    /// <exception cref="ScenarioException">It cannot be read.</exception>
    public string Read()
    {
        saved = ScenarioText.Open(Path);
        Seen();
        return saved.Text;
    }

    /// <summary>Saves a text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="overwrite">Whether to save although another program has changed the file or removed it.</param>
    /// <param name="unprotect">Whether to save although the file is marked as not to be written.</param>
    public SaveOutcome Save(string text, bool overwrite = false, bool unprotect = false)
    {
        if (Holder is { } holder)
        {
            return new SaveOutcome(SaveResult.Held, $"{Path} is open in another console ({holder})");
        }

        if (!overwrite)
        {
            Disk = saved.OnDisk();
        }

        return Disk switch
        {
            DiskState.FolderGone => new(SaveResult.Failed, $"{Path} is gone with its folder"),
            DiskState.Changed when !overwrite => new(SaveResult.WouldOverwrite,
                IsNew ? $"{Path} is there already" : $"{Path} was changed by another program since it was opened"),
            DiskState.Gone when !overwrite => new(SaveResult.Gone, $"{Path} was removed since it was opened"),
            _ when !unprotect && saved.IsProtected => new(SaveResult.Protected, $"{Path} is marked as not to be written"),
            _ => Write(saved, text),
        };
    }

    /// <summary>Saves to another file, which is the scenario's from then on.</summary>
    /// <param name="path">The other file.</param>
    /// <param name="text">The text.</param>
    /// <param name="overwrite">Whether to save although the file is there.</param>
    public SaveOutcome SaveAs(string path, string text, bool overwrite = false)
    {
        if (!overwrite && File.Exists(path))
        {
            return new SaveOutcome(SaveResult.WouldOverwrite, $"{path} is there already");
        }

        var next = new OpenMark(path);
        if (mark is not null && next.Take() is { } holder)
        {
            return new SaveOutcome(SaveResult.Held, $"{path} is open in another console ({holder})");
        }

        SaveOutcome outcome = Write(ScenarioText.New(path, text), text);
        OpenMark? free = outcome.Result == SaveResult.Saved ? mark : next;
        if (mark is not null)
        {
            free?.Release();
            mark = outcome.Result == SaveResult.Saved ? next : mark;
        }

        Holder = outcome.Result == SaveResult.Saved ? null : Holder;
        return outcome;
    }

    /// <summary>Keeps a text beside the file; what an earlier session left and nobody has decided upon is moved aside.</summary>
    /// <returns>Null, or why it could not be kept.</returns>
    public string? Keep(string text)
    {
        if (Recovered is not null)
        {
            if (SetRecoveredAside(out _) is { } trouble)
            {
                return trouble;
            }
        }

        if (Holder is not null && recovery.Path == new RecoveryFile(Path).Path)
        {
            // The usual place is the other console's.
            recovery = RecoveryFile.Aside(Path);
        }

        string? failure = recovery.Write(text);
        hasKept |= failure is null;
        return failure;
    }

    /// <summary>Writes a text under a free name beside the file, as an ordinary scenario.</summary>
    /// <param name="text">The text.</param>
    /// <param name="path">That name.</param>
    /// <returns>Null, or why it could not be written.</returns>
    public string? KeepAside(string text, out string path)
    {
        RecoveryFile aside = RecoveryFile.Aside(Path);
        path = aside.Path;
        return aside.Write(text);
    }

    /// <summary>Removes what was kept of this session's changes, and nothing that is another's.</summary>
    public void DropKept()
    {
        if (hasKept)
        {
            recovery.Delete();
            hasKept = false;
        }
    }

    /// <summary>Drops the changes of the earlier session.</summary>
    public void DropRecovered()
    {
        if (Recovered is not null)
        {
            Recovered = null;
            recovery.Delete();
        }
    }

    /// <summary>The changes of the earlier session, to go on with.</summary>
    public string? TakeRecovered()
    {
        string? text = Recovered?.Text;
        hasKept |= text is not null;
        Recovered = null;
        return text;
    }

    /// <summary>Puts the changes of the earlier session under a name of their own.</summary>
    /// <param name="path">That name.</param>
    /// <returns>Null, or why that cannot be.</returns>
    public string? SetRecoveredAside(out string path)
    {
        RecoveryFile aside = RecoveryFile.Aside(Path);
        path = aside.Path;
        if (recovery.MoveTo(aside) is { } trouble)
        {
            return trouble;
        }

        Recovered = null;
        return null;
    }

    private void FindRecovered()
    {
        (string Text, bool IsOlder)? found = recovery.Read();
        hasKept = found is { } kept && kept.Text == Text;
        Recovered = hasKept ? null : found;
    }

    private SaveOutcome Write(ScenarioText target, string text)
    {
        try
        {
            saved = target.Save(text);
        }
        catch (ScenarioException e)
        {
            return new SaveOutcome(SaveResult.Failed, e.Errors[0].ToString());
        }

        Seen();
        DropKept();
        if (Recovered is null || recovery.Path != new RecoveryFile(Path).Path || SetRecoveredAside(out _) is null)
        {
            // What nobody has decided upon stays where it is where that is beside another file.
            recovery = new RecoveryFile(Path);
            Recovered = null;
        }

        return new SaveOutcome(SaveResult.Saved);
    }

    private void Seen() => (seen, Disk) = (Stamp(), DiskState.Same);

    private (DateTime Written, long Length) Stamp()
    {
        var file = new FileInfo(Path);
        return file.Exists ? (file.LastWriteTimeUtc, file.Length) : default;
    }
}
