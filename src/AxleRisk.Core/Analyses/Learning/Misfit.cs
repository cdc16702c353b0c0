using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Randomness;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.Learning;

/// <summary>
/// Whether records look like records of the model: failures by distance against those expected of vehicles that went as far, that is
/// the sum of their cumulated hazards, which needs no guess at how far those that failed would have been driven. The statistic is
/// chi-squared; what chance makes of it is drawn from Poisson counts, once for each value of what is unknown.
/// </summary>
internal sealed class Misfit
{
    private const int Draws = 400;
    private const int MostBins = 8;
    private const double FailuresOfBin = 3;
    private const int PartsOfInterval = 12;

    private readonly LearnModel model;
    private readonly string[] groups;
    private readonly double[] edges;
    private readonly double[] units;

    /// <summary>What each drawn value of the unknown gives, by draw.</summary>
    private readonly (double[] Seen, double[] Expected, double[] SeenOfGroup, double[] ExpectedOfGroup)[] drawn;

    private Misfit(LearnModel model, double[] edges, ulong seed)
    {
        (this.model, this.edges) = (model, edges);
        groups = [.. model.Model.Scenario.Field.Records.Select(r => r.Group).Distinct()];
        drawn = new (double[], double[], double[], double[])[Draws];
        units = new double[Draws * (edges.Length + groups.Length + 1)];
        SamplingPlan.FromName(SamplingPlan.Names[0], units.Length).Fill(new StreamKey(seed, "learn/misfit"), 0, 0, units);
    }

    /// <summary>Makes the check.</summary>
    public static MisfitResult Of(LearnModel model, PosteriorSampler sampler, PosteriorSample posterior, ulong seed)
    {
        FieldData field = model.Model.Scenario.Field;
        if (field.Records.IsEmpty)
        {
            return new MisfitResult(1, [], [], 0);
        }

        double[] edges = EdgesOf(field, model.Asked, posterior);
        var misfit = new Misfit(model, edges, seed);
        int[] rows = posterior.Draw(Draws, 0.5);
        foreach ((int draw, double[] counts) in sampler.Visit(model.AskedAt(edges), posterior, rows, misfit.Count).Index())
        {
            (int bins, int groups) = (edges.Length, misfit.groups.Length);
            misfit.drawn[draw] = (counts[..bins], counts[bins..(2 * bins)], counts[(2 * bins)..^groups], counts[^groups..]);
        }

        return misfit.Result(field);
    }

    /// <summary>Ends of the classes of distance: about as many failures are expected in each; the last is where the last vehicle
    /// got.</summary>
    private static double[] EdgesOf(FieldData field, ReadOnlySpan<double> asked, PosteriorSample posterior)
    {
        double last = field.Records.Max(r => r.HasFailed ? r.ToKm : r.FromKm);
        int bins = (int)Math.Clamp(Math.Round(field.Failures / FailuresOfBin), 1, MostBins);

        // The mean failure probability after the data at the distances asked for, straight between, as hazards.
        List<(double Km, double Hazard)> mean = [(0, 0)];
        for (int k = 0; k < asked.Length; k++)
        {
            double[] failed = posterior.Failed[k];
            mean.Add((asked[k], -LogExp.LogP1(-Math.Min(0.999999, posterior.Mean(row => failed[row])))));
        }

        double HazardAt(double km)
        {
            int right = Math.Max(1, mean.FindIndex(m => m.Km >= km) is >= 0 and var found ? found : mean.Count - 1);
            ((double a, double ha), (double b, double hb)) = (mean[right - 1], mean[right]);
            return Math.Max(0, ha + ((hb - ha) * (km - a) / (b - a)));
        }

        const int steps = 200;
        double[] grid = [.. Enumerable.Range(0, steps + 1).Select(i => last * i / steps)];
        var expected = new double[grid.Length];
        (double End, double Vehicles)[] ends = [.. field.Records.Select(r =>
            (r.HasFailed ? 0.5 * (r.FromKm + r.ToKm) : r.FromKm, r.Vehicles))];
        for (int i = 1; i < grid.Length; i++)
        {
            double left = ends.Sum(e => e.End > grid[i - 1] ? e.Vehicles : 0);
            expected[i] = expected[i - 1] + (left * (HazardAt(grid[i]) - HazardAt(grid[i - 1])));
        }

        List<double> edges = [];
        for (int b = 1; b < bins; b++)
        {
            double wanted = expected[^1] * b / bins;
            int at = Array.FindIndex(expected, e => e >= wanted);
            if (at > 0 && at < steps && (edges.Count == 0 || grid[at] > edges[^1]))
            {
                edges.Add(grid[at]);
            }
        }

        return [.. edges, last];
    }

