using AxleRisk.App.Screens.Live;
using AxleRisk.App.Studies;
using AxleRisk.Core.Analyses.Decisions;

namespace AxleRisk.App.Screens.Pages;

/// <summary>The choice between the remedies by what each is expected to cost.</summary>
internal sealed class DecidePage(Session session, IDialogs dialogs)
    : PlannedPage<NoQuestion, DecideResult>(session, dialogs, StudyBook.Decide, "Decide")
{
    public override string ShortName => "Cost";

    public override string Table => "decision";

    protected override bool IsMissing => Session.Document.Scenario.Decision is null;

    protected override string Missing =>
        "This scenario states no decision. A decision is what a failure costs, and which failures count: with it, each remedy is told with its expected net cost, and what its price may be.";
}
