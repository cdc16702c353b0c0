using AxleRisk.App.Text;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Sections;

/// <summary>The sections that say the same in every report.</summary>
internal static class ClosingSections
{
    public static Section Method(RiskResult risk) => new(
        "Method and limits of validity",
        [
            new Subheading("What is computed"), new ItemList([.. MethodText.Steps, ModeText.Failure(risk)], IsNumbered: true),
            new Subheading("What is left out"), new ItemList([.. MethodText.Limits]),
            new Subheading("Terms"), new ItemList([.. MethodText.Terms]),
        ]);

    public static Section Cautions { get; } = new("Cautions", [new Warning(Caution.Sentence), new ItemList([.. Caution.ForReaders])]);
}
