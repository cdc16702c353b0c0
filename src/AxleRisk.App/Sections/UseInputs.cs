using AxleRisk.App.Text;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Scenarios;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Sections;

/// <summary>What is asked, the section that is checked and the legs of use, as the scenario states them.</summary>
internal static class UseInputs
{
    public static IEnumerable<Block> Of(Scenario scenario) =>
    [
        new ItemList(
        [
            $"Required distance: {Figures.Exact(scenario.RequiredKm)} km",
            $"Checked section: {Shape(scenario.Shape)}",
            $"{Weld(scenario.Detail)}, thickness exponent {Exponent(scenario.Detail)}",
            .. scenario.Sections.Select(s =>
                $"Further section {Printable.Line(s.Name)}: {Shape(s.Shape)}; {Weld(s.Detail)}, thickness exponent {Exponent(s.Detail)}"),
            $"Road mix: {Mix(scenario)}",
        ]),
        Legs(scenario),
    ];

    /// <summary>What kind of road a leg has, where it is not like another.</summary>
    public static string Road(char? roadClass) => roadClass is { } letter ? $"class {letter} of ISO 8608" : "roughness stated";

    private static Table Legs(Scenario scenario)
    {
        var table = new TextTable("leg", "<road", "share");
        foreach (Leg leg in scenario.Legs)
        {
            table.Add(leg.Name, Road(leg.RoadClass), $"{Figures.Number(100 * leg.Share)} %");
        }

        return table.Captioned("The legs of the usual use", "leg", "road", "share of the distance");
    }

    private static string Shape(SectionShape shape) => shape switch
    {
        SectionShape.Tube => "round tube",
        SectionShape.Box => "rectangular box",
        _ => "stated section modulus",
    };

    private static string Weld(Detail detail) => detail is { IsOwn: true, Own: { } own }
        ? $"S-N curve: {CurveText.Of(own)}"
        : $"Weld catalogue: {Printable.Line(detail.Catalogue)}, in {(detail.Environment is { } place ? DistributionText.Choice(place) : Surroundings.Air)}";

    private static string Exponent(Detail detail) =>
        detail.ThicknessExponent is { } stated ? Figures.Exact(stated) : detail.IsOwn ? "0" : "of the catalogue";

    private static string Mix(Scenario scenario) => scenario.MixConcentration is { } concentration
        ? $"the shares of the legs are uncertain (Dirichlet, concentration {Figures.Exact(concentration)}), {scenario.MixKnowledge.ToString().ToLowerInvariant()}"
        : "the shares of the legs are certain";
}
