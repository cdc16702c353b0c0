using AxleRisk.App.Screens.Live;
using AxleRisk.App.Studies;
using AxleRisk.Core.Analyses.Measurements;

namespace AxleRisk.App.Screens.Pages;

/// <summary>What knowing more is worth, and which measurement pays.</summary>
internal sealed class MeasurePage(Session session, IDialogs dialogs)
    : AnswerPage<NoQuestion, MeasureResult>(session, dialogs, StudyBook.Measure, "Measure")
{
    public override string ShortName => "Meas";

    public override string Table => "measurements";
}
