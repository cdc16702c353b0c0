using AxleRisk.Core.Analyses.RareEvents;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Numerics.Vectors;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Trips;

/// <summary>
/// Failing on one leg of a trip: surviving what is used up before the leg and not what is after it. Where what is left to chance is
/// averaged exactly, P(fails on the leg | u) is known whatever its form, and c(u) is the number that gives it: with h that
/// probability, c = -Phi^-1(h), so that failure is c(u) + z &lt;= 0.
/// </summary>
/// <param name="whole">The scenario with its trip's inputs among its own, made ready.</param>
/// <param name="trip">The legs of its trip, made ready.</param>
/// <param name="leg">The leg's index.</param>
/// <param name="state">The state of the discrete factors held.</param>
/// <param name="survival">How survival follows; of a vehicle that was seen, failing is being seen so and failing.</param>
internal sealed class TripLimitState(LifeModel whole, TripModel trip, int leg, DiscreteState state, TripSurvival survival)
    : FactorLimitState(whole, state)
{
    public override double Sigma => HasNormalPart ? 1 : 0;

    protected override Margins CreateMargins(int capacity)
    {
        var about = new UsedAbout(Model, trip, leg, capacity);
        TripSurvival ofRow = survival.OfThread();
        return (values, count, g) =>
        {
            about.Evaluate(values, count);
            SeenRows? seen = ofRow.Seen?.Rows(about.Usual, values, count);
            for (int row = 0; row < count; row++)
            {
                ofRow.Take(seen, row);
                g[row] = !about.IsDriven(row) ? double.PositiveInfinity : HasNormalPart
                    ? Averaged(ofRow, about.Before(row), about.After(row)) : Drawn(about, row);
            }
        };
    }

    /// <summary>
    /// An axle that breaks at the end of the leg: nearly all of a rare leg's failures are there, for earlier is rarer still.
    /// </summary>
    protected override double[] UsedAtFailure(double[][] values)
    {
        var about = new UsedAbout(Model, trip, leg, 1);
        about.Evaluate(values, 1);
        return about.After(0).ToArray();
    }

    private double Averaged(TripSurvival ofRow, ReadOnlySpan<double> before, ReadOnlySpan<double> after)
    {
        double fails = ofRow.Fails(before, after, []);
        if (fails > 0)
        {
            return -StandardNormal.Quantile(fails);
        }

        // No double is that small: far on the safe side the way on is toward using up more, or, of a vehicle that must have
        // broken before, toward less.
        double end = Model.Chances.Margin(after);
        return end > 0 ? end : -Model.Chances.Margin(before);
    }

    // Every mode must survive the beginning, one must not survive the end.
    private static double Drawn(UsedAbout about, int row)
    {
        (double reached, double left) = (double.NegativeInfinity, double.PositiveInfinity);
        for (int mode = 0; mode < about.Before(row).Length; mode++)
        {
            double limit = about.Limits(row)[mode];
            reached = Math.Max(reached, Math.Log(about.Before(row)[mode] / limit));
            left = Math.Min(left, Math.Log(limit / about.After(row)[mode]));
        }

        return Math.Max(left, reached);
    }

    /// <summary>What one thread's rows have used up before and after the leg.</summary>
    private sealed class UsedAbout(LifeModel whole, TripModel trip, int leg, int capacity)
    {
        private readonly TripWorkspace workspace = trip.CreateWorkspace(capacity);
        private readonly double[] before = new double[capacity * trip.Modes];
        private readonly double[] after = new double[capacity * trip.Modes];
        private readonly double[] limits = new double[capacity * trip.Modes];
        private readonly double[][] legs = Workspace.Columns(trip.Legs, capacity * trip.Modes);

        public Workspace Usual { get; } = whole.CreateWorkspace(capacity);

        public void Evaluate(double[][] values, int count)
        {
            whole.Evaluate(values, count, Usual);
            whole.FillLimits(values, count, limits);
            trip.FillStart(values, count, Usual, before);
            trip.Evaluate(values, count, workspace, legs);
            foreach (double[] earlier in legs.AsSpan(0, leg))
            {
                VectorColumns.Add(earlier, before);
            }

            before.CopyTo(after, 0);
            VectorColumns.Add(legs[leg], after);
        }

        public ReadOnlySpan<double> Before(int row) => before.AsSpan(row * trip.Modes, trip.Modes);

        public ReadOnlySpan<double> After(int row) => after.AsSpan(row * trip.Modes, trip.Modes);

        public ReadOnlySpan<double> Limits(int row) => limits.AsSpan(row * trip.Modes, trip.Modes);

        public bool IsDriven(int row)
        {
            for (int i = row * trip.Modes; i < (row + 1) * trip.Modes; i++)
            {
                if (after[i] > before[i])
                {
                    return true;
                }
            }

            return false;
        }
    }
}
