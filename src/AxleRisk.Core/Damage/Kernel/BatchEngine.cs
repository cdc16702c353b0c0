using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>The steps of the batch kernel over one tile of rows.</summary>
internal abstract class BatchEngine
{
    /// <summary>
    /// Fills damage, total and further rates of the tile from the rows <paramref name="first"/> and on, a multiple of every
    /// width. Where nothing of
    /// the ride and the road has changed since the last call (<paramref name="sameRide"/>) its moments are used again.
    /// </summary>
    public abstract void Evaluate(
        DamageColumns columns, int first, int rows, CountingMethod method, CurveColumns curves, BatchBuffers tile, bool sameRide);
}

/// <summary>The steps at one width.</summary>
/// <typeparam name="T">The lanes.</typeparam>
internal sealed class BatchEngine<T> : BatchEngine
    where T : struct, IFloatLanes<T>
{
    /// <inheritdoc/>
    public override void Evaluate(
        DamageColumns columns, int first, int rows, CountingMethod method, CurveColumns curves, BatchBuffers tile, bool sameRide)
    {
        int legs = columns.Legs.Length;
        curves.Fill(columns, first, rows);
        for (int leg = 0; leg < legs; leg++)
        {
            LegScales.Fill<T>(columns, first, rows, leg, curves, tile);
        }

        if (!sameRide)
        {
            RideCoefficients.Fill<T>(columns, first, rows, tile.Inputs);
            for (int leg = 0; leg < legs; leg++)
            {
                LegScales.FillShift<T>(columns, first, rows, leg, tile);
            }

            TileMoments.Fill<T>(legs, rows, tile);
        }

        tile.Further?.Begin<T>(columns, first, rows);
        for (int leg = 0; leg < legs; leg++)
        {
            EvaluateLeg(columns, first, rows, leg, method, curves, tile);
        }

        AddUp(legs, rows, tile);
    }

    private static void EvaluateLeg(
        DamageColumns columns, int first, int rows, int leg, CountingMethod method, CurveColumns curves, BatchBuffers tile)
    {
        LegColumns l = columns.Legs[leg];
        ref float sums = ref tile.Sums.At(4 * leg * BatchBuffers.Rows);
        ref float scale = ref tile.ScaleRoot.At(leg * BatchBuffers.Rows);
        LegDamages.FillPerSecond<T>(method, ref sums, ref scale, rows, curves, tile, tile.PerSecond);
        FurtherRates? further = tile.Further;
        further?.Loads.FillLeg<T>(columns, first, rows, leg);
        further?.OnSurface<T>(
            columns, first, rows, false, ref sums, ref tile.TravelSums.At(2 * leg * BatchBuffers.Rows), curves, tile, tile.PerSecond);
        bool corrugated = l.CorrugatedShare.AsSpan(first, rows).ContainsAnyExcept(0.0);
        if (corrugated)
        {
            CorrugationMoments.Fill<T>(columns, first, rows, leg, tile);
            LegDamages.FillPerSecond<T>(
                method, ref tile.CorrugatedSums.At(0), ref scale, rows, curves, tile, tile.CorrugatedPerSecond);
            further?.OnSurface<T>(
                columns, first, rows, true, ref tile.CorrugatedSums.At(0), ref tile.CorrugatedTravelSums.At(0), curves, tile,
                    tile.CorrugatedPerSecond);
        }

        LegDamages.FillPerKm<T>(l, first, rows, leg, corrugated, curves, tile);
        further?.AddLeg<T>(l, first, rows, corrugated);
    }

    // In double precision, so that the total is the legs' sum to the last bit.
    private static void AddUp(int legs, int rows, BatchBuffers tile)
    {
        Span<double> total = tile.Total.Span[..rows];
        tile.Damage.Span[..rows].CopyTo(total);
        for (int leg = 1; leg < legs; leg++)
        {
            VectorColumns.Add(tile.Damage.Span.Slice(leg * BatchBuffers.Rows, rows), total);
        }
    }
}
