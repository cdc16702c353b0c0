using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Studies;

namespace AxleRisk.App.Studies;

/// <summary>Where a study has the failure probabilities from that the risk study gives, so that all answers open with one figure.</summary>
/// <param name="distancesKm">The distances, km.</param>
/// <param name="options">Threads and cancellation.</param>
internal delegate ImmutableArray<RiskHeadline> HeadlineSource(ImmutableArray<double> distancesKm, RunOptions options);

/// <summary>The usual sources.</summary>
internal static class Headlines
{
    /// <summary>The risk study's own run with these settings.</summary>
    public static HeadlineSource Of(LifeModel model, StudySettings settings) => (distancesKm, options) =>
        distancesKm.IsEmpty ? [] : RiskHeadline.Of(model, distancesKm, settings, options);
}
