using System.Collections.Immutable;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Studies;

/// <summary>
/// What the events of the legs add, each as one cycle: to the damage of their leg and to the rates of the other modes. The damage ratios
/// multiply it like the rest of the leg's.
/// </summary>
internal sealed class EventRates
{
    private readonly ImmutableArray<Happening> happenings;
    private readonly SnCurve[] curves;

    /// <summary>The events of a scenario.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="assembly">Where its values come from.</param>
    /// <param name="curves">The mean S-N curves.</param>
    public EventRates(Scenario scenario, ColumnSteps assembly, SnCurve[] curves)
    {
        this.curves = curves;
        happenings =
        [
            .. from input in scenario.Inputs
               where input.Quantity == Quantities.EventsPerKm && input.Leg < scenario.Legs.Length // not those of a trip
               let size = scenario.Inputs.First(i => i.Leg == input.Leg && i.Event == input.Event && i.Quantity != Quantities.EventsPerKm)
               select new Happening(
                   input.Leg!.Value, input.Event!, size.Quantity == Quantities.EventMoment,
                   assembly.SourceOf(input), assembly.SourceOf(size),
                   assembly.SourceOf(Quantities.LeverArm), assembly.SourceOf(Quantities.WheelOffset),
                   [.. scenario.Sections.Select(s => assembly.SourceOf(SectionSteps.InputOf(scenario, s, Quantities.LeverArm)!))]),
        ];
    }

    /// <summary>Adds them to the first <paramref name="count"/> rows of damages and rates per km of the use.</summary>
    public void Add(
        double[][] values, int count, DamageColumns columns, double[][] damageByLeg, double[] damagePerKm, double[][] further)
    {
        foreach (Happening happening in happenings)
        {
            double[] share = columns.Legs[happening.Leg].Share;
            for (int row = 0; row < count; row++)
            {
                double perKm = share[row] == 0 ? 0 : share[row] * LifeModel.At(happening.PerKm, values, row);
                if (!(perKm > 0))
                {
                    continue;
                }

                EventLoad load = LoadOf(happening, values, columns, row);
                double damage = perKm * DamageOf(load, columns, row);
                damageByLeg[happening.Leg][row] += damage;
                damagePerKm[row] += damage;
                int sections = Math.Min(further.Length, columns.Layout.Sections.Length);
                for (int section = 0; section < sections; section++)
                {
                    double[] ratio = columns.Legs[happening.Leg].DamageRatio;
                    EventLoad there = happening.IsMoment ? LoadOf(happening, happening.SectionArms[section], values, columns, row) : load;
                    double onSection = perKm * ScalarSections.OfRange(columns, row, section, there.RangeN);
                    further[section][row] += ratio.Length > 0 ? ratio[row] * onSection : onSection;
                }

                for (int mode = sections; mode < further.Length; mode++)
                {
                    further[mode][row] += perKm * columns.Modes[mode - sections].OfEvent(load.PeakN, happening.IsMoment, row);
                }
            }
        }
    }

    /// <summary>
    /// The events of the first row, as evaluated: leg, name, number a km of the leg, damage per km of the use, ratios left out.
    /// </summary>
    public IEnumerable<(int Leg, string Name, double PerKm, double DamagePerKm)> OfFirstRow(double[][] values, DamageColumns columns) =>
        happenings.Select(h =>
        {
            double perKm = LifeModel.At(h.PerKm, values, 0);
            return (h.Leg, h.Name, perKm, columns.Legs[h.Leg].Share[0] * perKm * DamageOf(LoadOf(h, values, columns, 0), columns, 0));
        });

    private static EventLoad LoadOf(Happening happening, double[][] values, DamageColumns columns, int row) =>
        LoadOf(happening, happening.Arm, values, columns, row);

    // A moment is the same in every section; the force that would make it is not.
    private static EventLoad LoadOf(Happening happening, ColumnSteps.Source arm, double[][] values, DamageColumns columns, int row)
    {
        double size = LifeModel.At(happening.Size, values, row);
        return happening.IsMoment
            ? EventLoad.OfMoment(
                columns, row, size, LifeModel.At(arm, values, row) + LifeModel.At(happening.Offset, values, row))
            : EventLoad.OfWheel(columns, row, size);
    }

    private double DamageOf(EventLoad load, DamageColumns columns, int row)
    {
        SnCurve curve = curves[(int)columns.Category[row]];
        double stress = Math.Abs(columns.StressPerForceMPaPerN[row]) * curve.ThicknessFactor(columns.ThicknessMm[row]);
        return MinerSum.OfRange(stress * load.RangeN, curve.Constants);
    }

    private sealed record Happening(
        int Leg, string Name, bool IsMoment, ColumnSteps.Source PerKm, ColumnSteps.Source Size, ColumnSteps.Source Arm,
        ColumnSteps.Source Offset, ImmutableArray<ColumnSteps.Source> SectionArms);
}
