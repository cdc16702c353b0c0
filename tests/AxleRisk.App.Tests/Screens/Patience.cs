using Xunit;

namespace AxleRisk.App.Tests.Screens;

/// <summary>Waits for the background, on the thread that asks: what is tested is a loop of one thread.</summary>
internal static class Patience
{
    public static readonly TimeSpan Longest = TimeSpan.FromSeconds(60);

    public static void Until(Task end) => Assert.True(end.Wait(Longest), "the background did not come to its end");

    public static void Until(ManualResetEventSlim signal) => Assert.True(signal.Wait(Longest), "the signal did not come");
}
