using System.Collections.Immutable;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Confirmation;

/// <summary>A point to be confirmed: a value of every factor column.</summary>
internal sealed record ChosenPoint(string Name, double[] Values);

/// <summary>
/// Chooses points: the base case, those nearest to failure at the required distance, and some over the whole spread of lives.
/// </summary>
internal static class PointChoice
{
    /// <summary>Vehicles sampled to choose from.</summary>
    public const int Sampled = 4096;

    /// <summary>The points.</summary>
    public static ImmutableArray<ChosenPoint> Choose(LifeModel model, int points, ulong seed)
    {
        var chosen = ImmutableArray.CreateBuilder<ChosenPoint>();
        chosen.Add(new("base case", Nominal(model)));
        if (points == 0 || model.Factors.Factors.IsEmpty)
        {
            return chosen.ToImmutable();
        }

        (double[][] rows, double[] lives) = Sample(model, seed);
        int[] order = [.. Enumerable.Range(0, Sampled).Where(i => double.IsFinite(lives[i]) && lives[i] > 0).OrderBy(i => lives[i])];
        int near = Math.Min((points + 1) / 2, order.Length);
        var taken = new HashSet<int>();
        foreach (int row in order.OrderBy(i => Math.Abs(Math.Log(lives[i] / model.Scenario.RequiredKm))).Take(near))
        {
            taken.Add(row);
            chosen.Add(new($"near failure {taken.Count}", rows[row]));
        }

        int spread = Math.Min(points - near, order.Length - near);
        for (int i = 0; i < spread; i++)
        {
            double place = (i + 0.5) / spread;
            int at = (int)(place * order.Length);
            while (!taken.Add(order[at]))
            {
                at = (at + 1) % order.Length;
            }

            chosen.Add(new($"life at {100 * place:0} %", rows[order[at]]));
        }

        return chosen.ToImmutable();
    }

    /// <summary>The distance of a leg of a trip at a point, km.</summary>
    public static double TripKm(LifeModel whole, int leg, double[] values)
    {
        Input? distance = whole.Scenario.Find(TripQuantities.Distance, whole.Scenario.Legs.Length + leg);
        return distance is null ? 0 : whole.Factors.Find(distance.Name) is { } factor ? values[factor.FirstColumn] : distance.Value.Nominal;
    }

    private static (double[][] Rows, double[] Lives) Sample(LifeModel model, ulong seed)
    {
        Workspace workspace = model.CreateWorkspace(Sampled);
        double[][] values = model.CreateColumns(Sampled);
        model.Draw(SamplingPlan.FromName(SamplingPlan.Names[0], Sampled), seed, "confirm", 0, Sampled, workspace, values);
        model.Evaluate(values, Sampled, workspace);
        return ([.. Enumerable.Range(0, Sampled).Select(row => values.Select(c => c[row]).ToArray())], workspace.LifeKm);
    }

    private static double[] Nominal(LifeModel model)
    {
        var values = new double[model.Factors.ColumnNames.Length];
        foreach (Factor factor in model.Factors.Factors)
        {
            factor.Nominal.CopyTo(values, factor.FirstColumn);
        }

        return values;
    }
}
