using AxleRisk.Core.Damage.BumpStops;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>
/// The steps of the batch kernel beyond plain fatigue over one tile of rows: strikes on the bump stop, and the rates of the
/// further modes of
/// failure per km of the use.
/// </summary>
/// <param name="layout">What there is.</param>
internal sealed class FurtherRates(DamageLayout layout)
{
    // The widest registers hold 16 numbers.
    private readonly AlignedBuffer<float> forces = new(StrikeLoad.Count * 16);
    private readonly AlignedBuffer<float>[] plain = Buffers(layout);
    private readonly AlignedBuffer<float>[] corrugated = Buffers(layout);

    /// <summary>The loads of the surface at work.</summary>
    public LegForces Loads { get; } = new(BatchBuffers.Rows, layout.HasBumpStop);

    /// <summary>What each further mode uses up per km of the use.</summary>
    public AlignedBuffer<float>[] PerKm { get; } = Buffers(layout);

    /// <summary>Begins a tile.</summary>
    public void Begin<T>(DamageColumns columns, int first, int rows)
        where T : struct, IFloatLanes<T>
    {
        Loads.FillRows<T>(columns, first, rows);
        foreach (AlignedBuffer<float> rate in PerKm)
        {
            rate.Span.Clear();
        }
    }

    /// <summary>
    /// Adds the damage of strikes on a surface of the leg at work to the fatigue damage per second of every section, and fills the
    /// rates of the modes there.
    /// </summary>
    public void OnSurface<T>(
        DamageColumns columns, int first, int rows, bool isCorrugated, ref float sums, ref float travel, BatchBuffers tile)
        where T : struct, IFloatLanes<T>
    {
        Loads.FillSurface<T>(ref sums, ref travel, tile.Inputs, rows);
        if (layout.HasBumpStop)
        {
            AddStrikes<T>(rows, isCorrugated, tile.Sections);
        }

        for (int mode = 0; mode < PerKm.Length; mode++)
        {
            columns.Modes[mode].FillPerKm<T>(Loads, first, rows, (isCorrugated ? corrugated : plain)[mode]);
        }
    }

    /// <summary>Adds the leg at work to the rates of the use.</summary>
    public void AddLeg<T>(LegColumns leg, int first, int rows, bool isCorrugated)
        where T : struct, IFloatLanes<T>
    {
        T zero = T.Create(0);
        for (int mode = 0; mode < PerKm.Length; mode++)
        {
            for (int row = 0; row < rows; row += T.Count)
            {
                T rate = T.Load(in plain[mode].At(row));
                if (isCorrugated)
                {
                    T part = ColumnLanes.Load<T>(leg.CorrugatedShare, first + row);
                    rate = T.IfLess(zero, part, (T.Create(1) - part) * rate + part * T.Load(in corrugated[mode].At(row)), rate);
                }

                // A leg that is not driven adds nothing, however fatal it would be.
                T share = ColumnLanes.Load<T>(leg.Share, first + row);
                ref float to = ref PerKm[mode].At(row);
                T.Store(T.Load(in to) + T.IfLess(zero, share, share * rate, share), ref to);
            }
        }
    }

    private void AddStrikes<T>(int rows, bool isCorrugated, SectionBuffers[] sections)
        where T : struct, IFloatLanes<T>
    {
        for (int row = 0; row < rows; row += T.Count)
        {
            var strikes = StrikeLanes<T>.Of(Loads, row);
            if (!strikes.Any)
            {
                continue;
            }

            strikes.StoreForces(ref forces.At(0));
            foreach (SectionBuffers section in sections)
            {
                AddStrikes(strikes, row, section.Curves, section.PerSecondOn(isCorrugated));
            }
        }
    }

    private void AddStrikes<T>(in StrikeLanes<T> strikes, int row, CurveColumns curves, AlignedBuffer<float> perSecond)
        where T : struct, IFloatLanes<T>
    {
        const double RangeOverScale = 1 / (2 * 1.4142135623730950488); // CurveColumns.ScalePerForce is of the Rayleigh scale
        T perForce = T.Load(in curves.ScalePerForce.At(row)) * T.Create((float)RangeOverScale);
        T without = perForce * T.Create((float)StrikeDamage.RangeWithoutStrike) * Loads.Of<T>(LegForces.Force, row);
        T cutOff = T.Load(in curves.CutOffOverKnee.At(row));
        T damage = T.Create(float.NaN);
        for (int form = 0; form < curves.Forms; form++)
        {
            T other = T.Abs(T.Load(in curves.Form.At(row)) - T.Create(form));
            T onForm = form < curves.SlopePairs.Length
                ? strikes.DamagePerSecond(without, perForce, ref forces.At(0), curves.SlopePairs[form], cutOff)
                : strikes.DamagePerSecond(without, perForce, ref forces.At(0), curves.Others[form - curves.SlopePairs.Length], cutOff);
            damage = T.IfLess(other, T.Create(0.5f), onForm, damage);
        }

        // In units of the grid's centre, as the fatigue damage; NaN where single precision has overflowed.
        ref float to = ref perSecond.At(row);
        damage = T.IfLess(damage, T.Create(LegDamages.Greatest), damage, T.Create(float.NaN));
        T.Store(T.MultiplyAdd(damage, T.Create((float)(1 / MomentGrid.CentreHz)), T.Load(in to)), ref to);
    }

    private static AlignedBuffer<float>[] Buffers(DamageLayout layout) =>
        [.. layout.Modes.Select(_ => new AlignedBuffer<float>(BatchBuffers.Rows))];
}
