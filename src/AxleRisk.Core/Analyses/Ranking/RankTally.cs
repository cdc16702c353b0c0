using AxleRisk.Core.Modes;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Ranking;

/// <summary>
/// The work of one block of the ranking: the sums of <see cref="SobolTerms"/> for ln life and for failure before the
/// required distance. For the event, exact probabilities given the damage stand in for counted failures where the scenario
/// allows it.
/// </summary>
internal sealed class RankTally(LifeModel model, RankPlan layout, PairedDraw draw, double centreLnLife)
{
    private readonly double requiredKm = model.Scenario.RequiredKm;
    private readonly bool conditional = model.Scale.IsLognormal;
    private readonly ModeTerms terms = new(model);

    public Worker CreateWorker() => new(model, draw.BlockSize);

    public double[] Work(Worker w, long first, int count)
    {
        draw.Draw(first, count, w.Workspace, w.A, w.B);
        var sums = new double[layout.Sums];
        Evaluate(w, w.A, count, w.OfA);
        AddLegs(w, count, sums);
        w.First?.Fill(w.Workspace, count, sums.AsSpan(layout.FirstOfMode(0), layout.Modes));
        for (int m = 0; m < layout.Modes; m++)
        {
            sums[layout.WithoutMode(m)] = terms.IsOn ? ModeTerms.FailuresWithout(w.OfA, m, count) : double.NaN;
        }

        Evaluate(w, w.B, count, w.OfB);
        sums[RankPlan.Rows] = count;
        for (int i = 0; i < count; i++)
        {
            sums[RankPlan.Life] += w.OfA.LnLife[i] + w.OfB.LnLife[i];
            sums[RankPlan.LifeSquared] += Square(w.OfA.LnLife[i]) + Square(w.OfB.LnLife[i]);
            sums[RankPlan.Event] += w.OfA.Fails[i] + w.OfB.Fails[i];
        }

        for (int g = 0; g < layout.Groups.Length; g++)
        {
            AddGroup(w, g, count, sums);
        }

        for (int p = 0; p < layout.Pins.Length; p++)
        {
            sums[layout.PinnedEvent(p)] = PinnedFailures(w, layout.Pins[p], count);
        }

        return sums;
    }

    /// <summary>Adds each leg's share of the damage of sample A, last evaluated.</summary>
    private void AddLegs(Worker w, int count, double[] sums)
    {
        for (int i = 0; i < count; i++)
        {
            double damage = w.OfA.Damage[i];
            for (int leg = 0; leg < layout.Legs && damage > 0 && double.IsFinite(damage); leg++)
            {
                sums[layout.FailuresOfLeg(leg)] += w.OfA.Fails[i] * w.Workspace.DamageByLeg[leg][i] / damage;
            }
        }
    }

    private static double Square(double x) => x * x;

    private void AddGroup(Worker w, int g, int count, double[] sums)
    {
        RankGroup group = layout.Groups[g];
        Array.Copy(w.A, w.Mixed, w.A.Length);
        foreach (int column in group.Columns)
        {
            w.Mixed[column] = w.B[column];
        }

        Evaluate(w, w.Mixed, count, w.OfMixed, group.IsScale ? w.OfA : null);
        double rho = conditional && group.IsScale ? model.Scale.VarianceShare(group.Factors[0]) : 0;
        for (int i = 0; i < count; i++)
        {
            double a = w.OfA.LnLife[i];
            double mixed = w.OfMixed.LnLife[i];
            sums[RankPlan.LifeFirst(g)] += SobolTerms.First(a, w.OfB.LnLife[i], mixed);
            sums[RankPlan.LifeTotal(g)] += SobolTerms.Total(a, mixed);
            double pA = w.OfA.Fails[i];
            double pB = w.OfB.Fails[i];
            if (terms.IsOn)
            {
                sums[RankPlan.EventFirst(g)] += group.IsScale
                    ? terms.ChanceFirst(w.OfA, w.OfB, i, group.Factors[0])
                    : SobolTerms.First(pA, pB, w.OfMixed.Fails[i]);
                sums[RankPlan.EventTotal(g)] += group.IsScale
                    ? terms.ChanceTotal(w.OfA, i, group.Factors[0])
                    : ModeTerms.Total(w.OfA, w.OfMixed, i);
            }
            else if (conditional && group.IsScale)
            {
                double gA = w.OfA.Standardised[i];
                sums[RankPlan.EventFirst(g)] += SobolTerms.ScaleFirst(gA, w.OfB.Standardised[i], pA, pB, rho);
                sums[RankPlan.EventTotal(g)] += SobolTerms.ScaleTotal(gA, pA, rho);
            }
            else
            {
                sums[RankPlan.EventFirst(g)] += SobolTerms.First(pA, pB, w.OfMixed.Fails[i]);
                sums[RankPlan.EventTotal(g)] += SobolTerms.EventTotal(pA, w.OfMixed.Fails[i]);
            }
        }
    }

