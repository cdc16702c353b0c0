using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>From the sums of a leg to its part in the damage per km of the use, several rows at a time.</summary>
internal static class LegDamages
{
    /// <summary>Beyond it single precision may overflow on the way.</summary>
    public const float Greatest = 1e24f;

    /// <summary>
    /// Fills the first section's damage per second in units of that of a cycle at the knee and in units of the grid's centre; NaN in rows
    /// that only the scalar code serves.
    /// </summary>
    public static void FillPerSecond<T>(
        CountingMethod method, ref float sums, ref float scaleRoot, int rows, BatchBuffers tile, AlignedBuffer<float> perSecond)
        where T : struct, IFloatLanes<T>
    {
        CountingBatch.Fill<T>(method, ref sums, BatchBuffers.Rows, ref scaleRoot, rows, tile.Parts);
        Integrate<T>(method, tile.Parts, rows, tile.Sections[0].Curves, tile.OfForm, perSecond);
    }

    /// <summary>
    /// The same of a further section. Its range density is the first's with another scale; where the first has none (no stress, no wall) it
    /// is counted anew.
    /// </summary>
    public static void FillPerSecond<T>(
        CountingMethod method, ref float sums, int leg, int rows, SectionBuffers section, BatchBuffers tile,
        AlignedBuffer<float> perSecond)
        where T : struct, IFloatLanes<T>
    {
        if (section.IsCountedAnew)
        {
            CountingBatch.Fill<T>(
                method, ref sums, BatchBuffers.Rows, ref section.ScaleRoot.At(leg * BatchBuffers.Rows), rows, tile.SectionParts);
        }

        for (int part = CountingBatch.FirstPart(method); part < RangeParts.Count; part++)
        {
            tile.SectionParts.TakeScaled<T>(tile.Parts, part, rows, section.OverFirst, section.FirstOver);
        }

        Integrate<T>(method, tile.SectionParts, rows, section.Curves, tile.OfForm, perSecond);
    }

    private static void Integrate<T>(
        CountingMethod method, RangeParts parts, int rows, CurveColumns curves, AlignedBuffer<float> ofForm, AlignedBuffer<float> perSecond)
        where T : struct, IFloatLanes<T>
    {
        perSecond.Span.Fill(float.NaN);
        for (int form = 0; form < curves.Forms; form++)
        {
            ofForm.Span.Clear();
            for (int part = CountingBatch.FirstPart(method); part < RangeParts.Count; part++)
            {
                AddPart<T>(curves, form, part, rows, parts, ofForm);
            }

            for (int row = 0; row < rows; row += T.Count)
            {
                T other = T.Abs(T.Load(in curves.Form.At(row)) - T.Create(form));
                T damage = T.Load(in ofForm.At(row));
                ref float to = ref perSecond.At(row);
                T.Store(T.IfLess(other, T.Create(0.5f), T.IfLess(damage, T.Create(Greatest), damage, T.Create(float.NaN)), T.Load(in to)),
                    ref to);
            }
        }
    }

    private static void AddPart<T>(CurveColumns curves, int form, int part, int rows, RangeParts parts, AlignedBuffer<float> ofForm)
        where T : struct, IFloatLanes<T>
    {
        bool isExponential = part == RangeParts.Exponential;
        if (form >= curves.SlopePairs.Length)
        {
            AnyCurve curve = curves.Others[form - curves.SlopePairs.Length];
            (isExponential ? curve.Exponential : curve.Rayleigh).Add<T>(parts, part, rows, ref ofForm.At(0));
            return;
        }

        PartIntegral integral = isExponential ? curves.Integrals[form].Exponential : curves.Integrals[form].Rayleigh;
        PartDamages.Add<T>(parts, part, integral, ref curves.CutOffOverKnee.At(0), curves.HasCutOff, rows, ref ofForm.At(0));
    }

    /// <summary>
    /// Fills the leg's damage per km of use from <see cref="SectionBuffers.PerSecond"/> and its corrugated twin.
    /// </summary>
    public static void FillPerKm<T>(LegColumns leg, int first, int rows, int index, bool corrugated, SectionBuffers section)
        where T : struct, IFloatLanes<T>
    {
        for (int row = 0; row < rows; row += T.Count)
        {
            int at = index * BatchBuffers.Rows + row;
            T perSecond = T.Load(in section.PerSecond.At(row));
            if (corrugated)
            {
                // Where the share is 0 the plain part comes out to the last bit.
                T share = ColumnLanes.Load<T>(leg.CorrugatedShare, first + row);
                perSecond = (T.Create(1) - share) * perSecond + share * T.Load(in section.CorrugatedPerSecond.At(row));
            }

            T perKm = T.Create((float)(1000 * MomentGrid.CentreHz)) * T.Load(in section.Curves.DamageAtKnee.At(row))
                * (ColumnLanes.Load<T>(leg.Share, first + row) / ColumnLanes.Load<T>(leg.SpeedMPerS, first + row));
            T.Store(perSecond * perKm, ref section.Damage.At(at));
        }
    }
}
