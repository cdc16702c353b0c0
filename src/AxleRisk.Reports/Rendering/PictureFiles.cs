using AxleRisk.Reports.Content;

namespace AxleRisk.Reports.Rendering;

/// <summary>Where a report's pictures lie beside its Markdown.</summary>
public static class PictureFiles
{
    /// <summary>The path of a picture's file, in the notation of links.</summary>
    public static string PathOf(Picture picture) => $"figures/{picture.Name}.png";
}
