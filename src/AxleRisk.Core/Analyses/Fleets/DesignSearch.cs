using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Fleets;

/// <summary>Searches for the designs that just meet a target life.</summary>
internal static class DesignSearch
{
    /// <summary>The nominal wall is searched from half to twice of what it is.</summary>
    private const double WallReach = 2;

    /// <summary>The loosest tolerance looked at, as a multiple of what it is.</summary>
    private const double LoosestTolerance = 5;

    /// <summary>Runs the searches.</summary>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    public static DesignLimits Run(LifeModel model, LifeTarget target, FleetDraw draw, ImmutableArray<TargetBasis> bases)
    {
        Scenario scenario = model.Scenario;
        WallChange? wall = WallChange.Matters(scenario) ? new WallChange(model, draw) : null;
        var categories = new CategorySearch(scenario, draw, target);
        Func<double, DrawMeans> byWall = Kept(mm => wall!.WithNominal(mm).FailedBy(target.Km));
        Func<double, DrawMeans> byTolerance = Kept(times => wall!.WithTolerance(times).FailedBy(target.Km));
        return new DesignLimits(
            target, DrawStatistic.WithInterval(draw.Draw(model).FailedBy(target.Km), TargetBasis.Average),
            wall?.NominalMm, wall is { HasSpread: true }, categories.Categories,
            [.. bases.Select(basis => new DesignLimit(
                basis,
                wall is null ? null
                    : new TargetSearch(byWall, target.Fraction, basis).LeastIn(wall.NominalMm / WallReach, wall.NominalMm * WallReach),
                wall is not { HasSpread: true } ? null
                    : new TargetSearch(byTolerance, target.Fraction, basis).GreatestIn(0, LoosestTolerance),
                categories.Categories.IsEmpty ? null : categories.Find(basis)))]);
    }

    /// <summary>A function that remembers: both bases look at the ends of the range, and a search looks twice where it ends.</summary>
    private static Func<double, DrawMeans> Kept(Func<double, DrawMeans> function)
    {
        Dictionary<double, DrawMeans> known = [];
        return x => known.TryGetValue(x, out DrawMeans? value) ? value : known[x] = function(x);
    }
}
