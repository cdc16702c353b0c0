using System.Collections.Immutable;
using AxleRisk.Core.Damage.BumpStops;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Damage.Roads;
using AxleRisk.Core.Damage.Sections;
using AxleRisk.Core.Numerics.Vectors;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Modes;

/// <summary>
/// Puts a scenario's certain values and a block of factor values together into the damage model's columns, in SI units.
/// A column that no factor reaches is filled once, when a worker starts.
/// </summary>
internal sealed class ColumnAssembly
{
    private const double KmPerHourToMPerS = 1 / 3.6;
    private readonly Scenario scenario;
    private readonly Dictionary<string, int> columnOf;
    private readonly List<Step> steps = [];

    /// <summary>The distance that rates of wear and corrosion are stated for, km.</summary>
    private const double AgeingUnitKm = 100_000;

    /// <summary>Plans the columns of a scenario.</summary>
    public ColumnAssembly(Scenario scenario, FactorSet factors, ModeSet modes)
    {
        this.scenario = scenario;
        columnOf = factors.ColumnNames.Select((name, i) => (name, i)).ToDictionary(x => x.name, x => x.i);
        AddVehicle();
        AddScaled(c => c.ThicknessMm, 1, SourceOf(Quantities.Wall));
        AddStress(c => c.StressPerForceMPaPerN, isNominal: false);
        if (modes.Layout.HasBumpStop)
        {
            AddBumpStop();
        }

        if (modes.Layout.Corrodes)
        {
            AddWallLife();
        }

        for (int mode = 0; mode < modes.Further.Length; mode++)
        {
            modes.Further[mode].AddColumns(this, mode);
        }

        for (int leg = 0; leg < scenario.Legs.Length; leg++)
        {
            AddLeg(leg);
        }
    }

    /// <summary>
    /// Fills a column from others, of vehicles that have driven a distance each; an empty column of ages stands for new ones.
    /// </summary>
    internal delegate void Formula(ReadOnlySpan<double[]> inputs, double[] target, int count, double[] ageKm);

    /// <summary>The source of one quantity's column; the default where the scenario does not state it.</summary>
    public Source SourceOf(Quantity quantity, int? leg = null)
    {
        if (scenario.Find(quantity, leg) is not { } input)
        {
            return new Source(null, quantity.Default?.Nominal ?? 0);
        }

        // The factors may be another scenario's, in which it is uncertain.
        return input.Value is Value.Uncertain && columnOf.TryGetValue(input.Name, out int column)
            ? new Source(column, 0)
            : new Source(null, input.Value.Nominal);
    }

    /// <summary>Fills the columns that are the same in every evaluation.</summary>
    /// <returns>The input columns of every step, for one thread: the constant ones filled, room for the others.</returns>
    public double[][][] Prepare(DamageColumns columns)
    {
        double[][][] inputs = [.. steps.Select(s => s.Sources.Select(x => x.Column is null ? x.Filled(columns.Capacity) : []).ToArray())];
        for (int s = 0; s < steps.Count; s++)
        {
            if (steps[s].IsConstant)
            {
                steps[s].Formula(inputs[s], steps[s].Target(columns), columns.Capacity, []);
            }
        }

        return inputs;
    }

    /// <summary>
    /// Fills the columns that factors or age reach, for the first <paramref name="count"/> rows of vehicles that are new.
    /// </summary>
    public void Fill(double[][] values, double[][][] inputs, DamageColumns columns, int count) =>
        Fill(values, inputs, columns, count, [], agedAlone: false);

    /// <summary>Fills anew the columns that change with age, of vehicles that have driven <paramref name="ageKm"/>, by row.</summary>
    public void FillAged(double[][] values, double[][][] inputs, DamageColumns columns, int count, double[] ageKm) =>
        Fill(values, inputs, columns, count, ageKm, agedAlone: true);

    private void Fill(double[][] values, double[][][] inputs, DamageColumns columns, int count, double[] ageKm, bool agedAlone)
    {
        for (int s = 0; s < steps.Count; s++)
        {
            Step step = steps[s];
            if (agedAlone ? !step.Ages : step.IsConstant)
            {
                continue;
            }

            double[][] ofStep = inputs[s];
            for (int i = 0; i < ofStep.Length; i++)
            {
                if (step.Sources[i].Column is { } column)
                {
                    ofStep[i] = values[column];
                }
            }

            step.Formula(ofStep, step.Target(columns), count, ageKm);
        }
    }

