using System.Collections.Immutable;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Damage.Sections;
using AxleRisk.Core.Scenarios;
using Source = AxleRisk.Core.Modes.ColumnSteps.Source;

namespace AxleRisk.Core.Modes;

/// <summary>The steps that fill the columns of one checked section: the first, or a further one with inputs of its own.</summary>
internal sealed class SectionSteps
{
    /// <summary>The distance that rates of wear and corrosion are stated for, km.</summary>
    private const double AgeingUnitKm = 100_000;

    private readonly ColumnAssembly to;
    private readonly Scenario scenario;
    private readonly CheckedSection? section;
    private readonly int place;
    private readonly Source modulus;

    /// <summary>Adds the steps.</summary>
    /// <param name="to">Takes them.</param>
    /// <param name="scenario">The scenario.</param>
    /// <param name="place">The place of the section, 0 for the first.</param>
    /// <param name="corrodes">Whether its wall gets thinner with distance.</param>
    public SectionSteps(ColumnAssembly to, Scenario scenario, int place, bool corrodes)
    {
        (this.to, this.scenario, this.place) = (to, scenario, place);
        section = place == 0 ? null : scenario.Sections[place - 1];
        AddCurve();
        to.AddScaled(c => c.Sections[place].ThicknessMm, 1, SourceOf(Quantities.Wall));
        modulus = AddModulus(corrodes);
        AddStress(c => c.Sections[place].StressPerForceMPaPerN, SourceOf(Quantities.StressConcentration));
        if (corrodes)
        {
            AddWallLife();
        }
    }

    /// <summary>The input of a section for a quantity of the first: its own where it has one, else the one that all share.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="section">The section; null for the first.</param>
    /// <param name="quantity">The quantity, as the first section has it.</param>
    public static Input? InputOf(Scenario scenario, CheckedSection? section, Quantity quantity) =>
        (section is not null && Quantities.OfSection(quantity.Key) is { } own ? scenario.Find(own, section) : null)
        ?? (section is null || Shares(quantity) ? scenario.Find(quantity) : null);

    /// <summary>Adds a column of stress per unit of force with some concentration of it.</summary>
    public void AddStress(Func<DamageColumns, double[]> target, Source concentrations) => to.Add(
        target, SourceOf(Quantities.StressFactor), concentrations, SourceOf(Quantities.LeverArm), SourceOf(Quantities.WheelOffset), modulus,
        (factor, concentration, arm, offset, moduli, filled) =>
        {
            for (int i = 0; i < filled.Length; i++)
            {
                filled[i] = BendingStress.PerForce(factor[i] * concentration[i], arm[i] + offset[i], moduli[i]);
            }
        });

    // What an axle has once, and what a section that states nothing shares with the first.
    private static bool Shares(Quantity quantity) => quantity == Quantities.WheelOffset || quantity == Quantities.CorrosionLoss
        || quantity == Quantities.CorrosionRate;

    private Source SourceOf(Quantity quantity) => InputOf(scenario, section, quantity) is { } input
        ? to.SourceOf(input) : Source.Sure(quantity.Default?.Nominal ?? 0);

    // The place among the curves of all categories in all environments: DetailCurves.All. A word that is certain has no column.
    private void AddCurve()
    {
        Detail detail = section?.Detail ?? scenario.Detail;
        Source PlaceOf(string name) => detail.Find(name) is { Only: null }
            ? to.SourceOf(section?.NameOf(name[(name.LastIndexOf('.') + 1)..]) ?? name, 0) : Source.Sure(0);
        int environments = detail.Environment?.Words.Length ?? 1;
        to.Add(
            c => c.Sections[place].Category, PlaceOf(Change.CategoryName), PlaceOf(Change.EnvironmentName),
            (category, environment, filled) =>
            {
                for (int i = 0; i < filled.Length; i++)
                {
                    filled[i] = (category[i] * environments) + environment[i];
                }
            });
    }

    // The rates of corrosion that have held until now, the one in force last.
    private ImmutableArray<AgeingPart> Rates()
    {
        ImmutableArray<AgeingPart> own = section is null || scenario.Age is not { } age ? [] : age.OfSections[place - 1];
        return !own.IsEmpty ? own
            : scenario.Age?.Corrosion is { IsEmpty: false } ofAxle && !HasOwnRate ? ofAxle
            : InputOf(scenario, section, Quantities.CorrosionRate) is { } rate ? [AgeingPart.Always(rate)] : [];
    }

    private bool HasOwnRate => section is not null
        && Quantities.OfSection(Quantities.CorrosionRate.Key) is { } own && scenario.Find(own, section) is not null;

    private ImmutableArray<Source> WallSources(ImmutableArray<AgeingPart> rates) =>
        [SourceOf(Quantities.Wall), SourceOf(Quantities.CorrosionLoss), .. rates.Select(r => to.SourceOf(r.Rate))];

    private static double WallLeft(double[][] inputs, ImmutableArray<AgeingPart> rates, double ageKm, int row)
    {
        double left = inputs[0][row] - inputs[1][row];
        for (int part = 0; part < rates.Length; part++)
        {
            left -= rates[part].Driven(ageKm) / AgeingUnitKm * inputs[2 + part][row];
        }

        return left;
    }

    private void AddWallLife()
    {
        ImmutableArray<AgeingPart> rates = Rates();
        AgeingPart now = rates[^1];
        to.Add(
            c => c.Sections[place].WallLastsKm,
            (inputs, _, filled) =>
            {
                for (int i = 0; i < filled.Length; i++)
                {
                    double rate = inputs[^1][i];
                    filled[i] = rate == 0 ? double.PositiveInfinity
                        : now.FromKm + (WallLeft(inputs, rates, now.FromKm, i) / rate * AgeingUnitKm);
                }
            },
            ages: false, WallSources(rates));
    }

    // Of the wall that is left where the shape has one.
    private Source AddModulus(bool corrodes)
    {
        SectionShape shape = section?.Shape ?? scenario.Shape;
        if (shape is not (SectionShape.Tube or SectionShape.Box))
        {
            return SourceOf(Quantities.SectionModulus);
        }

        ImmutableArray<AgeingPart> rates = Rates();
        Source walls = to.Add(
            c => c.Sections[place].WallLeftMm,
            (inputs, ageKm, filled) =>
            {
                for (int i = 0; i < filled.Length; i++)
                {
                    filled[i] = WallLeft(inputs, rates, ColumnAssembly.AgeKm(ageKm, i), i);
                }
            },
            ages: corrodes, WallSources(rates));
        if (shape == SectionShape.Tube)
        {
            return to.Add(c => c.Sections[place].SectionModulusMm3, SourceOf(Quantities.OutsideDiameter), walls, (diameter, left, filled) =>
            {
                for (int i = 0; i < filled.Length; i++)
                {
                    filled[i] = SectionModulus.Tube(diameter[i], left[i]);
                }
            });
        }

        return to.Add(
            c => c.Sections[place].SectionModulusMm3, SourceOf(Quantities.BoxWidth), SourceOf(Quantities.BoxHeight), walls,
            (width, height, left, filled) =>
            {
                for (int i = 0; i < filled.Length; i++)
                {
                    filled[i] = SectionModulus.Box(width[i], height[i], left[i]);
                }
            });
    }
}
