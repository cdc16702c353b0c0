using System.Collections.Immutable;
using AxleRisk.Core.Damage;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Studies;

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
    private readonly double ageKm;
    private readonly ModeSwitches modes;

    /// <summary>Plans the columns of a scenario.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="factors">Its factors.</param>
    /// <param name="ageKm">The distance already driven, for what wears and corrodes with it.</param>
    public ColumnAssembly(Scenario scenario, FactorSet factors, double ageKm = 0)
    {
        this.ageKm = ageKm;
        this.scenario = scenario;
        columnOf = factors.ColumnNames.Select((name, i) => (name, i)).ToDictionary(x => x.name, x => x.i);
        AddVehicle();
        modes = new ModeSet(scenario).Switches;
        AddSection();
        ModeAssembly.Add(this, modes);
        for (int leg = 0; leg < scenario.Legs.Length; leg++)
        {
            AddLeg(leg);
        }
    }

    internal delegate void Formula(ReadOnlySpan<double[]> inputs, double[] target, int count);

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
                steps[s].Formula(inputs[s], steps[s].Target(columns), columns.Capacity);
            }
        }

        return inputs;
    }

    /// <summary>Fills the columns that factors reach, for the first <paramref name="count"/> rows.</summary>
    public void Fill(double[][] values, double[][][] inputs, DamageColumns columns, int count)
    {
        for (int s = 0; s < steps.Count; s++)
        {
            Step step = steps[s];
            if (step.IsConstant)
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

            step.Formula(ofStep, step.Target(columns), count);
        }
    }

    internal void Add(Func<DamageColumns, double[]> target, Formula formula, params ReadOnlySpan<Source> sources) =>
        steps.Add(new Step(target, [.. sources], formula));

    internal void AddScaled(Func<DamageColumns, double[]> target, double scale, Source source) =>
        Add(target, (x, to, n) => VectorColumns.Scale(x[0].AsSpan(0, n), scale, to.AsSpan(0, n)), source);

    private void AddScaledProduct(Func<DamageColumns, double[]> target, double scale, Source first, Source second) =>
        Add(target, (x, to, n) => VectorColumns.ScaledProduct(x[0].AsSpan(0, n), x[1].AsSpan(0, n), scale, to.AsSpan(0, n)), first, second);

    private void AddVehicle()
    {
        const double PerMmToPerM = 1000;
        Add(
            c => c.SprungMassKg,
            (x, to, n) => { for (int i = 0; i < n; i++) { to[i] = x[0][i] + (x[1][i] * x[2][i]); } },
            SourceOf(Quantities.SprungMass), SourceOf(Quantities.Payload), SourceOf(Quantities.PayloadShare));
        AddScaled(c => c.UnsprungMassKg, 1, SourceOf(Quantities.UnsprungMass));
        Add(
            c => c.SpringNPerM,
            (x, to, n) => { for (int i = 0; i < n; i++) { to[i] = PerMmToPerM * (x[0][i] + x[1][i]); } },
            SourceOf(Quantities.SpringRate), SourceOf(Quantities.HelperSpringRate));
        double age = ageKm / ModeAssembly.AgeingUnitKm;
        if (age > 0)
        {
            Add(
                c => c.DamperNsPerM,
                (x, to, n) => { for (int i = 0; i < n; i++) { to[i] = PerMmToPerM * x[0][i] * x[1][i] * Math.Pow(1 - x[2][i], age); } },
                SourceOf(Quantities.DamperRate), SourceOf(Quantities.DamperCondition), SourceOf(Quantities.DamperWear));
        }
        else
        {
            AddScaledProduct(c => c.DamperNsPerM, PerMmToPerM, SourceOf(Quantities.DamperRate), SourceOf(Quantities.DamperCondition));
        }

        AddScaled(c => c.TyreNPerM, PerMmToPerM, SourceOf(Quantities.TyreRate));
        AddScaled(c => c.TyreDampingNsPerM, PerMmToPerM, SourceOf(Quantities.TyreDamping));
        AddScaled(c => c.OutboardShare, 1, SourceOf(Quantities.OutboardShare));
        AddScaled(c => c.ContactLengthM, 1e-3, SourceOf(Quantities.ContactLength));
        AddScaled(c => c.Waviness, 1, SourceOf(Quantities.Waviness));
        Source category = columnOf.TryGetValue("detail.category", out int column) ? new Source(column, 0) : new Source(null, 0);
        AddScaled(c => c.Category, 1, category);
    }

    private void AddSection()
    {
        AddScaled(c => c.ThicknessMm, 1, SourceOf(Quantities.Wall));

        // Columns: stress factor, concentration, arm, offset, then what the section's shape needs.
        Source[] common =
        [
            SourceOf(Quantities.StressFactor), SourceOf(Quantities.StressConcentration),
            SourceOf(Quantities.LeverArm), SourceOf(Quantities.WheelOffset),
        ];
        Source[] wall = [SourceOf(Quantities.Wall), SourceOf(Quantities.CorrosionLoss)];
        double age = ageKm / ModeAssembly.AgeingUnitKm;
        Source[] rate = age > 0 ? [SourceOf(Quantities.CorrosionRate)] : [];
        switch (scenario.Shape)
        {
            case SectionShape.Tube:
                AddStress(
                    (x, to, n) => { for (int i = 0; i < n; i++) { to[i] = SectionModulus.Tube(x[6][i], Left(x, i, 7)); } },
                    [.. common, .. wall, SourceOf(Quantities.OutsideDiameter), .. rate]);
                break;
            case SectionShape.Box:
                AddStress(
                    (x, to, n) => { for (int i = 0; i < n; i++) { to[i] = SectionModulus.Box(x[6][i], x[7][i], Left(x, i, 8)); } },
                    [.. common, .. wall, SourceOf(Quantities.BoxWidth), SourceOf(Quantities.BoxHeight), .. rate]);
                break;
            default:
                AddStress((x, to, n) => x[4].AsSpan(0, n).CopyTo(to), [.. common, SourceOf(Quantities.SectionModulus)]);
                break;
        }

        // The wall that is left: new, less the loss so far, less what the distance since has taken.
        double Left(ReadOnlySpan<double[]> x, int i, int rateAt) =>
            age > 0 ? x[4][i] - x[5][i] - age * x[rateAt][i] : x[4][i] - x[5][i];
    }

    private void AddStress(Formula moduliMm3, Source[] sources)
    {
        if (modes.Yield)
        {
            Add(
                c => c.Modes.NominalStressMPaPerN,
                (x, to, n) =>
                {
                    moduliMm3(x, to, n);
                    for (int i = 0; i < n; i++)
                    {
                        to[i] = BendingStress.PerForce(x[0][i], x[2][i] + x[3][i], to[i]);
                    }
                },
                sources);
        }

        Add(
            c => c.StressPerForceMPaPerN,
            (x, to, n) =>
            {
                moduliMm3(x, to, n);
                for (int i = 0; i < n; i++)
                {
                    to[i] = BendingStress.PerForce(x[0][i] * x[1][i], x[2][i] + x[3][i], to[i]);
                }
            },
            sources);
    }

    private void AddLeg(int leg)
    {
        Leg stated = scenario.Legs[leg];
        Source share = columnOf.TryGetValue($"legs.{stated.Name}.share", out int column) ? new Source(column, 0) : new Source(null, stated.Share);
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

    private sealed record Step(Func<DamageColumns, double[]> Target, ImmutableArray<Source> Sources, Formula Formula)
    {
        public bool IsConstant { get; } = Sources.All(s => s.IsConstant);
    }
}
