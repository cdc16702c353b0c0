using AxleRisk.App.Screens.Live;
using AxleRisk.App.Screens.Pages.Causes;
using AxleRisk.App.Screens.Pages.Combinations;
using AxleRisk.App.Screens.Pages.Inputs;
using AxleRisk.App.Screens.Pages.Ranking;
using AxleRisk.App.Screens.Pages.Remedies;

namespace AxleRisk.App.Screens.Pages;

/// <summary>The pages of an open scenario, in the order of their keys: those of the top row.</summary>
internal static class PageBook
{
    /// <summary>The key of each place.</summary>
    public const string Keys = "1234567890-=dv";

    public static IReadOnlyList<Page> Of(Session session, IDialogs dialogs)
    {
        var combinations = new CombinationsPage(session, dialogs);
        return
        [
            new InputsPage(session, dialogs),
            new BaseCasePage(session),
            new RiskPage(session, dialogs),
            new RankingPage(session, dialogs, combinations),
            combinations,
            new CausesPage(session, dialogs),
            new RemediesPage(session, dialogs),
            new TripPage(session, dialogs),
            new FleetPage(session, dialogs),
            new ReportPage(session, dialogs),
            new DecidePage(session, dialogs),
            new MeasurePage(session, dialogs),
            new DataPage(session, dialogs),
            new InspectPage(session, dialogs),
        ];
    }
}
