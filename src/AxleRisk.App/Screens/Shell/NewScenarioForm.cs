using AxleRisk.App.Screens.Forms;
using AxleRisk.App.Screens.Pages;
using AxleRisk.App.Screens.Pages.Inputs;
using AxleRisk.App.Text;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Shell;

/// <summary>The questions for a new scenario; every one has an answer to begin with.</summary>
internal sealed class NewScenarioForm : Form
{
    private const int You = 0, Vehicle = 1, Section = 2, Weld = 3, Roads = 4, Distance = 5, Uncertain = 6, File = 7;

    /// <summary>Asks.</summary>
    /// <param name="path">The name of the file to begin with.</param>
    public NewScenarioForm(string path)
    {
        StartingPoint first = StartingPoint.First;
        Arrange(
        [
            Choice("it is about", StartingPurpose.All.Select(p => p.Label),
                "What the scenario is for. It begins with the tables that this needs: a fleet under warranty, a journey leg by leg, or what was found on a broken axle."),
            Choice("vehicle", StartingVehicle.All.Select(v => v.Label), "Masses, springs, dampers and tyres to begin with."),
            Choice("axle section", StartingSection.All.Select(s => s.Label), "The checked section of the housing; sizes outside, then the wall."),
            Choice("weld", StartingWeld.All.Select(w => w.Label), "The weld at the checked section; it gives the S-N curve of DNV-RP-C203."),
            Choice("roads", StartingRoads.All.Select(r => r.Label), "Where it drives: kinds of road with their shares, roughness and speed."),
            new("distance", Show(first.Km), "km") { Help = "The distance that the axle must last.", IsNumber = true },
            Choice("uncertain", StartingPoint.Uncertainties,
                "What differs between vehicles or is not known. build: springs, dampers, tyres, wall and weld. Scatter of the material is always in."),
            new("file", path) { Help = "The file that it will be saved in with Ctrl+S; a name that is not there yet." },
        ]);
        Check();
    }

    public override string Title => "A new scenario";

    /// <summary>Where it will be saved.</summary>
    public string Path => Fields[File].Text.Trim() is var name && name.Contains('.') ? name : name + ".toml";

    /// <summary>The answers.</summary>
    public StartingPoint Answers => new(
        $"{Printable.Capital(Fields[Vehicle].Text)}: {Fields[You].Text}", Purpose, StartingVehicle.All.First(v => v.Label == Fields[Vehicle].Text),
        StartingSection.All.First(s => s.Label == Fields[Section].Text), StartingWeld.All.First(w => w.Label == Fields[Weld].Text),
        StartingRoads.All.First(r => r.Label == Fields[Roads].Text), Km ?? Purpose.Km, Fields[Uncertain].Text);

    private StartingPurpose Purpose => StartingPurpose.All.First(p => p.Label == Fields[You].Text);

    private double? Km => InputEditor.Number(Fields[Distance].Text) is > 0 and var km ? km : null;

    public override IReadOnlyList<PageLine> Picture(int width, int height)
    {
        string[] paragraphs =
        [
            Fields[Math.Clamp(Focused, 0, Fields.Count - 1)].Help,
            "Every number it begins with is invented and marked in the file as a starting value: replace them by your own. Enter takes all answers as they stand.",
        ];
        return [.. paragraphs.SelectMany(p => Wrap.Lines(p, Math.Max(10, width), "").Append("")).Select(l => PageLine.Of(l, Ink.Quiet))];
    }

    protected override void Changed(int field)
    {
        if (field == You)
        {
            // What the reader has answered stays.
            foreach ((int place, string usual) in new[]
                { (Vehicle, Purpose.Vehicle.Label), (Roads, Purpose.Roads.Label), (Distance, Show(Purpose.Km)) })
            {
                Fields[place].Text = Fields[place].IsTouched ? Fields[place].Text : usual;
            }

            Arrange([.. Fields]);
        }

        Check();
    }

    private static string Show(double km) => km.ToString("0");

    private static FormField Choice(string label, IEnumerable<string> answers, string help)
    {
        string[] all = [.. answers];
        return new FormField(label, all[0], "", all) { Help = help };
    }

    private void Check()
    {
        Fields[Distance].Refusal = Km is null ? "a distance above 0, such as 150000" : null;
        Fields[File].Refusal = Fields[File].Text.Trim().Length == 0 ? "a name for the file" : NewFile.WhyNot(Path);
    }
}
