using AxleRisk.Core.Numerics;

namespace AxleRisk.Core.Damage;

/// <summary>The steps of the batch kernel over one tile of rows.</summary>
internal abstract class BatchEngine
{
    /// <summary>Fills damage and total of the tile from the rows <paramref name="first"/> and on, a multiple of every width.</summary>
    public abstract void Evaluate(
        DamageColumns columns, int first, int rows, CountingMethod method, CurveColumns curves, BatchBuffers tile);
}

/// <summary>The steps at one width.</summary>
/// <typeparam name="TFloat">The lanes of the moments.</typeparam>
/// <typeparam name="TDouble">The lanes of the damage.</typeparam>
internal sealed class BatchEngine<TFloat, TDouble> : BatchEngine
    where TFloat : struct, IFloatLanes<TFloat>
    where TDouble : struct, IDoubleLanes<TDouble>
{
    /// <inheritdoc/>
    public override void Evaluate(
        DamageColumns columns, int first, int rows, CountingMethod method, CurveColumns curves, BatchBuffers tile)
    {
        int legs = columns.Legs.Length;
        curves.Fill(columns, first, rows);
        RideCoefficients.Fill<TFloat>(columns, first, rows, tile.Inputs);
        for (int leg = 0; leg < legs; leg++)
        {
            LegScales.FillShift<TFloat>(columns, first, rows, leg, tile);
            LegScales.Fill<TDouble>(columns, first, rows, leg, curves, tile);
        }

        TileMoments.Fill<TFloat>(legs, rows, tile);
        for (int leg = 0; leg < legs; leg++)
            EvaluateLeg(columns, first, rows, leg, method, curves, tile);
        AddUp(legs, rows, tile);
    }

    private static void EvaluateLeg(
        DamageColumns columns, int first, int rows, int leg, CountingMethod method, CurveColumns curves, BatchBuffers tile)
    {
        LegColumns l = columns.Legs[leg];
        ref float sums = ref tile.Sums.At(4 * leg * BatchBuffers.Rows);
        ref double scale = ref tile.MomentScale.At(leg * BatchBuffers.Rows);
        LegDamages.FillPerSecond<TDouble>(method, ref sums, ref scale, rows, curves, tile, tile.PerSecond);
        bool corrugated = l.CorrugatedShare.AsSpan(first, rows).ContainsAnyExcept(0.0);
        if (corrugated)
        {
            CorrugationMoments.Fill<TFloat>(columns, first, rows, leg, tile);
            LegDamages.FillPerSecond<TDouble>(
                method, ref tile.CorrugatedSums.At(0), ref scale, rows, curves, tile, tile.CorrugatedPerSecond);
        }

        LegDamages.FillPerKm<TDouble>(l, first, rows, leg, corrugated, curves, tile);
    }

    private static void AddUp(int legs, int rows, BatchBuffers tile)
    {
        for (int row = 0; row < rows; row += TDouble.Count)
        {
            TDouble total = TDouble.Create(0);
            for (int leg = 0; leg < legs; leg++)
                total += TDouble.Load(in tile.Damage.At(leg * BatchBuffers.Rows + row));
            TDouble.Store(total, ref tile.Total.At(row));
        }
    }
}