    // What was seen and what is expected by class of distance, and the same by group, one after the other.
    private double[] Count(LearnWorker worker, int draw)
    {
        double[] seen = new double[edges.Length], expected = new double[edges.Length];
        double[] seenOfGroup = new double[groups.Length], expectedOfGroup = new double[groups.Length];
        double shift = units[draw];
        for (int set = 0; set < model.Sets.Length; set++)
        {
            LifeCurve curve = worker.Curves[set];
            double[] hazardAt = [.. edges.Select(curve.HazardAt)];
            foreach (FieldRecord record in model.Sets[set].Records)
            {
                int group = Array.IndexOf(groups, record.Group);
                if (!record.HasFailed || record.IsExact)
                {
                    double km = record.HasFailed ? record.ToKm : record.FromKm;
                    expectedOfGroup[group] += record.Vehicles * Expose(curve.HazardAt(km), record.Vehicles, hazardAt, expected);
                    if (record.HasFailed)
                    {
                        seen[BinOf(km)] += record.Vehicles;
                        seenOfGroup[group] += record.Vehicles;
                    }

                    continue;
                }

                // Where in its interval a vehicle failed is drawn as the model has it, evenly for several.
                int parts = (int)Math.Min(PartsOfInterval, record.Vehicles);
                double each = record.Vehicles / parts, low = curve.At(record.FromKm).Failed, high = curve.At(record.ToKm).Failed;
                for (int part = 0; part < parts; part++)
                {
                    double failed = low + ((high - low) * (part + shift) / parts);
                    double hazard = -LogExp.LogP1(-Math.Min(failed, 1 - 1e-12));
                    expectedOfGroup[group] += each * Expose(hazard, each, hazardAt, expected);
                    int bin = Array.FindIndex(hazardAt, h => h >= hazard);
                    seen[bin < 0 ? edges.Length - 1 : bin] += each;
                    seenOfGroup[group] += each;
                }
            }
        }

        return [.. seen, .. expected, .. seenOfGroup, .. expectedOfGroup];
    }

    // Adds what a vehicle is exposed to in each class until its cumulated hazard; gives that hazard.
    private static double Expose(double hazard, double vehicles, double[] hazardAt, double[] expected)
    {
        double before = 0;
        for (int b = 0; b < expected.Length && before < hazard; b++)
        {
            double upTo = b == expected.Length - 1 ? hazard : Math.Min(hazard, hazardAt[b]);
            expected[b] += vehicles * (upTo - before);
            before = upTo;
        }

        return hazard;
    }

    private int BinOf(double km) => Array.FindIndex(edges, e => e >= km) is >= 0 and var bin ? bin : edges.Length - 1;

    private MisfitResult Result(FieldData field)
    {
        int at = Draws;
        double above = 0;
        var aboveOfGroup = new double[groups.Length];
        foreach ((double[] seen, double[] expected, double[] seenOfGroup, double[] expectedOfGroup) in drawn)
        {
            double ofData = 0, ofChance = 0;
            for (int b = 0; b < edges.Length; b++)
            {
                ofData += Distance(seen[b], expected[b]);
                ofChance += Distance(PoissonQuantile.Of(expected[b], units[at++]), expected[b]);
            }

            above += ofChance >= ofData ? 1 : 0;
            for (int g = 0; g < groups.Length; g++)
            {
                double chance = PoissonQuantile.Of(expectedOfGroup[g], units[at++]);
                aboveOfGroup[g] += Distance(chance, expectedOfGroup[g]) >= Distance(seenOfGroup[g], expectedOfGroup[g]) ? 1 : 0;
            }
        }

        ImmutableArray<MisfitGroup> byGroup = groups.Length < 2 ? [] :
        [
            .. groups.Select((name, g) => new MisfitGroup(
                name, field.Records.Where(r => r.Group == name).Sum(r => r.Vehicles), drawn.Average(d => d.SeenOfGroup[g]),
                drawn.Average(d => d.ExpectedOfGroup[g]), aboveOfGroup[g] / Draws)),
        ];
        return new MisfitResult(
            above / Draws,
            [
                .. edges.Select((to, b) => new MisfitCount(
                    b == 0 ? 0 : edges[b - 1], to, drawn.Average(d => d.Seen[b]), drawn.Average(d => d.Expected[b]))),
            ],
            byGroup, Draws);
    }

    private static double Distance(double seen, double expected) => expected > 0
        ? (seen - expected) * (seen - expected) / expected : seen > 0 ? double.PositiveInfinity : 0;
}
