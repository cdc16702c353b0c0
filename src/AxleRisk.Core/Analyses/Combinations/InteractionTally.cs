using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Combinations;

/// <summary>
/// The work of one block of the interaction indices, by pick and freeze: two independent samples A and B, and for every set of
/// players B with their columns taken from A. Two rows that share a set fail both with a probability that exceeds that of two
/// unrelated rows by the set's closed index, times the variance. Miner sum and S-N scatter cost no evaluation where their part
/// is normal: rows that share a part of its variance both fail with the bivariate normal probability.
/// </summary>
internal sealed class InteractionTally(
    LifeModel model, ImmutableArray<ImmutableArray<Factor>> players, PairedDraw draw)
{
    private readonly double requiredKm = model.Scenario.RequiredKm;
    private readonly bool conditional = model.Scale.IsLognormal;
    private readonly ImmutableArray<ImmutableArray<Factor>> damage = [.. players.Where(p => !IsScale(model, p))];
    private readonly ImmutableArray<double> scaleShares = [.. players.Where(p => IsScale(model, p)).Select(p => model.Scale.VarianceShare(p[0]))];

    /// <summary>The players in the order of the bits of a set.</summary>
    public ImmutableArray<ImmutableArray<Factor>> Players { get; } = InOrder(model, players);

    /// <summary>The number of sets; a block's sums are rows, failures of A and B, then the value of each set.</summary>
    public int Sets => 1 << players.Length;

    public static int Rows => 0;

    public static int Event => 1;

    public static int FirstSet => 2;

    public static ImmutableArray<ImmutableArray<Factor>> InOrder(LifeModel model, IEnumerable<ImmutableArray<Factor>> players) =>
        [.. players.OrderBy(p => IsScale(model, p) ? 1 : 0)];

    /// <summary>Evaluations a row costs.</summary>
    public static int EvaluationsPerRow(LifeModel model, ImmutableArray<ImmutableArray<Factor>> players) => 1 + (1 << players.Count(p => !IsScale(model, p)));

    public Worker CreateWorker() => new(model, draw.BlockSize);

    public double[] Work(Worker w, long first, int count)
    {
        draw.Draw(first, count, w.Workspace, w.A, w.B);
        Evaluate(w, w.A, count, w.OfA);
        Evaluate(w, w.B, count, w.OfB);
        var sums = new double[FirstSet + Sets];
        sums[Rows] = count;
        for (int i = 0; i < count; i++)
        {
            sums[Event] += w.OfA.Fails[i] + w.OfB.Fails[i];
        }

        for (int set = 0; set < 1 << damage.Length; set++)
        {
            Outputs mixed = set == 0 ? w.OfB : EvaluateMixed(w, set, count);
            for (int scales = 0; scales < 1 << scaleShares.Length; scales++)
            {
                sums[FirstSet + set + (scales << damage.Length)] = SharedFailures(w, mixed, ShareOf(scales), count);
            }
        }

        return sums;
    }

    private static bool IsScale(LifeModel model, ImmutableArray<Factor> player) => model.Scale.IsLognormal && player.All(LifeScale.Contains);

    private double ShareOf(int scales)
    {
        double share = 0;
        for (int s = 0; s < scaleShares.Length; s++)
        {
            share += (scales >> s & 1) * scaleShares[s];
        }

        return share;
    }

    private Outputs EvaluateMixed(Worker w, int set, int count)
    {
        Array.Copy(w.B, w.Mixed, w.B.Length);
        for (int p = 0; p < damage.Length; p++)
        {
            foreach (Factor factor in (set >> p & 1) != 0 ? damage[p] : [])
            {
                Array.Copy(w.A, factor.FirstColumn, w.Mixed, factor.FirstColumn, factor.ColumnNames.Length);
            }
        }

        Evaluate(w, w.Mixed, count, w.OfMixed);
        return w.OfMixed;
    }

    private static double SharedFailures(Worker w, Outputs mixed, double share, int count)
    {
        double sum = 0;
        for (int i = 0; i < count; i++)
        {
            double both = share > 0
                ? BothFail(w.OfA.Standardised[i], mixed.Standardised[i], share)
                : w.OfA.Fails[i] * mixed.Fails[i];
            sum += both - (w.OfA.Fails[i] * w.OfB.Fails[i]);
        }

        return sum;
    }

    private static double BothFail(double a, double b, double share) => share >= 1 - 1e-12
        ? StandardNormal.Cumulative(Math.Min(a, b))
        : BivariateNormal.Cumulative(a, b, share);

    private void Evaluate(Worker w, double[][] values, int count, Outputs to)
    {
        model.Evaluate(values, count, w.Workspace);
        for (int i = 0; i < count; i++)
        {
            to.Standardised[i] = conditional ? model.Scale.Standardised(requiredKm, w.Workspace.DamagePerKm[i]) : 0;
            to.Fails[i] = conditional ? StandardNormal.Cumulative(to.Standardised[i]) : w.Workspace.LifeKm[i] < requiredKm ? 1 : 0;
        }
    }

    /// <summary>The outputs of one sample, by row.</summary>
    internal sealed class Outputs(int capacity)
    {
        public double[] Standardised { get; } = new double[capacity];

        public double[] Fails { get; } = new double[capacity];
    }

    /// <summary>One thread's buffers.</summary>
    internal sealed class Worker(LifeModel model, int capacity)
    {
        public Workspace Workspace { get; } = model.CreateWorkspace(capacity);

        public double[][] A { get; } = model.CreateColumns(capacity);

        public double[][] B { get; } = model.CreateColumns(capacity);

        public double[][] Mixed { get; } = model.CreateColumns(capacity);

        public Outputs OfA { get; } = new(capacity);

        public Outputs OfB { get; } = new(capacity);

        public Outputs OfMixed { get; } = new(capacity);
    }
}
