using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Learning;

/// <summary>
/// One gauge run as the model sees it: its leg alone, at the speed and load stated. ln of what was measured is normal about ln of
/// what is computed; the ratio of true to computed damage is an input of the scenario, and learned as any other (Kennedy and O'Hagan
/// 2001).
/// </summary>
internal sealed class GaugeModel
{
    private readonly GaugeRun run;
    private readonly LifeModel model;
    private readonly (int Column, double Value)[] stated;

    /// <summary>The model of a run.</summary>
    public GaugeModel(LifeModel whole, GaugeRun run)
    {
        this.run = run;
        Scenario scenario = whole.Scenario;
        model = new LifeModel(OfLeg(scenario, run), whole.Factors);
        stated = [.. run.Stated.Select(s => (whole.Factors.ColumnNames.IndexOf(s.Factor), s.Value)).Where(s => s.Item1 >= 0)];
    }

    /// <summary>The run.</summary>
    public GaugeRun Run => run;

    /// <summary>Buffers of one thread.</summary>
    public Workspace CreateWorkspace(int capacity) => model.CreateWorkspace(capacity);

    /// <summary>ln of the computed damage per km or stress RMS of each row.</summary>
    /// <param name="values">Unknown values by column and row, what varies at its median; columns that the run states are
    /// overwritten.</param>
    /// <param name="count">Rows.</param>
    /// <param name="workspace">One of <see cref="CreateWorkspace"/>.</param>
    /// <param name="ln">Takes the logarithms.</param>
    public void FillLn(double[][] values, int count, Workspace workspace, Span<double> ln)
    {
        foreach ((int column, double value) in stated)
        {
            values[column].AsSpan(0, count).Fill(value);
        }

        Span<double> new_ = stackalloc double[1];
        if (run.DamagePerKm is not null)
        {
            var ages = new double[count];
            model.EvaluateAtAges(values, count, ages, workspace);
            for (int row = 0; row < count; row++)
            {
                ln[row] = Math.Log(workspace.DamageByLeg[0][row]);
            }

            return;
        }

        // The details of a leg are told of one row at a time.
        double[][] one = [.. values.Select(_ => new double[1])];
        for (int row = 0; row < count; row++)
        {
            for (int column = 0; column < one.Length; column++)
            {
                one[column][0] = values[column][row];
            }

            model.EvaluateAtAges(one, 1, new_, workspace);
            ln[row] = Math.Log(model.Axle.DetailsOfFirstRow(workspace.Damage, strikes: false)[0].Plain.RmsMPa);
        }
    }

    /// <summary>ln likelihood of what was measured, ln of the computed being given.</summary>
    public double Log(double lnComputed)
    {
        double error = (Math.Log(run.DamagePerKm ?? run.StressRmsMPa!.Value) - lnComputed) / run.StandardDeviationOfLn;
        return (-0.5 * error * error) - Math.Log(run.StandardDeviationOfLn) - 0.918938533204673;
    }

    private static Scenario OfLeg(Scenario scenario, GaugeRun run)
    {
        Input[] inputs =
        [
            .. scenario.Inputs.Where(i => i.Leg is null || i.Leg == run.Leg).Select(i => i.Leg is null ? i : i with { Leg = 0 }),
        ];

        // A stated speed is the speed that was driven, whatever the fleet's drivers do.
        bool hasSpeed = run.Stated.Any(s => inputs.Any(i => i.Name == s.Factor && i.Quantity == Quantities.Speed));
        return scenario with
        {
            Legs = [scenario.Legs[run.Leg] with { Share = 1 }],
            MixConcentration = null,
            Inputs =
            [
                .. inputs.Select(i => run.Stated.FirstOrDefault(s => s.Factor == i.Name) is { } s && i.Value is Value.Certain
                    ? i with { Value = new Value.Certain(s.Value) }
                    : hasSpeed && i.Quantity == Quantities.SpeedFactor ? i with { Value = new Value.Certain(1) } : i),
            ],
            Correlations = [],
            History = [], // a gauge is read on a vehicle as the scenario states it
            Trip = null,
            Fleet = null,
            Remedies = [],
        };
    }
}
