using AxleRisk.App.Text;

namespace AxleRisk.App.Charts;

/// <summary>Values of pairs in a grid: the digits tell, the role only underlines. Rows and columns are numbered alike.</summary>
internal static class HeatGrid
{
    private const int Cell = 5;

    /// <summary>Draws the grid.</summary>
    /// <param name="names">The names of the rows, which are those of the columns.</param>
    /// <param name="values">The values by row and column; NaN for none.</param>
    /// <param name="show">Writes a value in up to four characters.</param>
    /// <param name="strong">From which size on a value is strong; from a third of it on it is worth a look.</param>
    /// <param name="width">The width of the picture; columns that do not fit are left out, and it says so.</param>
    /// <param name="height">Its height.</param>
    public static Picture Draw(IReadOnlyList<string> names, Func<int, int, double> values, Func<double, string> show, double strong,
        int width, int height)
    {
        int name = Math.Min(names.Select(n => n.Length).DefaultIfEmpty(0).Max(), Math.Max(8, width / 2));
        int left = name + 4;
        int columns = Math.Min(names.Count, Math.Max(0, (width - left) / Cell));
        int rows = Math.Min(names.Count, height - 1);
        if (columns == 0 || rows < 1)
        {
            return Picture.Saying(width, height, names.Count == 0 ? "nothing to draw" : "too small for a chart");
        }

        var picture = new Picture(width, height);
        for (int c = 0; c < columns; c++)
        {
            picture.Text(left + (Cell * c), 0, $"{c + 1}".PadLeft(Cell), ChartRole.Axis);
        }

        if (columns < names.Count)
        {
            picture.Text(0, 0, TextTable.Shorten($"{columns} of {names.Count}", left));
        }

        for (int r = 0; r < rows; r++)
        {
            picture.Text(0, r + 1, $"{r + 1,2} ", ChartRole.Axis);
            picture.Text(3, r + 1, TextTable.Shorten(names[r], name));
            for (int c = 0; c < columns; c++)
            {
                double value = values(r, c);
                string text = double.IsNaN(value) ? "·" : show(value);
                picture.Text(left + (Cell * c), r + 1, text.PadLeft(Cell), Role(Math.Abs(value), strong));
            }
        }

        return picture;
    }

    private static ChartRole Role(double size, double strong) =>
        double.IsNaN(size) ? ChartRole.Axis : size >= strong ? ChartRole.Strong : size >= strong / 3 ? ChartRole.Mark : ChartRole.Text;
}
