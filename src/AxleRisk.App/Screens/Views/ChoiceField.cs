using Terminal.Gui.Drawing;
using Terminal.Gui.Input;
using Terminal.Gui.ViewBase;

namespace AxleRisk.App.Screens.Views;

/// <summary>A choice in one line: left and right go through the answers, a letter goes to the next answer that begins with it.</summary>
internal sealed class ChoiceField : View
{
    private readonly IReadOnlyList<string> choices;
    private int chosen;

    public ChoiceField(IReadOnlyList<string> choices, string initial)
    {
        this.choices = choices;
        chosen = Math.Max(0, choices.ToList().IndexOf(initial));
        CanFocus = true;
        Height = 1;
    }

    /// <summary>Told what was chosen.</summary>
    public event Action<string>? Chosen;

    /// <summary>Told when the reader asks what the field is.</summary>
    public event Action? Asked;

    /// <inheritdoc/>
    protected override bool OnKeyDown(Key key)
    {
        if (key == (Key)'?')
        {
            Asked?.Invoke();
            return true;
        }

        int to = key == Key.CursorLeft ? chosen - 1
            : key == Key.CursorRight || key == Key.Space ? chosen + 1
            : key.AsRune.Value >= ' ' && !key.IsCtrl && !key.IsAlt ? Next(char.ToLowerInvariant((char)key.AsRune.Value))
            : -2;
        if (to == -2)
        {
            return base.OnKeyDown(key);
        }

        Choose(to);
        return true;
    }

    /// <inheritdoc/>
    protected override bool OnMouseEvent(Mouse mouse)
    {
        if (!mouse.Flags.HasFlag(MouseFlags.LeftButtonClicked))
        {
            return base.OnMouseEvent(mouse);
        }

        SetFocus();
        Choose(mouse.Position is { X: < 2 } ? chosen - 1 : chosen + 1);
        return true;
    }

    /// <inheritdoc/>
    protected override bool OnDrawingContent(DrawContext? context)
    {
        SetAttribute(GetAttributeForRole(HasFocus ? VisualRole.Focus : VisualRole.Editable));
        int room = Math.Max(0, Viewport.Width - 4);
        string text = choices[chosen].Length <= room ? choices[chosen].PadRight(room) : choices[chosen][..room];
        AddStr(0, 0, $"< {text} >");
        return true;
    }

    private int Next(char letter)
    {
        for (int i = 1; i <= choices.Count; i++)
        {
            int place = (chosen + i) % choices.Count;
            if (char.ToLowerInvariant(choices[place][0]) == letter)
            {
                return place;
            }
        }

        return chosen;
    }

    private void Choose(int place)
    {
        place = (place + choices.Count) % choices.Count;
        if (place != chosen)
        {
            chosen = place;
            SetNeedsDraw();
            Chosen?.Invoke(choices[chosen]);
        }
    }
}
