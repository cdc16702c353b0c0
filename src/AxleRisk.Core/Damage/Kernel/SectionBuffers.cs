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
