using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Trips;

/// <summary>A look for the crack before a leg of the trip; probabilities but the first two are of vehicles that set out.</summary>
/// <param name="Leg">The leg before which it is done.</param>
/// <param name="Method">The way of looking.</param>
/// <param name="FailsAfter">That a vehicle whole before the leg fails on the rest of the trip, not looked at.</param>
/// <param name="FailsAfterClean">The same where the look has found nothing.</param>
/// <param name="Found">That it comes whole to the look and the crack is found.</param>
/// <param name="Trip">That it fails on the trip with this one look, where a vehicle found cracked goes no further.</param>
public sealed record TripLook(string Leg, string Method, Interval FailsAfter, Interval FailsAfterClean, Interval Found, Interval Trip);

/// <summary>What one look before each leg is worth, with each way of looking.</summary>
internal static class TripLooks
{
    /// <summary>The most vehicles that are gone by; the first of the sample.</summary>
    public const int MostRows = 4096;

    // The sums of a group, by leg: whole before it, fails after; clean there, fails after; found there, fails before.
    private const int Kinds = 6;

    /// <summary>The looks by leg, method by method; none where the scenario states no crack or no way of looking.</summary>
    public static ImmutableArray<TripLook> Of(LifeModel whole, TripSample sample, TripSurvival survival, RunOptions options)
    {
        if (whole.Scenario.Crack is null)
        {
            return [];
        }

        TripBlock[] blocks = [.. Some(sample)];
        return [.. whole.Scenario.Inspections.SelectMany(m => Of(whole, blocks, sample.Groups, survival, m, options))];
    }

    private static IEnumerable<TripBlock> Some(TripSample sample)
    {
        int rows = 0;
        foreach (TripBlock block in sample.Blocks)
        {
            if (rows >= MostRows)
            {
                yield break;
            }

            rows += block.Rows;
            yield return block;
        }
    }

    private static IEnumerable<TripLook> Of(
        LifeModel whole, TripBlock[] blocks, int groups, TripSurvival survival, InspectionMethod method, RunOptions options)
    {
        Trip trip = whole.Scenario.Trip!;
        int legs = trip.Legs.Length;
        BlockRun<double[][]> run = BlockRunner.Run(
            blocks.Length, 1, options with { Progress = null }, () => new Worker(whole, survival, method),
            (worker, place, _) => worker.Sum(blocks[place], groups, legs));
        options.Cancellation.ThrowIfCancellationRequested();
        double[][] sums = [.. Enumerable.Range(0, groups).Select(g => Enumerable.Range(0, (legs * Kinds) + 1)
            .Select(i => CompensatedSum.Of([.. run.Blocks.Select(b => b[g][i])])).ToArray())];
        bool counted = !survival.IsConditional;
        for (int leg = 0; leg < legs; leg++)
        {
            int at = leg * Kinds;
            yield return new TripLook(
                trip.Legs[leg].Name, method.Name,
                TripSums.Probability(sums, s => (s[at + 1], s[at]), counted),
                TripSums.Probability(sums, s => (s[at + 3], s[at + 2]), counted),
                TripSums.Probability(sums, s => (s[at + 4], s[^1]), counted),
                TripSums.Probability(sums, s => (s[at + 5] + s[at + 3], s[^1]), counted));
        }
    }

    private sealed class Worker(LifeModel whole, TripSurvival survival, InspectionMethod method)
    {
        private readonly ImmutableArray<CrackLook> looks = [new CrackLook(method, 1, false, null, 0)];
        private readonly LooksLikelihood likelihood = new(whole, [new CrackLook(method, 1, false, null, 0)]);
        private readonly CrackModel crack = new(whole);

        public double[][] Sum(TripBlock block, int groups, int legs)
        {
            double[][] sums = Workspace.Columns(groups, (legs * Kinds) + 1);
            int modes = block.Modes;
            double[] start = new double[modes], here = new double[modes], end = new double[modes];
            for (int row = 0; row < block.Rows; row++)
            {
                ReadOnlySpan<double> limits = block.LimitsOf(row);
                double[] to = sums[block.Group[row]];
                block.StartOf(row).CopyTo(start);
                start.CopyTo(here, 0);
                start.CopyTo(end, 0);
                for (int leg = 0; leg < legs; leg++)
                {
                    Add(end, block.Legs[leg], row);
                }

                to[^1] += survival.At(start, limits);
                for (int leg = 0; leg < legs; leg++)
                {
                    double reached = survival.At(here, limits);
                    (double clean, double cleanFails) = Clean(block, row, here, end, limits);
                    to[leg * Kinds] += reached;
                    to[(leg * Kinds) + 1] += survival.Fails(here, end, limits);
                    to[(leg * Kinds) + 2] += clean;
                    to[(leg * Kinds) + 3] += cleanFails;
                    to[(leg * Kinds) + 4] += Math.Max(0, reached - clean);
                    to[(leg * Kinds) + 5] += survival.Fails(start, here, limits);
                    Add(here, block.Legs[leg], row);
                }
            }

            return sums;
        }

        private (double Clean, double Fails) Clean(TripBlock block, int row, double[] here, double[] end, ReadOnlySpan<double> limits)
        {
            Modes.CrackDepth depth = crack.Of(block.Values, row);
            if (survival.IsConditional)
            {
                likelihood.Chance!.Take(here.AsSpan(0, 1), depth);
                return (likelihood.Chances!.Survival(here), likelihood.Chances.Fails(here, end));
            }

            double seen = LookedChance.Likelihood(here.AsSpan(0, 1), limits[0], looks, depth);
            return (seen * survival.At(here, limits), seen * survival.Fails(here, end, limits));
        }

        private static void Add(double[] used, double[] ofLeg, int row)
        {
            for (int mode = 0; mode < used.Length; mode++)
            {
                used[mode] += ofLeg[(row * used.Length) + mode];
            }
        }
    }
}
