using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Fleets;

/// <summary>Samples of a scenario with another wall, by the same random numbers.</summary>
internal sealed class WallChange
{
    private readonly LifeModel model;
    private readonly FleetDraw draw;
    private readonly int? column;

    public WallChange(LifeModel model, FleetDraw draw)
    {
        this.model = model;
        this.draw = draw;
        column = model.Factors.Find(WallInput(model.Scenario).Name)?.FirstColumn;
        NominalMm = WallInput(model.Scenario).Value.Nominal;
    }

    /// <summary>The nominal wall as it is, mm.</summary>
    public double NominalMm { get; }

    /// <summary>Whether the wall has a spread.</summary>
    public bool HasSpread => column is not null;

    /// <summary>Whether a section has a wall that decides its strength.</summary>
    public static bool Matters(Scenario scenario) => scenario.Shape != SectionShape.Given;

    /// <summary>A sample with another nominal wall, the deviations from it as they are.</summary>
    public FleetSample WithNominal(double wallMm)
    {
        if (column is not null)
        {
            return Changed(wall => wall + (wallMm - NominalMm));
        }

        Input stated = WallInput(model.Scenario);
        Scenario other = model.Scenario with
        {
            Inputs = [.. model.Scenario.Inputs.Select(i => i == stated ? i with { Value = new Value.Certain(wallMm) } : i)],
        };
        return draw.Draw(new LifeModel(other));
    }

    /// <summary>A sample with the deviations from the nominal wall times a number.</summary>
    public FleetSample WithTolerance(double times) => Changed(wall => NominalMm + (times * (wall - NominalMm)));

    private FleetSample Changed(Func<double, double> change) => draw.Draw(model, null, (values, count) =>
    {
        double[] walls = values[column!.Value];
        for (int row = 0; row < count; row++)
        {
            walls[row] = change(walls[row]);
        }
    });

    private static Input WallInput(Scenario scenario) => scenario.Find(Quantities.Wall)!;
}
