using AxleRisk.Core.Analyses.RareEvents;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Trips;

/// <summary>
/// Failing on one leg of a trip: surviving the damage before the leg and not that after it. Where Miner sum and S-N scatter are
/// averaged exactly, P(fails on the leg | u) is known whatever its form, and c(u) is the number that gives it: with h that
/// probability, c = -Phi^-1(h), so that failure is c(u) + z &lt;= 0.
/// </summary>
/// <param name="whole">The scenario with its trip's inputs among its own, made ready.</param>
/// <param name="trip">The legs of its trip, made ready.</param>
/// <param name="leg">The leg's index.</param>
/// <param name="state">The state of the discrete factors held.</param>
internal sealed class TripLimitState(LifeModel whole, TripModel trip, int leg, DiscreteState state) : FactorLimitState(whole, state)
{
    private readonly TripSurvival survival = new(whole.Scale.IsLognormal ? whole.Scale : null);

    public override double Sigma => HasNormalPart ? 1 : 0;

    protected override Margins CreateMargins(int capacity)
    {
        var damage = new Damages(Model, trip, capacity);
        return (values, count, g) =>
        {
            damage.Evaluate(values, count);
            for (int row = 0; row < count; row++)
            {
                (double before, double after) = damage.About(leg, row);
                g[row] = !(after > before) ? double.PositiveInfinity
                    : HasNormalPart ? Averaged(before, after)
                    : Drawn(before, after, damage.Drawn(row));
            }
        };
    }

    /// <summary>An axle that breaks at the end of the leg: nearly all of a rare leg's failures are there, for earlier is rarer still.</summary>
    protected override double ScoreOfScale(DesignPoint point, double[][] values)
    {
        var damage = new Damages(Model, trip, 1);
        damage.Evaluate(values, 1);
        return Model.Scale.Standardised(1, damage.About(leg, 0).After);
    }

    private double Averaged(double before, double after)
    {
        double fails = survival.Fails(before, after, double.NaN);
        if (fails > 0)
        {
            return -StandardNormal.Quantile(fails);
        }

        // No double is that small: far on the safe side the way on is toward more damage, or, of a vehicle that must have broken before, toward less.
        double end = Model.Scale.Standardised(1, after);
        return end < 0 ? -end : Model.Scale.Standardised(1, before);
    }

    private static double Drawn(double before, double after, double scale) => Math.Max(Math.Log(scale / after), Math.Log(before / scale));

    /// <summary>The damages of one thread's rows.</summary>
    private sealed class Damages(LifeModel whole, TripModel trip, int capacity)
    {
        private readonly Workspace usual = whole.CreateWorkspace(capacity);
        private readonly TripWorkspace workspace = trip.CreateWorkspace(capacity);
        private readonly double[] start = new double[capacity];
        private readonly double[][] legs = Workspace.Columns(trip.Legs, capacity);

        public void Evaluate(double[][] values, int count)
        {
            whole.Evaluate(values, count, usual);
            trip.FillStart(values, count, usual.DamagePerKm, start);
            trip.Evaluate(values, count, workspace, legs);
        }

        public (double Before, double After) About(int leg, int row)
        {
            double before = start[row];
            for (int l = 0; l < leg; l++)
            {
                before += legs[l][row];
            }

            return (before, before + legs[leg][row]);
        }

        public double Drawn(int row) => usual.Scale[row];
    }
}
