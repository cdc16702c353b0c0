namespace AxleRisk.App.Screens.Pages;

/// <summary>
/// One page of the console as a plain state: it answers keys and gives lines. The frame draws them, scrolls them and shows
/// the keys. To add a page, derive from this or from <see cref="StudyPage{T}"/> and name it in <see cref="PageBook"/>.
/// </summary>
internal abstract class Page
{
    /// <summary>Its name on the tabs.</summary>
    public abstract string Name { get; }

    /// <summary>A shorter name for narrow windows.</summary>
    public virtual string ShortName => Name;

    /// <summary>Whether the scenario asks what the page answers; where not, a narrow window has room for its key alone.</summary>
    public virtual bool IsAsked => true;

    /// <summary>What its numbers mean and what they do not, in the reader's words: paragraphs.</summary>
    public abstract IReadOnlyList<string> Explanation { get; }

    /// <summary>The keys that work on it now, the most useful first among those of one worth; those of the frame are added.</summary>
    public virtual IReadOnlyList<KeyHint> Keys => [];

    /// <summary>The line below the tabs: what is going on.</summary>
    public virtual PageLine Status => PageLine.Empty;

    /// <summary>A number that changes whenever the page would show something else; read ten times a second.</summary>
    public virtual int Revision => 0;

    /// <summary>The answers and ends of its own study, which are drawn at once.</summary>
    public virtual int News => 0;

    /// <summary>Its own figure for the top line; null where the failure probability of the scenario stands there.</summary>
    public virtual PageFigure? Figure => null;

    /// <summary>The table of the scenario that the page is about, in the file: where the list of tables opens.</summary>
    public virtual string Table => "use.legs";

    /// <summary>The index of the line that must stay in sight, where a row is chosen; null otherwise, and the arrow keys scroll.</summary>
    public virtual int? LineInSight => null;

    /// <summary>Its lines for a window of this size. They may be longer than the window is high: then it scrolls.</summary>
    public abstract IReadOnlyList<PageLine> Lines(int width, int height);

    /// <summary>Answers a key.</summary>
    /// <returns>Whether the page knew the key.</returns>
    public virtual bool Press(PageKey key) => false;

    /// <summary>Answers a click on a line (index into <see cref="Lines"/>) and column.</summary>
    public virtual bool Click(int line, int column) => false;

    /// <summary>Answers the mouse wheel, where the page scrolls by itself.</summary>
    /// <param name="lines">Lines downward.</param>
    /// <returns>Whether it did; otherwise the frame scrolls.</returns>
    public virtual bool Wheel(int lines) => false;

    /// <summary>The page was brought to the front.</summary>
    public virtual void Enter()
    {
    }
}
