using System.Collections.Immutable;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Combinations;

/// <summary>
/// The work of one block of the interaction indices, by pick and freeze: two independent samples A and B, and for every set of
/// players B with their columns taken from A. Two rows that share a set fail both with a probability that exceeds that of two
/// unrelated rows by the set's closed index, times the variance. What is left to chance given the others costs no evaluation where it is
/// known exactly: how likely rows that share a part of it both fail is <see cref="ModeSurvival"/>'s.
/// </summary>
internal sealed class InteractionTally(
    LifeModel model, ImmutableArray<ImmutableArray<Factor>> players, PairedDraw draw)
{
    private readonly double requiredKm = model.Scenario.RequiredKm;
    private readonly bool conditional = model.Chances.IsExact;
    private readonly ImmutableArray<ImmutableArray<Factor>> damage = [.. players.Where(p => !IsScale(model, p))];
    private readonly ImmutableArray<Factor> chances = [.. players.Where(p => IsScale(model, p)).Select(p => p[0])];

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
    public static int EvaluationsPerRow(LifeModel model, ImmutableArray<ImmutableArray<Factor>> players) =>
        1 + (1 << players.Count(p => !IsScale(model, p)));

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
            ModeSurvival mixed = set == 0 ? w.OfB : EvaluateMixed(w, set, count);
            for (int shared = 0; shared < 1 << chances.Length; shared++)
            {
                sums[FirstSet + set + (shared << damage.Length)] = SharedFailures(w, mixed, shared, count);
            }
        }

        return sums;
    }

    private static bool IsScale(LifeModel model, ImmutableArray<Factor> player) =>
        model.Chances.IsExact && player.All(f => model.Chances.ModeOf(f) >= 0);

    private ModeSurvival EvaluateMixed(Worker w, int set, int count)
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

    // The sum over rows of P(both fail) - P(A fails) P(B fails), sharing a set of the chances; P(both fail) exceeds that of
    // unrelated rows as P(both survive) does.
    private double SharedFailures(Worker w, ModeSurvival mixed, int shared, int count)
    {
        double share = 0;
        int modes = 0;
        for (int i = 0; i < chances.Length; i++)
        {
            if ((shared >> i & 1) == 0)
            {
                continue;
            }

            share += model.Chances.ShareOfFatigue(chances[i]);
            modes |= 1 << model.Chances.ModeOf(chances[i]);
        }

        double sum = 0;
        for (int i = 0; i < count; i++)
        {
            double both = w.OfA.Fails[i] * mixed.Fails[i];
            if (modes != 0 && model.Modes.IsPlain)
            {
                both = BothFail(w.OfA.Standardised[i], mixed.Standardised[i], share);
            }
            else if (modes != 0)
            {
                both += w.OfA.BothSurvive(mixed, i, share, modes) - w.OfA.BothSurvive(mixed, i, 0, 0);
            }

            sum += both - (w.OfA.Fails[i] * w.OfB.Fails[i]);
        }

        return sum;
    }

    private static double BothFail(double a, double b, double share) => share >= 1 - 1e-12
        ? StandardNormal.Cumulative(Math.Min(a, b))
        : BivariateNormal.Cumulative(a, b, share);

    private void Evaluate(Worker w, double[][] values, int count, ModeSurvival to)
    {
        model.Evaluate(values, count, w.Workspace);
        for (int i = 0; i < count; i++)
        {
            if (conditional)
            {
                to.Fill(w.Workspace, i, requiredKm);
            }
            else
            {
                to.Fails[i] = w.Workspace.LifeKm[i] < requiredKm ? 1 : 0;
            }
        }
    }

    /// <summary>One thread's buffers.</summary>
    internal sealed class Worker(LifeModel model, int capacity)
    {
        public Workspace Workspace { get; } = model.CreateWorkspace(capacity);

        public double[][] A { get; } = model.CreateColumns(capacity);

        public double[][] B { get; } = model.CreateColumns(capacity);

        public double[][] Mixed { get; } = model.CreateColumns(capacity);

        public ModeSurvival OfA { get; } = new(model.Chances, capacity);

        public ModeSurvival OfB { get; } = new(model.Chances, capacity);

        public ModeSurvival OfMixed { get; } = new(model.Chances, capacity);
    }
}
