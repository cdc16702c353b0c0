using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>What a tile of rows keeps of one checked section between the steps of the batch kernel.</summary>
/// <param name="curves">The S-N curves of its rows.</param>
/// <param name="legs">The number of legs.</param>
internal sealed class SectionBuffers(CurveColumns curves, int legs)
{
    /// <summary>The S-N curves of its rows.</summary>
    public CurveColumns Curves => curves;

    /// <summary>The root of what turns the sums into moments in units of the squared knee over eight, by leg.</summary>
    public AlignedBuffer<float> ScaleRoot { get; } = new(legs * BatchBuffers.Rows);

    /// <summary>The scale of the ranges over the first section's; NaN in rows where that has none.</summary>
    public AlignedBuffer<float> OverFirst { get; } = new(BatchBuffers.Rows);

    /// <summary>One over that.</summary>
    public AlignedBuffer<float> FirstOver { get; } = new(BatchBuffers.Rows);

    /// <summary>Whether in some rows of the tile the first section has no range density that could be scaled.</summary>
    public bool IsCountedAnew { get; private set; }

    /// <summary>Compares the section with the first, from the curves of both.</summary>
    public void FillRatios(SectionBuffers first, int rows)
    {
        ReadOnlySpan<float> scales = first.Curves.ScalePerForce.Span;
        ReadOnlySpan<float> own = curves.ScalePerForce.Span;
        Span<float> over = OverFirst.Span;
        Span<float> under = FirstOver.Span;
        IsCountedAnew = false;
        for (int row = 0; row < rows; row++)
        {
            (over[row], under[row]) = (own[row] / scales[row], scales[row] / own[row]);
            if (!(scales[row] > 0 && scales[row] < float.PositiveInfinity) || float.IsNaN(own[row]))
            {
                (over[row], under[row], IsCountedAnew) = (float.NaN, float.NaN, true);
            }
        }
    }

    /// <summary>Damage per second of one leg in units of that of a cycle at the knee.</summary>
    public AlignedBuffer<float> PerSecond { get; } = new(BatchBuffers.Rows);

    /// <summary>The same on its corrugation.</summary>
    public AlignedBuffer<float> CorrugatedPerSecond { get; } = new(BatchBuffers.Rows);

    /// <summary>Damage per km of use, by leg.</summary>
    public AlignedBuffer<double> Damage { get; } = new(legs * BatchBuffers.Rows);

    /// <summary>Damage per km of use.</summary>
    public AlignedBuffer<double> Total { get; } = new(BatchBuffers.Rows);

    /// <summary>The damage per second of the leg at work, off or on its corrugation.</summary>
    public AlignedBuffer<float> PerSecondOn(bool corrugation) => corrugation ? CorrugatedPerSecond : PerSecond;
}
