using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>
/// The damage model in vector code: the job of <see cref="ScalarKernel"/>, within 1e-3 of its answer where that is above 1e-20 per km
/// (typically within 1e-6). Owns its buffers, so it allocates nothing once made and serves one thread. A row's answer does not
/// depend on its
/// place; it may differ in the last digits between widths of registers.
/// </summary>
internal sealed class BatchKernel
{
    private readonly SnCurve[] curves;
    private readonly CountingMethod method;
    private readonly BatchEngine? engine;
    private readonly BatchBuffers tile;
    private readonly DamageColumns last;

    /// <summary>Makes a kernel of the widest registers there are.</summary>
    /// <param name="curves">The mean S-N curves that <see cref="DamageColumns.Category"/> points into.</param>
    /// <param name="method">How cycles are counted.</param>
    /// <param name="layout">The columns it will be given.</param>
    public BatchKernel(ReadOnlySpan<SnCurve> curves, CountingMethod method, DamageLayout layout)
        : this(curves, method, layout, VectorWidths.Best)
    {
    }

    /// <summary>Makes a kernel of a given width.</summary>
    internal BatchKernel(ReadOnlySpan<SnCurve> curves, CountingMethod method, DamageLayout layout, VectorWidth width)
    {
        this.curves = curves.ToArray();
        this.method = method;
        engine = width switch
        {
            VectorWidth.Bits512 => new BatchEngine<FloatLanes512>(),
            VectorWidth.Bits256 => new BatchEngine<FloatLanes256>(),
            VectorWidth.Bits128 => new BatchEngine<FloatLanes128>(),
            _ => null,
        };
        tile = new(layout, new CurveColumns(curves, BatchBuffers.Rows));
        last = new(BatchBuffers.Rows, layout);
    }

    /// <summary>As <see cref="ScalarKernel.Evaluate"/>, for fatigue alone.</summary>
    public void Evaluate(DamageColumns columns, int count, double[][] damageByLeg, Span<double> damagePerKm) =>
        Evaluate(columns, count, damageByLeg, damagePerKm, []);

    /// <summary>As <see cref="ScalarKernel.Evaluate"/>.</summary>
    /// <param name="columns">The input.</param>
    /// <param name="count">How many rows.</param>
    /// <param name="damageByLeg">Takes the damage per km of the use by leg and row.</param>
    /// <param name="damagePerKm">Takes its sum over the legs.</param>
    /// <param name="further">Takes the damage of each further section and what each further mode uses up per km of the use, by row.</param>
    /// <param name="sameRide">Whether since the last call, of as many rows, nothing has changed but stress, thickness, S-N curve
    /// and the modes' own columns.</param>
    public void Evaluate(
        DamageColumns columns, int count, double[][] damageByLeg, Span<double> damagePerKm, ReadOnlySpan<double[]> further,
            bool sameRide = false)
    {
        if (engine is null)
        {
            ScalarKernel.Evaluate(columns, count, curves, method, damageByLeg, damagePerKm, further);
            return;
        }

        sameRide &= count <= BatchBuffers.Rows; // the tile still holds its moments

        for (int first = 0; first < count; first += BatchBuffers.Rows)
        {
            int rows = Math.Min(BatchBuffers.Rows, count - first);
            if (rows == BatchBuffers.Rows)
            {
                engine.Evaluate(columns, first, rows, method, tile, sameRide);
            }
            else
            {
                engine.Evaluate(last, 0, PaddedTail.Fill(columns, first, rows, last), method, tile, sameRide);
            }

            SectionBuffers firstSection = tile.Sections[0];
            firstSection.Total.Span[..rows].CopyTo(damagePerKm[first..]);
            for (int leg = 0; leg < damageByLeg.Length; leg++)
            {
                firstSection.Damage.Span.Slice(leg * BatchBuffers.Rows, rows).CopyTo(damageByLeg[leg].AsSpan(first));
            }

            int sections = Math.Min(further.Length, tile.Sections.Length - 1);
            for (int section = 0; section < sections; section++)
            {
                tile.Sections[section + 1].Total.Span[..rows].CopyTo(further[section].AsSpan(first));
            }

            for (int mode = sections; mode < further.Length; mode++)
            {
                Widen(tile.Further!.PerKm[mode - sections].Span[..rows], further[mode].AsSpan(first));
            }

            Repair(columns, first, rows, damageByLeg, damagePerKm, further);
        }

        GC.KeepAlive(this); // the tile's memory is addressed directly
    }

    // Whatever the vector code does not serve it answers with NaN.
    private void Repair(DamageColumns columns, int first, int rows, double[][] damageByLeg, Span<double> damagePerKm,
        ReadOnlySpan<double[]> further)
    {
        for (int row = first; row < first + rows; row++)
        {
            bool served = !double.IsNaN(damagePerKm[row]);
            if (!served && double.IsPositiveInfinity(tile.Sections[0].Curves.StressPerForce[row - first]))
            {
                FillNoSection(columns, row, damageByLeg, damagePerKm);
                served = true;
            }

            int sections = Math.Min(further.Length, columns.Layout.Sections.Length);
            foreach (double[] rates in further[sections..])
            {
                served &= !double.IsNaN(rates[row]);
            }

            if (!served)
            {
                ScalarKernel.EvaluateRow(columns, row, curves, method, damageByLeg, damagePerKm, further);
                continue;
            }

            // A further section by itself: it changes no digit of the others.
            for (int section = 0; section < sections; section++)
            {
                if (double.IsNaN(further[section][row]))
                {
                    further[section][row] = ScalarSections.PerKm(columns, row, section, method);
                }
            }
        }
    }

    private static void Widen(ReadOnlySpan<float> from, Span<double> to)
    {
        for (int i = 0; i < from.Length; i++)
        {
            to[i] = from[i];
        }
    }

    // Corroded through: the scalar kernel's answer without its work, as many samples of a rusty fleet are so.
    private static void FillNoSection(DamageColumns columns, int row, double[][] damageByLeg, Span<double> damagePerKm)
    {
        double total = 0;
        for (int leg = 0; leg < columns.Legs.Length; leg++)
        {
            LegColumns l = columns.Legs[leg];
            double part = l.Share[row] == 0 ? 0 : l.Share[row] * (double.PositiveInfinity / l.SpeedMPerS[row]);
            damageByLeg[leg][row] = part;
            total += part;
        }

        damagePerKm[row] = total;
    }
}
