using System.Collections.Immutable;
using AxleRisk.Core.Damage.BumpStops;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Damage.Roads;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Modes;

/// <summary>
/// Puts a scenario's certain values and a block of factor values together into the damage model's columns, in SI units.
/// </summary>
internal sealed class ColumnAssembly : ColumnSteps
{
    private const double KmPerHourToMPerS = 1 / 3.6;

    /// <summary>The distance that rates of wear and corrosion are stated for, km.</summary>
    private const double AgeingUnitKm = 100_000;

    private readonly Scenario scenario;
    private readonly SectionSteps firstSection;

    /// <summary>Plans the columns of a scenario.</summary>
    public ColumnAssembly(Scenario scenario, FactorSet factors, ModeSet modes)
        : base(scenario, factors)
    {
        this.scenario = scenario;
        AddVehicle();
        firstSection = new SectionSteps(this, scenario, 0, modes.Layout.Corrodes);
        for (int section = 0; section < modes.Layout.Sections.Length; section++)
        {
            _ = new SectionSteps(this, scenario, section + 1, modes.Layout.Sections[section].Corrodes);
        }

        if (modes.Layout.HasBumpStop)
        {
            AddBumpStop();
        }

        for (int mode = 0; mode < modes.OfAxle.Length; mode++)
        {
            modes.OfAxle[mode].AddColumns(this, mode);
        }

        for (int leg = 0; leg < scenario.Legs.Length; leg++)
        {
            AddLeg(leg, modes.Layout.HasRatios);
        }
    }

    /// <summary>Adds a column of stress per unit of force at the first section without the detail's concentration.</summary>
    internal void AddNominalStress(Func<DamageColumns, double[]> target) =>
        firstSection.AddStress(target, Source.Sure(1));

    private void AddVehicle()
    {
        const double PerMmToPerM = 1000;
        Add(
            c => c.SprungMassKg, SourceOf(Quantities.SprungMass), SourceOf(Quantities.Payload), SourceOf(Quantities.PayloadShare),
            (own, payload, share, to) =>
            {
                for (int i = 0; i < to.Length; i++)
                {
                    to[i] = own[i] + (payload[i] * share[i]);
                }
            });
        AddScaled(c => c.UnsprungMassKg, 1, SourceOf(Quantities.UnsprungMass));
        Add(
            c => c.SpringNPerM, SourceOf(Quantities.SpringRate), SourceOf(Quantities.HelperSpringRate),
            (spring, helper, to) =>
            {
                for (int i = 0; i < to.Length; i++)
                {
                    to[i] = PerMmToPerM * (spring[i] + helper[i]);
                }
            });
        AddDamper();
        AddScaled(c => c.TyreNPerM, PerMmToPerM, SourceOf(Quantities.TyreRate));
        AddScaled(c => c.TyreDampingNsPerM, PerMmToPerM, SourceOf(Quantities.TyreDamping));
        AddScaled(c => c.OutboardShare, 1, SourceOf(Quantities.OutboardShare));
        AddScaled(c => c.ContactLengthM, 1e-3, SourceOf(Quantities.ContactLength));
        AddScaled(c => c.Waviness, 1, SourceOf(Quantities.Waviness));
    }

    private void AddDamper()
    {
        Source rates = SourceOf(Quantities.DamperRate), conditions = SourceOf(Quantities.DamperCondition);
        if (scenario.Find(Quantities.DamperWear) is null)
        {
            AddScaledProduct(c => c.DamperNsPerM, 1000, rates, conditions);
            return;
        }

        ImmutableArray<AgeingPart> wears = PartsOf(Quantities.DamperWear, scenario.Age?.DamperWear);
        ImmutableArray<Source> sources = [rates, conditions, .. wears.Select(w => SourceOf(w.Rate))];
        bool isSure = sources[2..].All(s => s.IsConstant);
        Add(
            c => c.DamperNsPerM,
            (inputs, ageKm, to) =>
            {
                (double of, double left) = (0, 1);
                for (int i = 0; i < to.Length; i++)
                {
                    double age = AgeKm(ageKm, i);
                    if (!isSure || age != of)
                    {
                        (of, left) = (age, 1);
                        for (int part = 0; part < wears.Length; part++)
                        {
                            left *= Math.Pow(1 - inputs[2 + part][i], wears[part].Driven(age) / AgeingUnitKm);
                        }
                    }

                    to[i] = 1000 * inputs[0][i] * inputs[1][i] * left;
                }
            },
            ages: true, sources);
    }

    // The rates of ageing that have held until now.
    private ImmutableArray<AgeingPart> PartsOf(Quantity quantity, ImmutableArray<AgeingPart>? inHistory) =>
        inHistory ?? (scenario.Find(quantity) is { } rate ? [AgeingPart.Always(rate)] : []);

    private void AddBumpStop()
    {
        Add(
            c => c.BumpClearanceM,
            SourceOf(Quantities.BumpClearance), SourceOf(Quantities.Payload), SourceOf(Quantities.PayloadShare),
            SourceOf(Quantities.SpringRate), SourceOf(Quantities.HelperSpringRate),
            (clearance, payload, share, spring, helper, to) =>
            {
                for (int i = 0; i < to.Length; i++)
                {
                    to[i] = BumpStopClearance.UnderLoad(1e-3 * clearance[i], payload[i] * share[i], 1000 * (spring[i] + helper[i]));
                }
            });
        AddScaled(c => c.BumpStopNPerM, 1000, SourceOf(Quantities.BumpStopRate));
    }

    /// <summary>The distance that the vehicle of a row has driven, km.</summary>
    internal static double AgeKm(double[] km, int row) => km.Length == 0 ? 0 : km[row];

    private void AddLeg(int leg, bool hasRatios)
    {
        Leg stated = scenario.Legs[leg];
        AddScaled(
            c => c.Legs[leg].Share, 1,
            scenario.MixConcentration is null ? Source.Sure(stated.Share) : SourceOf($"legs.{stated.Name}.share", stated.Share));
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
        if (hasRatios)
        {
            Source ofLeg = scenario.Find(Quantities.LegDamageRatio, leg) is { } own ? SourceOf(own) : Source.Sure(1);
            AddScaledProduct(c => c.Legs[leg].DamageRatio, 1, ofLeg, SourceOf(Quantities.DamageRatio));
        }
    }
}
