namespace AxleRisk.App.Screens.Editing;

/// <summary>The steps that can be undone and done again, each with its name and the text before and after it.</summary>
internal sealed class EditHistory
{
    /// <summary>More steps than anyone undoes; the oldest go.</summary>
    public const int Most = 500;

    private readonly List<Step> steps = [];
    private int done;

    /// <summary>The name of the step that would be undone; null where there is none.</summary>
    public string? UndoName => done > 0 ? steps[done - 1].Name : null;

    /// <summary>The name of the step that would be done again; null where there is none.</summary>
    public string? RedoName => done < steps.Count ? steps[done].Name : null;

    /// <summary>Notes a step that was done; what was undone before it is gone.</summary>
    public void Add(string name, string before, string after)
    {
        steps.RemoveRange(done, steps.Count - done);
        steps.Add(new Step(name, before, after));
        if (steps.Count > Most)
        {
            steps.RemoveAt(0);
        }

        done = steps.Count;
    }

    /// <summary>The text before the last step; null where there is none.</summary>
    public string? Undo() => done > 0 ? steps[--done].Before : null;

    /// <summary>The text after the step undone last; null where there is none.</summary>
    public string? Redo() => done < steps.Count ? steps[done++].After : null;

    private sealed record Step(string Name, string Before, string After);
}
