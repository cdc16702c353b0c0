using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Learning;

/// <summary>One thread's part of a <see cref="LearnModel"/>.</summary>
internal sealed class LearnWorker
{
    private readonly LearnModel model;
    private readonly Workspace workspace;
    private readonly double[][] values;
    private readonly double[][] scores;
    private readonly double[][] unknownValues;
    private readonly CurveFiller filler;
    private readonly Workspace[] gaugeSpaces;
    private readonly ImmutableArray<LookedRecords?> looked;
    private readonly double[] gaugeLn = new double[StudySettings.BlockSize];

    public LearnWorker(LearnModel model)
    {
        this.model = model;
        const int block = StudySettings.BlockSize;
        workspace = model.Model.CreateWorkspace(block);
        values = model.Model.CreateColumns(block);
        scores = model.Model.CreateColumns(block);
        unknownValues = model.Model.CreateColumns(block);
        filler = new CurveFiller(model.Model, model.Unknowns, block);
        gaugeSpaces = [.. model.Gauges.Select(g => g.CreateWorkspace(block))];
        looked = [.. model.Sets.Select(s => s.Records.Any(r => r.Look is not null) ? new LookedRecords(model.Model, s.Records) : null)];
        if (filler.IsCounted && looked.Any(l => l is not null))
        {
            throw new StudyException(
                "records with looks for the crack need a Miner sum and an S-N scatter that are lognormal and independent of all else, and not both unknown");
        }

        Curves = [.. model.NodesOfSets.Select(n => new LifeCurve(n))];
    }

    /// <summary>The curves of each set, of the row last evaluated.</summary>
    public ImmutableArray<LifeCurve> Curves { get; }

    /// <summary>The unknown values of the block last evaluated, by column and row.</summary>
    public double[][] UnknownValues => unknownValues;

    /// <summary>Evaluates some rows of one combination.</summary>
    /// <param name="combination">The combination of states.</param>
    /// <param name="z">The coordinates, by coordinate and row.</param>
    /// <param name="first">The first row.</param>
    /// <param name="count">Rows, at most a block.</param>
    /// <param name="logLikelihood">Takes ln likelihood by row.</param>
    /// <param name="each">Is called with each row's number, its curves standing; null for nothing.</param>
    public void Evaluate(int combination, double[][] z, int first, int count, Span<double> logLikelihood, Action<int>? each = null)
    {
        model.Unknowns.Map(combination, z, first, count, scores, unknownValues);
        Span<double> log = logLikelihood[..count];
        log.Clear();
        for (int row = 0; row < count; row++)
        {
            log[row] = 0;
            filler.Begin(unknownValues, row);
            for (int set = 0; set < model.Sets.Length; set++)
            {
                if (set == 0 || !model.Sets[set].Records.IsEmpty)
                {
                    looked[set]?.Begin(filler.HeldScale, filler.HeldChances);
                    Fill(set, row);
                    log[row] += LogOfSet(set, row);
                }
            }

            each?.Invoke(row);
        }

        AddGauges(count, log);
    }

    /// <summary>ln likelihood of one vehicle of a record of a set, given the row last evaluated.</summary>
    public double LogOf(int set, FieldRecord record) => record.Look is null ? LogOf(record, Curves[set]) : looked[set]!.LogOf(record);

    /// <summary>ln likelihood of one vehicle of a record, given a curve.</summary>
    public static double LogOf(FieldRecord record, LifeCurve curve)
    {
        if (record.IsExact)
        {
            return Math.Log(curve.At(record.ToKm).Density);
        }

        if (!record.HasFailed)
        {
            return Math.Log(curve.At(record.FromKm).Whole);
        }

        (double failedBefore, double wholeBefore, _) = curve.At(record.FromKm);
        (double failed, double whole, _) = curve.At(record.ToKm);
        return Math.Log(failedBefore > 0.5 ? wholeBefore - whole : failed - failedBefore);
    }

    private void Fill(int place, int row)
    {
        (VehicleSet set, LifeCurve curve) = (model.Sets[place], Curves[place]);
        curve.Clear();
        for (int first = 0; first < set.Rows; first += StudySettings.BlockSize)
        {
            int count = Math.Min(StudySettings.BlockSize, set.Rows - first);
            for (int column = 0; column < values.Length; column++)
            {
                Span<double> to = values[column].AsSpan(0, count);
                if (model.Unknowns.IsUnknown[column])
                {
                    to.Fill(unknownValues[column][row]);
                }
                else
                {
                    set.Values[column].AsSpan(first, count).CopyTo(to);
                }
            }

            model.Model.Evaluate(values, count, workspace);
            filler.Add(workspace, 0, count, 1.0 / set.Rows, curve);
            looked[place]?.Add(workspace, values, count, 1.0 / set.Rows);
        }
    }

    private double LogOfSet(int place, int row)
    {
        VehicleSet set = model.Sets[place];
        double log = 0, vehicles = 0;
        foreach (FieldRecord record in set.Records)
        {
            log += record.Vehicles * LogOf(place, record);
            vehicles += record.Vehicles;
        }

        double measured = set.LogOfMeasured(unknownValues, row);
        return measured == 0 ? log : log + (vehicles * measured);
    }

    private void AddGauges(int count, Span<double> log)
    {
        for (int g = 0; g < gaugeSpaces.Length; g++)
        {
            // What a run states is put into the columns, and taken out again for the next.
            double[][] changed = [.. unknownValues.Select(c => c.AsSpan(0, count).ToArray())];
            model.Gauges[g].FillLn(changed, count, gaugeSpaces[g], gaugeLn);
            for (int row = 0; row < count; row++)
            {
                log[row] += model.Gauges[g].Log(gaugeLn[row]);
            }
        }
    }
}
