using System.Runtime.CompilerServices;
using Terminal.Gui.Configuration;

namespace AxleRisk.App.Screens.Views;

/// <summary>
/// Keeps the library from reading settings of other programs: it looks in the home folder, in the current folder and in a
/// variable when it is first touched, and a file there would change keys and colours.
/// </summary>
internal static class OwnSettings
{
    /// <summary>Loads the library with nothing to find; before anything else of it is touched.</summary>
    public static void Load()
    {
        string? home = Environment.GetEnvironmentVariable("HOME");
        string folder = Environment.CurrentDirectory;
        try
        {
            Environment.SetEnvironmentVariable("HOME", "/nonexistent");
            Environment.SetEnvironmentVariable("TUI_CONFIG", null);
            Environment.CurrentDirectory = Path.GetPathRoot(folder) ?? folder;
            Touch();
        }
        finally
        {
            Environment.SetEnvironmentVariable("HOME", home);
            Environment.CurrentDirectory = folder;
        }
    }

    // Apart, so that nothing of the library is loaded before the surroundings are hidden from it.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void Touch() => TuiConfigurationBuilder.Shared.ApplyToStaticFacades();
}
