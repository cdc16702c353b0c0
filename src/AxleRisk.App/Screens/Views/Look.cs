using System.Text;
using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Text;
using Terminal.Gui.Configuration;
using Terminal.Gui.Drawing;
using Terminal.Gui.ViewBase;
using Attr = Terminal.Gui.Drawing.Attribute;

namespace AxleRisk.App.Screens.Views;

/// <summary>How the console looks: sixteen colours, or none of them; every distinction is also made by words, signs or place.</summary>
internal static class Look
{
    /// <summary>For texts that are not labels of ours: an underscore in them is an underscore.</summary>
    public static readonly Rune NoHotKey = (Rune)0xFFFF;

    private static bool isMonochrome;

    /// <summary>Sets the look; before the application is created.</summary>
    public static void Apply(bool monochrome)
    {
        isMonochrome = monochrome;
        Scheme scheme = monochrome ? Monochrome() : Coloured();
        foreach (string name in new[] { "Base", "Accent", "Menu", "Dialog", "Error" })
        {
            SchemeManager.AddScheme(name, scheme);
        }

        ApplyCharacters();
        ButtonSettings.Current = ButtonSettings.Current with { DefaultShadow = ShadowStyles.None };
        DialogSettings.Current = DialogSettings.Current with { DefaultShadow = ShadowStyles.None, DefaultBorderStyle = LineStyle.Single };
        MessageBoxSettings.Current = MessageBoxSettings.Current with { DefaultBorderStyle = LineStyle.Single };
    }

    /// <summary>Has the windows of the library framed by the characters that are shown now.</summary>
    public static void ApplyCharacters()
    {
        (Rune cross, Rune line, Rune bar) = ((Rune)'+', (Rune)'-', (Rune)'|');
        GlyphSettings.Current = !Characters.ArePlain ? GlyphSettings.Default : GlyphSettings.Default with
        {
            HLine = line,
            VLine = bar,
            ULCorner = cross,
            URCorner = cross,
            LLCorner = cross,
            LRCorner = cross,
            LeftTee = bar,
            RightTee = bar,
            TopTee = line,
            BottomTee = line,
            Cross = cross,
            HalfLeftLine = line,
            HalfRightLine = line,
            HalfTopLine = bar,
            HalfBottomLine = bar,
            LeftBracket = (Rune)'[',
            RightBracket = (Rune)']',
            LeftDefaultIndicator = (Rune)'>',
            RightDefaultIndicator = (Rune)'<',
            LeftArrow = (Rune)'<',
            RightArrow = (Rune)'>',
            UpArrow = (Rune)'^',
            DownArrow = (Rune)'v',
            HorizontalEllipsis = (Rune)'.',
            Dot = (Rune)'.',
        };
    }

    /// <summary>The attribute of an ink.</summary>
    public static Attr Of(Ink ink) => isMonochrome
        ? ink switch
        {
            Ink.Heading or Ink.Strong => Plain(TextStyle.Bold),
            Ink.Warning => Plain(TextStyle.Bold | TextStyle.Underline),
            Ink.Chosen => Plain(TextStyle.Bold | TextStyle.Reverse),
            Ink.Bar => Plain(TextStyle.Reverse),
            _ => Plain(TextStyle.None),
        }
        : ink switch
        {
            Ink.Heading => Coloured(ColorName16.White, ColorName16.Black, TextStyle.Bold),
            Ink.Strong => Coloured(ColorName16.BrightCyan, ColorName16.Black, TextStyle.Bold),
            Ink.Mark => Coloured(ColorName16.BrightGreen, ColorName16.Black),
            Ink.Warning => Coloured(ColorName16.BrightYellow, ColorName16.Black, TextStyle.Bold),
            Ink.Quiet => Coloured(ColorName16.Gray, ColorName16.Black),
            Ink.Chosen => Coloured(ColorName16.Black, ColorName16.BrightCyan, TextStyle.Bold),
            Ink.Bar => Coloured(ColorName16.Black, ColorName16.Gray),
            _ => Coloured(ColorName16.White, ColorName16.Black),
        };

    private static Attr Plain(TextStyle style) => new(Color.None, Color.None, style);

    private static Attr Coloured(ColorName16 foreground, ColorName16 background, TextStyle style = TextStyle.None) =>
        new(new Color(foreground), new Color(background), style);

    private static Scheme Coloured() => Filled(
        Of(Ink.Plain), Of(Ink.Chosen), hot: Of(Ink.Strong), editable: Coloured(ColorName16.Black, ColorName16.Gray),
            disabled: Of(Ink.Quiet));

    private static Scheme Monochrome() => Filled(
        Plain(TextStyle.None), Plain(TextStyle.Reverse), hot: Plain(TextStyle.Underline), editable: Plain(TextStyle.Underline),
            disabled: Plain(TextStyle.None));

    /// <summary>A scheme of every role: the library derives those left out in colours of its own.</summary>
    private static Scheme Filled(Attr plain, Attr chosen, Attr hot, Attr editable, Attr disabled) => new(plain)
    {
        HotNormal = hot,
        Focus = chosen,
        HotFocus = chosen,
        Active = chosen,
        HotActive = chosen,
        Highlight = chosen,
        Editable = editable,
        ReadOnly = plain,
        Disabled = disabled,
    };
}
