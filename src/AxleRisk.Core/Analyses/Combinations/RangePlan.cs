using System.Collections.Immutable;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Combinations;

/// <summary>
/// The ranges that can be adverse: both outer fifths of every scalar and of every leg's share in the road mix, and every state
/// of a choice. Those of what is averaged exactly stand first, as the search needs them.
/// </summary>
internal sealed class RangePlan
{
    private const double Fifth = 0.2;

    public RangePlan(LifeModel model)
    {
        Chances = new ChanceSubsets(model);
        IEnumerable<PlannedRange> all = model.Factors.Factors.SelectMany((factor, owner) => Of(model.Scenario, factor, owner));
        Ranges = [.. all.OrderBy(r => r.Scale == 0 ? 1 : 0)];

        // The number of sets of one to four ranges of different factors: elementary symmetric polynomials of their numbers.
        Counts = [.. Ranges.GroupBy(r => r.Owner).Select(g => g.Count())];
    }

    /// <summary>What is averaged exactly unless a combination speaks of it; nothing where failures are counted.</summary>
    public ChanceSubsets Chances { get; }

    public bool IsConditional => !Chances.Factors.IsEmpty;

    public ImmutableArray<PlannedRange> Ranges { get; }

    private ImmutableArray<int> Counts { get; }

    /// <summary>How many combinations of one to <paramref name="most"/> ranges of different factors there are.</summary>
    public double Possible(int most) => Possible(Counts, most);

    /// <summary>How many ways there are to take one thing from each of one to <paramref name="most"/> boxes.</summary>
    public static double Possible(IEnumerable<int> boxes, int most)
    {
        var ways = new double[most + 1];
        ways[0] = 1;
        foreach (int things in boxes)
        {
            for (int k = most; k > 0; k--)
            {
                ways[k] += things * ways[k - 1];
            }
        }

        return ways.Skip(1).Sum();
    }

    private IEnumerable<PlannedRange> Of(Scenario scenario, Factor factor, int owner)
    {
        int scale = Chances.BitOf(factor);
        if (factor.Distribution is NumberChoice choice)
        {
            return choice.Values.Select((value, i) => new PlannedRange(
                owner, factor.FirstColumn, scale, new AdverseRange(factor, factor.Name, RangePart.State, value, choice.Weights[i]), value));
        }

        if (factor is not MixFactor)
        {
            return Fifths(factor, factor.Name, owner, factor.FirstColumn, scale, factor.Distribution!, byUnit: true);
        }

        // A share of a Dirichlet distribution is beta distributed.
        double c = scenario.MixConcentration!.Value;
        return scenario.Legs.SelectMany((leg, i) => Fifths(
            factor, factor.ColumnNames[i], owner, factor.FirstColumn + i, 0, new ScaledBeta(c * leg.Share, c * (1 - leg.Share)),
                byUnit: false));
    }

    private static IEnumerable<PlannedRange> Fifths(
        Factor factor, string column, int owner, int index, int scale, Distribution distribution, bool byUnit)
    {
        double low = distribution.Quantile(Fifth), high = distribution.UpperQuantile(Fifth);
        yield return new PlannedRange(
            owner, index, scale, new AdverseRange(factor, column, RangePart.Below, low, Fifth), byUnit ? Fifth : low, byUnit);
        yield return new PlannedRange(
            owner, index, scale, new AdverseRange(factor, column, RangePart.Above, high, Fifth), byUnit ? 1 - Fifth : high, byUnit);
    }
}

/// <summary>One range that can be adverse.</summary>
/// <param name="Owner">The number of its factor.</param>
/// <param name="Column">The sample's column.</param>
/// <param name="Scale">The bit of <see cref="EventRows"/>, or 0.</param>
/// <param name="Range">As it will be told.</param>
/// <param name="Limit">The end of the range where rows are sorted.</param>
/// <param name="ByUnit">Whether rows are sorted by unit value rather than by value.</param>
internal sealed record PlannedRange(int Owner, int Column, int Scale, AdverseRange Range, double Limit, bool ByUnit = false)
{
    public bool Has(double[][] unit, double[][] values, int row)
    {
        double x = (ByUnit ? unit : values)[Column][row];
        return Range.Part switch
        {
            RangePart.Below => x < Limit,
            RangePart.Above => x > Limit,
            _ => x == Limit,
        };
    }
}
