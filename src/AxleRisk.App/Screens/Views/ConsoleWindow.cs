using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Screens.Shell;
using Terminal.Gui.Input;
using Terminal.Gui.ViewBase;
using Terminal.Gui.Views;

namespace AxleRisk.App.Screens.Views;

/// <summary>The window of the console: draws the lines of the state and hands it keys and clicks.</summary>
internal sealed class ConsoleWindow : Runnable
{
    /// <summary>The window is drawn anew no more often than this while a study runs.</summary>
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(100);

    private readonly ConsoleState state;
    private readonly TimeProvider clock;
    private int drawn;
    private int drawnNews;
    private long drawnAt;

    public ConsoleWindow(ConsoleState state, TimeProvider clock)
    {
        this.state = state;
        this.clock = clock;
        Title = Product.Name;
        CanFocus = true;
        Width = Dim.Fill();
        Height = Dim.Fill();
    }

    /// <summary>Looks whether a study has moved on; called in every turn of the application's loop.</summary>
    public void Poll()
    {
        state.Keep();
        if (state.News != drawnNews || (state.Revision != drawn && clock.GetElapsedTime(drawnAt) >= Pause))
        {
            SetNeedsDraw();
        }
    }

    /// <inheritdoc/>
    protected override bool OnKeyDown(Key key)
    {
        if (KeyMap.Of(key) is not { } known)
        {
            return base.OnKeyDown(key);
        }

        state.Press(known);
        AfterInput();
        return true;
    }

    /// <inheritdoc/>
    protected override bool OnMouseEvent(Mouse mouse)
    {
        if (mouse.Flags.HasFlag(MouseFlags.LeftButtonClicked) && mouse.Position is { } place)
        {
            state.Click(place.X, place.Y);
        }
        else if (mouse.Flags.HasFlag(MouseFlags.WheeledDown) || mouse.Flags.HasFlag(MouseFlags.WheeledUp))
        {
            state.Wheel(mouse.Flags.HasFlag(MouseFlags.WheeledDown) ? 3 : -3);
        }
        else
        {
            return base.OnMouseEvent(mouse);
        }

        AfterInput();
        return true;
    }

    /// <inheritdoc/>
    protected override bool OnDrawingContent(DrawContext? context)
    {
        (drawn, drawnNews) = (state.Revision, state.News);
        drawnAt = clock.GetTimestamp();
        (int width, int height) = (Viewport.Width, Viewport.Height);
        if (width <= 0 || height <= 0)
        {
            return true;
        }

        IReadOnlyList<PageLine> lines = state.Lines(width, height);
        for (int y = 0; y < Math.Min(height, lines.Count); y++)
        {
            LinesView.Draw(this, y, lines[y]);
        }

        return true;
    }

    private void AfterInput()
    {
        Look.ApplyCharacters();
        SetNeedsDraw();
        if (state.HasQuit)
        {
            App!.RequestStop(this);
        }
    }
}
