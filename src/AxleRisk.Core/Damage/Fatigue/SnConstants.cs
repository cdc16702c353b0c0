using System.Collections.Immutable;

namespace AxleRisk.Core.Damage.Fatigue;

/// <summary>An S-N curve as the damage integrals want it, piece by piece.</summary>
/// <param name="Pieces">The pieces from the greatest ranges down to the cut-off.</param>
internal sealed record SnConstants(ImmutableArray<SnPiece> Pieces)
{
    /// <summary>The pieces of lines that meet at knees.</summary>
    public SnConstants(ImmutableArray<SnLine> lines, ImmutableArray<double> kneesMPa, double cutOffMPa)
        : this([.. lines.Select((line, i) => new SnPiece(
            line.Slope, Math.Pow(10, -line.Log10A), i < kneesMPa.Length ? kneesMPa[i] : cutOffMPa,
            i == 0 ? double.PositiveInfinity : kneesMPa[i - 1]))])
    {
    }
}

/// <summary>A part of an S-N curve: damage per cycle of range S is <c>C S^m</c> between two ranges.</summary>
/// <param name="Slope">The slope m.</param>
/// <param name="Damage">C: 10^-log10 a.</param>
/// <param name="FromMPa">The least range, MPa, that belongs to it; 0 for none.</param>
/// <param name="ToMPa">The range above which another begins, MPa; infinite for none.</param>
internal readonly record struct SnPiece(double Slope, double Damage, double FromMPa, double ToMPa);
