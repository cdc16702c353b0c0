using AxleRisk.App.Text;

namespace AxleRisk.App.Screens.Pages;

/// <summary>What to add to the scenario's file where a page finds nothing to work on.</summary>
/// <param name="Before">What it is and how to add it.</param>
/// <param name="File">The lines to add.</param>
/// <param name="After">What else is to be known.</param>
internal sealed record FileExample(string Before, IReadOnlyList<string> File, string After)
{
    /// <summary>The example with its sentences around it.</summary>
    public IReadOnlyList<PageLine> Lines(int width)
    {
        int room = Math.Min(width, Layout.Width) - 2;
        return
        [
            PageLine.Empty,
            .. Wrap.Lines(Before, room, "").Select(l => PageLine.Of("  " + l)), PageLine.Empty,
            .. File.Select(l => PageLine.Of("    " + l, Ink.Strong)), PageLine.Empty,
            .. Wrap.Lines(After, room, "").Select(l => PageLine.Of("  " + l)),
        ];
    }
}
