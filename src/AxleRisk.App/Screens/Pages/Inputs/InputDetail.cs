using AxleRisk.App.Charts;
using AxleRisk.App.Screens.Editing;
using AxleRisk.App.Text;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.App.Screens.Pages.Inputs;

/// <summary>The chosen input in full: what it is, what it may be, what holds where it is not stated, and its distribution drawn.</summary>
internal static class InputDetail
{
    private const int LeastTextWidth = 44;

    public static IReadOnlyList<PageLine> Of(InputRow row, string note, Scenario scenario, int width, int height)
    {
        PageLine rule = PageLine.Of(new string('-', width), Ink.Quiet);
        bool hasPicture = row.Quantity is not null && row.Factor is not null && width >= LeastTextWidth + 30;
        int textWidth = hasPicture ? Math.Max(LeastTextWidth, width / 2) : width;
        List<PageLine> text = [.. Text(row, note, textWidth - 2)];
        IReadOnlyList<PageLine> picture = hasPicture
            && scenario.Inputs.FirstOrDefault(i => i.Name == row.Name)?.Value is Value.Uncertain { Distribution: var distribution }
            ? Pictures.Lines(DensityChart.Draw(distribution, row.Unit, width - textWidth - 1, height - 1))
            : [];
        return [rule, .. PageLine.Beside(text.Take(height - 1).ToList(), textWidth, picture).Take(height - 1)];
    }

    private static IEnumerable<PageLine> Text(InputRow row, string note, int width)
    {
        string unit = row.Unit.Length > 0 ? $", {row.Unit}" : "";
        IEnumerable<PageLine> Wrapped(string text, Ink ink) =>
            Wrap.Lines(Printable.Line(text), width, "  ").Select(l => PageLine.Of(l, ink));
        return
        [
            .. Wrapped($"{row.Label} ({row.Name}{unit}): {row.Meaning}", Ink.Plain),
            .. Wrapped($"Now: {row.ValueText}{(row.IsStated ? "" : ", by default" + (row.Factor is null ? "" : " (*)"))}", Ink.Strong),
            .. note.Length > 0 ? Wrapped($"Note: {note}", Ink.Plain) : [],
            .. row.Default is null ? [] : Wrapped($"Default: {row.Default}", Ink.Quiet),
            .. Wrapped($"May be: {row.Allowed}", Ink.Quiet),
        ];
    }
}
