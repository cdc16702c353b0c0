using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages.Inputs;

namespace AxleRisk.App.Screens.Pages;

/// <summary>The pages of an open scenario, in the order of their keys: 1 to 9, then 0.</summary>
internal static class PageBook
{
    /// <summary>The key of each place.</summary>
    public const string Keys = "1234567890";

    public static IReadOnlyList<Page> Of(Session session, IDialogs dialogs) =>
    [
        new InputsPage(session, dialogs),
        new BaseCasePage(session),
        new RiskPage(session, dialogs),
        new RankingPage(session, dialogs),
    ];
}
