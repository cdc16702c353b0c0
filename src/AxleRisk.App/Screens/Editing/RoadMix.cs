using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Writing;

namespace AxleRisk.App.Screens.Editing;

/// <summary>The shares of the legs while they are being set: they always add up to 1, and a locked one stays.</summary>
internal sealed record RoadMix
{
    /// <summary>The least share of a leg: a scenario's legs all have one.</summary>
    public const double Least = 0.001;

    private RoadMix(ImmutableArray<string> names, ImmutableArray<double> shares, ImmutableArray<bool> locked) =>
        (Names, Shares, Locked) = (names, shares, locked);

    /// <summary>The legs' names.</summary>
    public ImmutableArray<string> Names { get; }

    /// <summary>The shares; they add up to 1.</summary>
    public ImmutableArray<double> Shares { get; private init; }

    /// <summary>The legs whose share stays.</summary>
    public ImmutableArray<bool> Locked { get; private init; }

    /// <summary>The shares in percent with one decimal, which add up to 100 as they are shown.</summary>
    public ImmutableArray<decimal> Percents => [.. Files.Writing.Shares.Exactly(Shares, 3).Select(s => 100 * s)];

    /// <summary>The mix of a scenario, nothing locked.</summary>
    public static RoadMix Of(IReadOnlyList<Leg> legs) =>
        new([.. legs.Select(l => l.Name)], [.. legs.Select(l => l.Share)], [.. legs.Select(_ => false)]);

    /// <summary>The mix with one share locked or free.</summary>
    public RoadMix WithLock(int leg, bool isLocked) => this with { Locked = Locked.SetItem(leg, isLocked) };

    /// <summary>
    /// The mix with one leg at another share: the free ones of the others make room in proportion. It goes only as far as they
    /// can; where none is free, nothing changes.
    /// </summary>
    public RoadMix With(int leg, double share)
    {
        int[] free = [.. Enumerable.Range(0, Shares.Length).Where(i => i != leg && !Locked[i])];
        if (free.Length == 0 || !double.IsFinite(share))
        {
            return this;
        }

        double room = 1 - Enumerable.Range(0, Shares.Length).Where(i => i != leg && Locked[i]).Sum(i => Shares[i]);
        double left = room - Math.Clamp(share, Math.Min(Least, room / 2), Math.Max(room / 2, room - (free.Length * Least)));
        double[] shares = [.. Shares];
        shares[leg] = room - left;
        Spread(shares, free, left);
        return this with { Shares = [.. shares] };
    }

    /// <summary>The edit that writes it.</summary>
    public ScenarioEdit ToEdit() => ScenarioEdits.RoadMix(Shares);

    // In proportion, but none below the least: those at the least are set first.
    private static void Spread(double[] shares, int[] free, double left)
    {
        double floor = Math.Min(Least, left / free.Length);
        List<int> open = [.. free];
        while (open.Count > 0)
        {
            double sum = open.Sum(i => shares[i]);
            int low = open.FindIndex(i => !(sum > 0 && shares[i] / sum * left >= floor));
            if (low < 0 || open.Count == 1)
            {
                double[] scaled = [.. open.Select(i => open.Count == 1 ? left : shares[i] / sum * left)];
                for (int k = 0; k < open.Count; k++)
                {
                    shares[open[k]] = scaled[k];
                }

                return;
            }

            shares[open[low]] = floor;
            left -= floor;
            open.RemoveAt(low);
        }
    }
}
