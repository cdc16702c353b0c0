using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.Inspections;

/// <summary>The points of a vehicle's way that a plan is judged at, by rising distance; the last is where it ends.</summary>
/// <param name="Points">The points.</param>
internal sealed record InspectionSchedule(ImmutableArray<InspectionPoint> Points)
{
    /// <summary>Looks as stated, and distances between them that are only told of.</summary>
    public static InspectionSchedule Of(IEnumerable<InspectionPoint> looks, IEnumerable<double> tellKm, double endKm)
    {
        InspectionPoint[] all = [.. looks.Where(l => l.Km < endKm).OrderBy(l => l.Km)];
        return new([.. tellKm.Append(endKm).Where(km => km <= endKm).Distinct().Where(km => all.All(l => l.Km != km))
            .Select(km => new InspectionPoint(km, null)).Concat(all).OrderBy(p => p.Km)]);
    }

    /// <summary>One method at even distances.</summary>
    public static InspectionSchedule Regular(InspectionMethod method, double firstKm, int looks, double endKm) => new(
        [.. Enumerable.Range(0, looks).Select(i => new InspectionPoint(
            Whole(firstKm + (i * EveryKm(firstKm, looks, endKm)), endKm), method)),
            new InspectionPoint(endKm, null)]);

    /// <summary>A distance that a plan may name: in whole km where the way has a thousand.</summary>
    public static double Whole(double km, double endKm) => endKm >= 1000 ? Math.Round(km) : km;

    /// <summary>The distance between so many looks, the last as far from the end.</summary>
    public static double EveryKm(double firstKm, int looks, double endKm) => (endKm - firstKm) / looks;
}

/// <summary>A point of a vehicle's way.</summary>
/// <param name="Km">The distance, km.</param>
/// <param name="Method">How it is looked at; null where it is not.</param>
internal sealed record InspectionPoint(double Km, InspectionMethod? Method);
