using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>The steps of the batch kernel over one tile of rows.</summary>
internal abstract class BatchEngine
{
    /// <summary>
    /// Fills damage and total of every section and the further rates of the tile from the rows <paramref name="first"/> and on, a
    /// multiple of every width. Where nothing of the ride and the road has changed since the last call
    /// (<paramref name="sameRide"/>) its moments are used again.
    /// </summary>
    public abstract void Evaluate(DamageColumns columns, int first, int rows, CountingMethod method, BatchBuffers tile, bool sameRide);
}

/// <summary>The steps at one width.</summary>
/// <typeparam name="T">The lanes.</typeparam>
internal sealed class BatchEngine<T> : BatchEngine
    where T : struct, IFloatLanes<T>
{
    /// <inheritdoc/>
    public override void Evaluate(DamageColumns columns, int first, int rows, CountingMethod method, BatchBuffers tile, bool sameRide)
    {
        int legs = columns.Legs.Length;
        for (int section = 0; section < tile.Sections.Length; section++)
        {
            SectionBuffers to = tile.Sections[section];
            to.Curves.Fill(columns.Sections[section], first, rows);
            if (section > 0)
            {
                to.FillRatios(tile.Sections[0], rows);
            }

            for (int leg = 0; leg < legs && (section == 0 || to.IsCountedAnew); leg++)
            {
                LegScales.Fill<T>(columns, first, rows, leg, to);
            }
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
            EvaluateLeg(columns, first, rows, leg, method, tile);
        }

        foreach (SectionBuffers section in tile.Sections)
        {
            AddUp(legs, rows, section);
        }
    }

    private static void EvaluateLeg(DamageColumns columns, int first, int rows, int leg, CountingMethod method, BatchBuffers tile)
    {
        LegColumns l = columns.Legs[leg];
        FurtherRates? further = tile.Further;
        further?.Loads.FillLeg<T>(columns, first, rows, leg);
        ref float travel = ref tile.TravelSums.At(2 * leg * BatchBuffers.Rows);
        OnSurface(columns, first, rows, leg, false, method, ref tile.Sums.At(4 * leg * BatchBuffers.Rows), ref travel, tile);
        bool corrugated = l.CorrugatedShare.AsSpan(first, rows).ContainsAnyExcept(0.0);
        if (corrugated)
        {
            CorrugationMoments.Fill<T>(columns, first, rows, leg, tile);
            OnSurface(
                columns, first, rows, leg, true, method, ref tile.CorrugatedSums.At(0), ref tile.CorrugatedTravelSums.At(0), tile);
        }

        for (int section = 0; section < tile.Sections.Length; section++)
        {
            SectionBuffers to = tile.Sections[section];
            LegDamages.FillPerKm<T>(l, first, rows, leg, corrugated, to);
            if (section > 0 && l.DamageRatio.Length > 0)
            {
                Span<double> damage = to.Damage.Span.Slice(leg * BatchBuffers.Rows, rows);
                VectorColumns.ScaledProduct(damage, l.DamageRatio.AsSpan(first, rows), 1, damage);
            }
        }

        further?.AddLeg<T>(l, first, rows, corrugated);
    }

    private static void OnSurface(
        DamageColumns columns, int first, int rows, int leg, bool isCorrugated, CountingMethod method, ref float sums, ref float travel,
        BatchBuffers tile)
    {
        SectionBuffers firstSection = tile.Sections[0];
        LegDamages.FillPerSecond<T>(
            method, ref sums, ref firstSection.ScaleRoot.At(leg * BatchBuffers.Rows), rows, tile, firstSection.PerSecondOn(isCorrugated));
        foreach (SectionBuffers section in tile.Sections.AsSpan(1))
        {
            LegDamages.FillPerSecond<T>(method, ref sums, leg, rows, section, tile, section.PerSecondOn(isCorrugated));
        }

        tile.Further?.OnSurface<T>(columns, first, rows, isCorrugated, ref sums, ref travel, tile);
    }

    // In double precision, so that the total is the legs' sum to the last bit.
    private static void AddUp(int legs, int rows, SectionBuffers section)
    {
        Span<double> total = section.Total.Span[..rows];
        section.Damage.Span[..rows].CopyTo(total);
        for (int leg = 1; leg < legs; leg++)
        {
            VectorColumns.Add(section.Damage.Span.Slice(leg * BatchBuffers.Rows, rows), total);
        }
    }
}