    internal void Add(Func<DamageColumns, double[]> target, Formula formula, params ReadOnlySpan<Source> sources) =>
        Add(target, formula, false, sources);

    private void Add(Func<DamageColumns, double[]> target, Formula formula, bool ages, params ReadOnlySpan<Source> sources) =>
        steps.Add(new Step(target, [.. sources], formula, ages));

    internal void AddScaled(Func<DamageColumns, double[]> target, double scale, Source source) =>
        Add(target, (x, to, n, _) => VectorColumns.Scale(x[0].AsSpan(0, n), scale, to.AsSpan(0, n)), source);

    private void AddScaledProduct(Func<DamageColumns, double[]> target, double scale, Source first, Source second) =>
        Add(target, (x, to, n, _) => VectorColumns.ScaledProduct(x[0].AsSpan(0, n), x[1].AsSpan(0, n), scale, to.AsSpan(0, n)), first,
            second);

    private void AddVehicle()
    {
        const double PerMmToPerM = 1000;
        Add(
            c => c.SprungMassKg,
            (x, to, n, _) => { for (int i = 0; i < n; i++) { to[i] = x[0][i] + (x[1][i] * x[2][i]); } },
            SourceOf(Quantities.SprungMass), SourceOf(Quantities.Payload), SourceOf(Quantities.PayloadShare));
        AddScaled(c => c.UnsprungMassKg, 1, SourceOf(Quantities.UnsprungMass));
        Add(
            c => c.SpringNPerM,
            (x, to, n, _) => { for (int i = 0; i < n; i++) { to[i] = PerMmToPerM * (x[0][i] + x[1][i]); } },
            SourceOf(Quantities.SpringRate), SourceOf(Quantities.HelperSpringRate));
        AddDamper();
        AddScaled(c => c.TyreNPerM, PerMmToPerM, SourceOf(Quantities.TyreRate));
        AddScaled(c => c.TyreDampingNsPerM, PerMmToPerM, SourceOf(Quantities.TyreDamping));
        AddScaled(c => c.OutboardShare, 1, SourceOf(Quantities.OutboardShare));
        AddScaled(c => c.ContactLengthM, 1e-3, SourceOf(Quantities.ContactLength));
        AddScaled(c => c.Waviness, 1, SourceOf(Quantities.Waviness));
        Source category = columnOf.TryGetValue("detail.category", out int column) ? new Source(column, 0) : new Source(null, 0);
        AddScaled(c => c.Category, 1, category);
    }

    private void AddDamper()
    {
        if (scenario.Find(Quantities.DamperWear) is null)
        {
            AddScaledProduct(c => c.DamperNsPerM, 1000, SourceOf(Quantities.DamperRate), SourceOf(Quantities.DamperCondition));
            return;
        }

        Source wear = SourceOf(Quantities.DamperWear);
        Add(
            c => c.DamperNsPerM,
            (x, to, n, km) =>
            {
                (double of, double left) = (0, 1);
                for (int i = 0; i < n; i++)
                {
                    double age = Age(km, i);
                    if (!wear.IsConstant || age != of)
                    {
                        (of, left) = (age, Math.Pow(1 - x[2][i], age));
                    }

                    to[i] = 1000 * x[0][i] * x[1][i] * left;
                }
            },
            ages: true, SourceOf(Quantities.DamperRate), SourceOf(Quantities.DamperCondition), wear);
    }

    private void AddBumpStop()
    {
        Add(
            c => c.BumpClearanceM,
            (x, to, n, _) =>
            {
                for (int i = 0; i < n; i++)
                {
                    to[i] = BumpStopClearance.UnderLoad(1e-3 * x[0][i], x[1][i] * x[2][i], 1000 * (x[3][i] + x[4][i]));
                }
            },
            SourceOf(Quantities.BumpClearance), SourceOf(Quantities.Payload), SourceOf(Quantities.PayloadShare),
            SourceOf(Quantities.SpringRate), SourceOf(Quantities.HelperSpringRate));
        AddScaled(c => c.BumpStopNPerM, 1000, SourceOf(Quantities.BumpStopRate));
    }

    private void AddWallLife() => Add(
        c => c.WallLastsKm,
        (x, to, n, _) =>
        {
            for (int i = 0; i < n; i++)
            {
                to[i] = x[2][i] == 0 ? double.PositiveInfinity : (x[0][i] - x[1][i]) / x[2][i] * AgeingUnitKm;
            }
        },
        SourceOf(Quantities.Wall), SourceOf(Quantities.CorrosionLoss), SourceOf(Quantities.CorrosionRate));

