using System.Collections.Immutable;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Fleets;

/// <summary>Finds the worst category of the scenario's catalogue that meets a target; the catalogue has the best first.</summary>
internal sealed class CategorySearch(Scenario scenario, FleetDraw draw, LifeTarget target)
{
    private readonly Dictionary<int, DrawMeans> known = [];

    /// <summary>The categories, best first.</summary>
    public ImmutableArray<string> Categories { get; } = SnCatalogue.Categories(scenario.Detail.Catalogue);

    /// <summary>The worst category that meets the target.</summary>
    public CategoryAnswer Find(TargetBasis basis)
    {
        int meets = -1;
        int fails = Categories.Length;
        while (fails - meets > 1)
        {
            int middle = (meets + fails) / 2;
            (meets, fails) = DrawStatistic.Of(ByDraw(middle), basis) <= target.Fraction ? (middle, fails) : (meets, middle);
        }

        var outcome = meets < 0 ? SearchOutcome.NoneMeets : fails == Categories.Length ? SearchOutcome.EveryMeets : SearchOutcome.Found;
        (string? category, Interval probability) = At(meets, basis);
        (string? next, Interval nextProbability) = At(fails, basis);
        return new CategoryAnswer(outcome, category, probability, next, nextProbability);
    }

    private (string? Category, Interval Probability) At(int index, TargetBasis basis) => index >= 0 && index < Categories.Length
        ? (Categories[index], DrawStatistic.WithInterval(ByDraw(index), basis))
        : (null, new Interval(double.NaN, double.NaN, double.NaN));

    // A choice stays a choice, of one category several times: every column keeps its place and its numbers.
    private DrawMeans ByDraw(int index)
    {
        if (!known.TryGetValue(index, out DrawMeans? byDraw))
        {
            Detail detail = scenario.Detail with { Categories = [.. scenario.Detail.Categories.Select(_ => Categories[index])] };
            byDraw = draw.Draw(new LifeModel(scenario with { Detail = detail })).FailedBy(target.Km);
            known.Add(index, byDraw);
        }

        return byDraw;
    }
}
