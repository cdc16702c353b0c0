using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Trips;

/// <summary>A look for the crack before a leg of the trip, or before each; probabilities but the first two are of vehicles that set
/// out.</summary>
/// <param name="Leg">The leg before which it is done; null for a look before every leg.</param>
/// <param name="Method">The way of looking.</param>
/// <param name="Cost">What it costs, of all looks of a vehicle that comes through.</param>
/// <param name="FailsAfter">That a vehicle whole before the leg (before the first) fails on the rest of the trip, not looked at.</param>
/// <param name="FailsAfterClean">The same where the look (each so far) has found nothing.</param>
/// <param name="Found">That it comes whole to a look and the crack is found.</param>
/// <param name="Trip">That it fails on the trip with this look, where a vehicle found cracked goes no further.</param>
public sealed record TripLook(
    string? Leg, string Method, double Cost, Interval FailsAfter, Interval FailsAfterClean, Interval Found, Interval Trip)
{
    /// <summary>The looks after which the trip is the safest; null where there are none.</summary>
    internal static TripLook? Best(IEnumerable<TripLook> looks, bool isOne) =>
        looks.Where(l => (l.Leg is not null) == isOne && !double.IsNaN(l.Trip.Estimate)).MinBy(l => l.Trip.Estimate);
}

/// <summary>
/// What one look before each leg is worth, and one before every leg, with each way of looking. The looks, which are dear, go by the first
/// vehicles of the sample; what fails without one is known of all of them, and corrects what the first alone would say.
/// </summary>
internal static class TripLooks
{
    /// <summary>The most vehicles that are looked at.</summary>
    public const int MostRows = 4096;

    // The sums of a group, by leg and at last for all legs, of the vehicles looked at: whole before it, fails after; clean there, fails
    // after; found; fails. Then the number that set out, and of all vehicles by leg: whole before it, fails after.
    private const int Kinds = 6, OfAll = 2;

