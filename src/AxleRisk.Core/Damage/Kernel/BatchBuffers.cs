using AxleRisk.Core.Damage.Spectra;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>What a tile of rows keeps between the steps of the batch kernel; small enough for the nearest cache.</summary>
/// <param name="layout">The columns it will be given.</param>
/// <param name="curves">The S-N curves of the first section.</param>
internal sealed class BatchBuffers(DamageLayout layout, CurveColumns curves)
{
    /// <summary>Rows of a tile: a multiple of every width.</summary>
    public const int Rows = 256;

    // The widest registers hold 16 numbers.
    private const int MostLanes = 16;

    /// <summary>What the moments are made of.</summary>
    public MomentInputs Inputs { get; } = new(layout.Legs, Rows);

    /// <summary>The number of the grid that serves a row.</summary>
    public AlignedBuffer<float> Grid { get; } = new(Rows);

    /// <summary>The places of rows that are picked out of the tile.</summary>
    public int[] Places { get; } = new int[Rows];

    /// <summary>The inputs of those rows.</summary>
    public MomentInputs Picked { get; } = new(layout.Legs, Rows);

    /// <summary>Their sums, as <see cref="Sums"/>.</summary>
    public AlignedBuffer<float> PickedSums { get; } = new(layout.Legs * 4 * Rows);

    /// <summary>One over the frequency of the corrugation, of the rows at work.</summary>
    public AlignedBuffer<float> InversePeak { get; } = new(MostLanes);

    /// <summary>The spectra of the rows at work, a register a point.</summary>
    public AlignedBuffer<float> Spectrum { get; } = new(FrequencyGrid.Points * MostLanes);

    /// <summary>Their <see cref="SmoothSums"/>.</summary>
    public AlignedBuffer<float> SmoothSums { get; } = new(Kernel.SmoothSums.Count * MostLanes);

    /// <summary>The checked sections, the first before the others.</summary>
    public SectionBuffers[] Sections { get; } =
    [
        new(curves, layout.Legs),
        .. layout.Sections.Select(s => new SectionBuffers(new CurveColumns(s.Curves.AsSpan(), Rows), layout.Legs)),
    ];

    /// <summary>The moments' sums, four columns by leg.</summary>
    public AlignedBuffer<float> Sums { get; } = new(layout.Legs * 4 * Rows);

    /// <summary>The sums of one leg on its corrugation.</summary>
    public AlignedBuffer<float> CorrugatedSums { get; } = new(4 * Rows);

    /// <summary>The spectra of the travel of the rows at work; empty without a bump stop, as the three that follow.</summary>
    public AlignedBuffer<float> TravelSpectrum { get; } = new(layout.HasBumpStop ? FrequencyGrid.Points * MostLanes : 0);

    /// <summary>The moments' sums of the travel, two columns by leg.</summary>
    public AlignedBuffer<float> TravelSums { get; } = new(layout.HasBumpStop ? layout.Legs * 2 * Rows : 0);

    /// <summary>Those of picked rows.</summary>
    public AlignedBuffer<float> PickedTravelSums { get; } = new(layout.HasBumpStop ? layout.Legs * 2 * Rows : 0);

    /// <summary>Those of one leg on its corrugation.</summary>
    public AlignedBuffer<float> CorrugatedTravelSums { get; } = new(layout.HasBumpStop ? 2 * Rows : 0);

    /// <summary>What there is beyond plain fatigue; null for nothing.</summary>
    public FurtherRates? Further { get; } = layout.HasMore ? new(layout) : null;

    /// <summary>The range density of one leg at the first section.</summary>
    public RangeParts Parts { get; } = new(Rows);

    /// <summary>The same at a further section.</summary>
    public RangeParts SectionParts { get; } = new(layout.Sections.IsEmpty ? 0 : Rows);

    /// <summary>Damage per second of one leg, of each pair of slopes in turn.</summary>
    public AlignedBuffer<float> OfForm { get; } = new(Rows);
}