    /// <summary>Adds a column of stress per unit of force, that of the detail or without its concentration.</summary>
    internal void AddStress(Func<DamageColumns, double[]> target, bool isNominal)
    {
        // Columns: stress factor, concentration, arm, offset, then what the section's shape needs.
        Source[] common =
        [
            SourceOf(Quantities.StressFactor), isNominal ? new Source(null, 1) : SourceOf(Quantities.StressConcentration),
            SourceOf(Quantities.LeverArm), SourceOf(Quantities.WheelOffset),
        ];
        Source[] wall = [.. common, SourceOf(Quantities.Wall), SourceOf(Quantities.CorrosionLoss), SourceOf(Quantities.CorrosionRate)];
        bool corrodes = scenario.Find(Quantities.CorrosionRate) is not null;
        switch (scenario.Shape)
        {
            case SectionShape.Tube:
                Add(
                    (x, i, left) => SectionModulus.Tube(x[7][i], left), corrodes,
                    [.. wall, SourceOf(Quantities.OutsideDiameter)]);
                break;
            case SectionShape.Box:
                Add(
                    (x, i, left) => SectionModulus.Box(x[7][i], x[8][i], left), corrodes,
                    [.. wall, SourceOf(Quantities.BoxWidth), SourceOf(Quantities.BoxHeight)]);
                break;
            default:
                Add((x, i, _) => x[4][i], false, [.. common, SourceOf(Quantities.SectionModulus)]);
                break;
        }

        void Add(Modulus modulusMm3, bool ages, Source[] sources) => this.Add(
            target,
            (x, to, n, km) =>
            {
                for (int i = 0; i < n; i++)
                {
                    // The wall that is left: new, less the loss so far, less what the distance since has taken.
                    double left = !ages ? x.Length > 5 ? x[4][i] - x[5][i] : 0 : x[4][i] - x[5][i] - Age(km, i) * x[6][i];
                    to[i] = BendingStress.PerForce(x[0][i] * x[1][i], x[2][i] + x[3][i], modulusMm3(x, i, left));
                }
            },
            ages, sources);
    }

    private static double Age(double[] km, int row) => km.Length == 0 ? 0 : km[row] / AgeingUnitKm;

    private delegate double Modulus(ReadOnlySpan<double[]> inputs, int row, double wallLeftMm);

    private void AddLeg(int leg)
    {
        Leg stated = scenario.Legs[leg];
        Source share = columnOf.TryGetValue($"legs.{stated.Name}.share", out int column)
            ? new Source(column, 0) : new Source(null, stated.Share);
        AddScaled(c => c.Legs[leg].Share, 1, share);
        AddScaledProduct(
            c => c.Legs[leg].SpeedMPerS, KmPerHourToMPerS, SourceOf(Quantities.Speed, leg), SourceOf(Quantities.SpeedFactor));
        if (stated.RoadClass is { } letter)
        {
            double mean = RoadClass.Find(letter)!.MeanM3;
            AddScaledProduct(
                c => c.Legs[leg].RoughnessM3, mean, SourceOf(Quantities.RoughnessWithinClass, leg), SourceOf(Quantities.RoughnessFactor));
        }
        else
        {
            AddScaledProduct(
                c => c.Legs[leg].RoughnessM3, 1e-6, SourceOf(Quantities.Roughness, leg), SourceOf(Quantities.RoughnessFactor));
        }

        AddScaled(c => c.Legs[leg].CorrugatedShare, 1, SourceOf(Quantities.CorrugatedShare, leg));
        AddScaled(c => c.Legs[leg].CorrugationWavelengthM, 1, SourceOf(Quantities.CorrugationWavelength, leg));
        AddScaled(c => c.Legs[leg].CorrugationRmsM, 1e-3, SourceOf(Quantities.CorrugationRms, leg));
    }

    /// <summary>Where a quantity's values come from: a column of the sample, or one number for every row.</summary>
    internal readonly struct Source(int? column, double constant)
    {
        public bool IsConstant => column is null;

        public int? Column => column;

        public double Constant => constant;

        public double[] Filled(int rows)
        {
            var filled = new double[rows];
            Array.Fill(filled, constant);
            return filled;
        }
    }

    private sealed record Step(Func<DamageColumns, double[]> Target, ImmutableArray<Source> Sources, Formula Formula, bool Ages)
    {
        public bool IsConstant { get; } = !Ages && Sources.All(s => s.IsConstant);
    }
}