    /// <summary>The looks by leg, method by method; none where the scenario states no crack or no way of looking.</summary>
    /// <param name="whole">The scenario with its trip's inputs among its own, made ready.</param>
    /// <param name="sample">The vehicles.</param>
    /// <param name="survival">How survival follows.</param>
    /// <param name="options">Threads, cancellation.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static ImmutableArray<TripLook> Of(LifeModel whole, TripSample sample, TripSurvival survival, RunOptions options)
    {
        if (whole.Scenario.Crack is null)
        {
            return [];
        }

        double[][] all = Sums(sample.Blocks, sample.Groups, () => new Worker(whole, survival, null), (worker, block) =>
            worker.SumPlain(block, sample.Groups), options);
        TripBlock[] looked = [.. Some(sample)];
        return [.. whole.Scenario.Inspections.SelectMany(method => Of(whole.Scenario.Trip!, method, !survival.IsConditional, [.. Sums(
            looked, sample.Groups, () => new Worker(whole, survival, method), (worker, block) => worker.Sum(block, sample.Groups), options)
            .Zip(all, (few, every) => (double[])[.. few, .. every])]))];
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

    private static double[][] Sums(
        IReadOnlyList<TripBlock> blocks, int groups, Func<Worker> create, Func<Worker, TripBlock, double[][]> sum, RunOptions options)
    {
        BlockRun<double[][]> run = BlockRunner.Run(
            blocks.Count, 1, options with { Progress = null }, create, (worker, place, _) => sum(worker, blocks[(int)place]));
        options.Cancellation.ThrowIfCancellationRequested();
        return [.. Enumerable.Range(0, groups).Select(g => Enumerable.Range(0, run.Blocks[0][g].Length)
            .Select(i => CompensatedSum.Of([.. run.Blocks.Select(b => b[g][i])])).ToArray())];
    }

    private static IEnumerable<TripLook> Of(Trip trip, InspectionMethod method, bool counted, double[][] sums)
    {
        int places = trip.Legs.Length + 1, setOut = places * Kinds;
        for (int place = 0; place < places; place++)
        {
            int at = place * Kinds, all = setOut + 1 + (place * OfAll);
            yield return new TripLook(
                place < trip.Legs.Length ? trip.Legs[place].Name : null, method.Name,
                place < trip.Legs.Length ? method.Cost : trip.Legs.Length * method.Cost,
                TripSums.Probability(sums, s => (s[all + 1], s[all]), counted),
                TripSums.Probability(sums, s => Corrected(s, at + 3, at + 2, at, all), counted),
                TripSums.Probability(sums, s => (s[at + 4], s[setOut]), counted),
                TripSums.Probability(sums, s => Corrected(s, at + 5, setOut, 0, setOut + 1), counted));
        }
    }

    // A ratio estimate: the vehicles looked at fail so many times as often as all of them where nobody looks, so they do with a look.
    // Times the hazard, which keeps a probability one.
    private static (double Failed, double Reached) Corrected(double[] sums, int failed, int reached, int few, int all)
    {
        double Hazard(int failed, int reached) => -LogExp.LogP1(-Math.Min(1, sums[failed] / sums[reached]));
        double hazard = Hazard(failed, reached) * Hazard(all + 1, all) / Hazard(few + 1, few), of = sums[reached];
        return (double.IsFinite(hazard) ? of * -LogExp.ExpM1(-hazard) : sums[failed], of);
    }

    private sealed class Worker
    {
        private readonly int legs;
        private readonly SeenVehicle seen;
        private readonly TripSurvival survival;
        private readonly SeenChances one; // a clean look
        private readonly SeenChances[] every; // clean looks before the first leg, the first two, and so on
        private readonly double[][] here; // used up before each leg and at the end, by mode
        private readonly double[] usedAt; // by fatigue, at the same places

        public Worker(LifeModel whole, TripSurvival survival, InspectionMethod? method)
        {
            legs = whole.Scenario.Trip!.Legs.Length;
            seen = survival.Seen ?? new SeenVehicle(whole, Evidence.None);
            this.survival = survival.OfThread();
            CrackLook[] clean = method is null ? [] : [new CrackLook(method, double.PositiveInfinity, false, null, 0)];
            every = [.. Enumerable.Range(1, legs).Select(looks => new SeenChances(
                seen, !survival.IsConditional, Enumerable.Repeat(clean, looks).SelectMany(look => look)))];
            one = new SeenChances(seen, !survival.IsConditional, clean);
            here = Workspace.Columns(legs + 1, whole.Modes.Modes.Length);
            usedAt = new double[legs + 1];
        }

        public double[][] SumPlain(TripBlock block, int groups)
        {
            double[][] sums = Workspace.Columns(groups, (legs + 1) * OfAll);
            for (int row = 0; row < block.Rows; row++)
            {
                survival.Take(block.Seen, row);
                Follow(block, row);
                double[] of = sums[block.Group[row]];
                for (int place = 0; place <= legs; place++)
                {
                    int leg = place % legs;
                    of[place * OfAll] += leg == 0 ? block.Reached[row] : survival.At(here[leg], block.LimitsOf(row));
                    of[(place * OfAll) + 1] += survival.Fails(here[leg], here[^1], block.LimitsOf(row));
                }
            }

            return sums;
        }

        public double[][] Sum(TripBlock block, int groups)
        {
            double[][] sums = Workspace.Columns(groups, ((legs + 1) * Kinds) + 1);
            SeenRows rows = block.Seen ?? seen.RowsOf(block.Values, block.Rows);
            for (int row = 0; row < block.Rows; row++)
            {
                survival.Take(block.Seen, row);
                Follow(block, row);
                Add(sums[block.Group[row]], block.Reached[row], rows, row, block.LimitsOf(row));
            }

            return sums;
        }

        private void Follow(TripBlock block, int row)
        {
            block.StartOf(row).CopyTo(here[0]);
            for (int leg = 0; leg < legs; leg++)
            {
                for (int mode = 0; mode < block.Modes; mode++)
                {
                    here[leg + 1][mode] = here[leg][mode] + block.Legs[leg][(row * block.Modes) + mode];
                }

                usedAt[leg] = here[leg][0];
            }
        }

        private void Add(double[] sums, double setOut, SeenRows rows, int row, ReadOnlySpan<double> limits)
        {
            sums[^1] += setOut;
            Span<double> all = sums.AsSpan(legs * Kinds, Kinds);
            for (int leg = 0; leg < legs; leg++)
            {
                double reached = leg == 0 ? setOut : survival.At(here[leg], limits);
                one.Take(rows, row, usedAt.AsSpan(leg, 1));
                (double clean, double cleanFails) = (one.At(here[leg], limits), one.Fails(here[leg], here[^1], limits));
                Span<double> of = sums.AsSpan(leg * Kinds, Kinds);
                of[0] += reached;
                of[1] += survival.Fails(here[leg], here[^1], limits);
                of[2] += clean;
                of[3] += cleanFails;
                of[4] += Math.Max(0, reached - clean);
                of[5] += cleanFails + survival.Fails(here[0], here[leg], limits);

                // What comes clean to the look, and what of it is found.
                double before = leg == 0 ? setOut : every[leg - 1].At(here[leg], limits);
                every[leg].Take(rows, row, usedAt.AsSpan(0, leg + 1));
                double fails = every[leg].Fails(here[leg], here[leg + 1], limits);
                all[3] += fails;
                all[4] += Math.Max(0, before - every[leg].At(here[leg], limits));
                all[5] += fails;
                if (leg == 0)
                {
                    all[0] += reached;
                    all[1] += survival.Fails(here[0], here[^1], limits);
                    all[2] += clean;
                }
            }
        }
    }
}
