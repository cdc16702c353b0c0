namespace AxleRisk.App.Text;

/// <summary>The size of printed pages.</summary>
internal static class Layout
{
    /// <summary>Characters a line: what every terminal has.</summary>
    public const int Width = 80;
}