    private double PinnedFailures(Worker w, Pin pin, int count)
    {
        bool scale = LifeScale.Contains(pin.Factor);
        LifeScale held = model.Scale;
        if (conditional && scale)
        {
            held = model.Scale.Hold(pin.Factor, pin.Values[0]);
            double total = 0;
            for (int i = 0; i < count; i++)
            {
                total += held.FailureProbability(requiredKm, w.OfA.Damage[i]);
            }

            return total;
        }

        if (terms.IsOn && terms.ChanceOf(pin.Factor) >= 0)
        {
            double total = 0;
            for (int i = 0; i < count; i++)
            {
                total += terms.Pinned(w.OfA, i, pin.Factor, pin.Values[0]);
            }

            return total;
        }

        Array.Copy(w.A, w.Mixed, w.A.Length);
        for (int c = 0; c < pin.Values.Length; c++)
        {
            Array.Fill(w.Constant[c], pin.Values[c]);
            w.Mixed[pin.Factor.FirstColumn + c] = w.Constant[c];
        }

        Evaluate(w, w.Mixed, count, w.OfMixed, scale && model.Modes.IsPlain ? w.OfA : null);
        return w.OfMixed.Fails.AsSpan(0, count).ToArray().Sum();
    }

    /// <summary>
    /// Evaluates the outputs of a sample; where only the scale differs from an evaluated sample its damage is taken over.
    /// </summary>
    private void Evaluate(Worker w, double[][] values, int count, Outputs to, Outputs? sameDamage = null)
    {
        if (sameDamage is null || !model.Modes.IsPlain)
        {
            model.Evaluate(values, count, w.Workspace);
            w.Workspace.DamagePerKm.AsSpan(0, count).CopyTo(to.Damage);
        }
        else
        {
            sameDamage.Damage.AsSpan(0, count).CopyTo(to.Damage);
        }

        model.FillScale(values, count, w.Workspace.Scale);
        for (int i = 0; i < count; i++)
        {
            // A section without wall has life 0: a metre stands in, so that its logarithm stays finite.
            double life = Math.Max(model.Modes.IsPlain ? w.Workspace.Scale[i] / to.Damage[i] : w.Workspace.LifeKm[i], 1e-3);
            to.LnLife[i] = Math.Log(life) - centreLnLife;
            if (terms.IsOn)
            {
                terms.Fill(w.Workspace, i, to);
                continue;
            }

            to.Standardised[i] = conditional ? model.Scale.Standardised(requiredKm, to.Damage[i]) : 0;
            to.Fails[i] = conditional ? StandardNormal.Cumulative(to.Standardised[i]) : life < requiredKm ? 1 : 0;
        }
    }

    /// <summary>The outputs of one sample, by row.</summary>
    internal sealed class Outputs(LifeModel model, int capacity) : ModeSurvival(model.Modes.IsPlain ? null : model.Chances, capacity)
    {
        public double[] Damage { get; } = new double[capacity];

        public double[] LnLife { get; } = new double[capacity];
    }

    /// <summary>One thread's buffers.</summary>
    internal sealed class Worker(LifeModel model, int capacity)
    {
        public Workspace Workspace { get; } = model.CreateWorkspace(capacity);

        public FirstModes? First { get; } = model.Modes.Modes.Length > 1 ? new(model, capacity) : null;

        public double[][] A { get; } = model.CreateColumns(capacity);

        public double[][] B { get; } = model.CreateColumns(capacity);

        public double[][] Mixed { get; } = model.CreateColumns(capacity);

        public double[][] Constant { get; } = model.CreateColumns(capacity);

        public Outputs OfA { get; } = new(model, capacity);

        public Outputs OfB { get; } = new(model, capacity);

        public Outputs OfMixed { get; } = new(model, capacity);
    }
}
