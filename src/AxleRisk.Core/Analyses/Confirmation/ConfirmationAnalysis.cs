using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Trips;
using AxleRisk.Core.Damage.TimeDomain;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Confirmation;

/// <summary>
/// Simulates the ride in time at the base case and at sampled points, counts the damage, and compares it with the spectral model's. The
/// linear ride and the ride with its limits run over the same roads, so that their ratio is known better than either.
/// </summary>
public static class ConfirmationAnalysis
{
    private const int Records = RecordBatch.Records;

    // The counting formula is not surer than this, whatever a few points say.
    private const double LeastCov = 0.02;

    /// <summary>The number of simulations a run will do: points times legs, those of a trip among them.</summary>
    public static long SimulationsOf(LifeModel model, ConfirmationQuestion question) =>
        (1 + (model.Factors.Factors.IsEmpty ? 0 : question.Points))
            * (long)(model.Scenario.Legs.Length + (model.Scenario.Trip?.Legs.Length ?? 0));

    /// <summary>Runs the analysis.</summary>
    /// <param name="model">The scenario; where it has a trip, with the trip's inputs among its own (<see cref="Trip.Whole"/>).</param>
    /// <param name="question">What is simulated.</param>
    /// <param name="options">Threads, progress in simulations, cancellation.</param>
    /// <exception cref="StudyException">The section has no wall left in the base case.</exception>
    /// <exception cref="OperationCanceledException">The run was ended before the base case was done.</exception>
    public static ConfirmationResult Run(LifeModel model, ConfirmationQuestion question, RunOptions options)
    {
        ImmutableArray<(LifeModel Model, ImmutableArray<int> Legs)> trips = TripsOf(model);
        PointDrive[] points =
        [
            .. PointChoice.Choose(model, question.Points, question.Seed).Select(p => Ready(model, trips, p, question, options))
                .Where(p => p.Use.IsFinite),
        ];
        if (points.Length == 0 || points[0].Use.Name != "base case")
        {
            throw new StudyException("the stress of the base case is infinite, so there is nothing to compare");
        }

        int ways = points[0].Ways.Length;
        BlockRun<SimulatedLeg?> run = BlockRunner.Run<SurfaceSimulation, SimulatedLeg?>(
            points.Length * ways, 1, options, () => new SurfaceSimulation(), (simulation, task, _) =>
            {
                DrivenWay way = points[task / ways].Ways[(int)(task % ways)];
                return way.Weight > 0 ? way.Point.Simulate(way.Leg, question.KmPerRecord, simulation, options.Cancellation) : null;
            });
        int done = run.Blocks.Count / ways;
        if (done == 0)
        {
            throw new OperationCanceledException();
        }

        ImmutableArray<ConfirmedPoint> confirmed =
            [.. Enumerable.Range(0, done).Select(i => Compare(points[i], [.. run.Blocks.Skip(i * ways).Take(ways)]))];
        (double median, double cov) = OverPoints(confirmed.Select(p => p.Ratio.Estimate));
        return new ConfirmationResult
        {
            Question = question,
            Points = confirmed,
            Steps = points[0].Use.Steps,
            RatioMedian = median,
            RatioCov = cov,
            Legs =
            [
                .. confirmed.SelectMany(p => p.Legs).GroupBy(l => l.Name).Select(leg =>
                {
                    (double median, double cov) = OverPoints(leg.Select(l => 1 / l.FastOverReference.Estimate));
                    return new LegRatio(leg.Key, median, cov);
                }),
            ],
            Records = Records,
            SimulatedSeconds = run.Blocks.Take(done * ways).Sum(Seconds),
            Evaluations = points.Length + (points.Length > 1 ? PointChoice.Sampled : 0),
            IsPartial = run.IsPartial,
        };
    }

    /// <summary>Median and coefficient of variation of ratios that points have given.</summary>
    private static (double Median, double Cov) OverPoints(IEnumerable<double> ratios)
    {
        RunningMoments logs = default;
        foreach (double ratio in ratios)
        {
            logs.Add(Math.Log(ratio));
        }

        double variance = logs.Count > 1 ? logs.Variance * (1 + 1.0 / logs.Count) : 0;
        return (Math.Exp(logs.Mean), Math.Max(LeastCov, Math.Sqrt(Math.Exp(variance) - 1)));
    }

    private static ImmutableArray<(LifeModel Model, ImmutableArray<int> Legs)> TripsOf(LifeModel model) =>
        model.Scenario.Trip is not { } trip ? []
        : [.. TripLegScenario.Of(model.Scenario, Enumerable.Range(0, trip.Legs.Length))
            .Select(s => (new LifeModel(s.Scenario, model.Factors), s.Legs))];

    private static PointDrive Ready(
        LifeModel model, ImmutableArray<(LifeModel Model, ImmutableArray<int> Legs)> trips, ChosenPoint point,
            ConfirmationQuestion question, RunOptions options)
    {
        options.Cancellation.ThrowIfCancellationRequested();
        var use = new PointModel(model, point, question);
        IEnumerable<DrivenWay> usual = model.Scenario.Legs.Select((leg, i) => new DrivenWay(use, i, leg.Name, use.Share(i), IsTrip: false));
        IEnumerable<(int Leg, DrivenWay Way)> trip = trips.SelectMany(t =>
        {
            var loaded = new PointModel(t.Model, point, question);
            return t.Legs.Select((leg, place) => (leg, new DrivenWay(
                loaded, place, model.Scenario.Trip!.Legs[leg].Name, PointChoice.TripKm(model, leg, point.Values), IsTrip: true)));
        });
        return new PointDrive(use, [.. usual, .. trip.OrderBy(t => t.Leg).Select(t => t.Way)]);
    }

    private static double Seconds(SimulatedLeg? leg) => leg is null ? 0
        : Records * (leg.Plain.Sum(s => s.Seconds) + (leg.CorrugatedShare > 0 ? leg.Corrugated.Sum(s => s.Seconds) : 0));

    private static ConfirmedPoint Compare(PointDrive point, SimulatedLeg?[] simulated)
    {
        (DrivenWay Way, SimulatedLeg Leg)[] driven = [.. point.Ways.Zip(simulated).Where(d => d.Second is not null)
            .Select(d => (d.First, d.Second!))];
        (DrivenWay Way, SimulatedLeg Leg)[] trip = [.. driven.Where(d => d.Way.IsTrip && d.Way.Point.IsFinite)];
        return Compare(point.Use.Name, point.Use.LifeKm, [.. driven.Where(d => !d.Way.IsTrip)]) with
        {
            Trip = trip.Length == 0 ? null : Compare("trip", double.NaN, trip),
        };
    }

    private static ConfirmedPoint Compare(string name, double lifeKm, (DrivenWay Way, SimulatedLeg Leg)[] driven)
    {
        double fast = driven.Sum(d => d.Way.Weight * d.Way.Point.FastPerKm(d.Way.Leg));
        double linear = driven.Sum(d => d.Way.Weight * d.Way.Point.LinearPerKm(d.Way.Leg));
        double[][] sums = Sums(driven);
        return new(
            name, lifeKm, FastOver(linear, sums, 0), fast / linear, Steps(sums), Ratio(sums, 0, sums[0].Length - 1),
            Jackknife.Estimate(sums, s => s[^1] / Records / fast), [.. driven.Select(d => CompareLeg(d.Way, d.Leg, fast))]);
    }

    private static ConfirmedLeg CompareLeg(DrivenWay way, SimulatedLeg simulated, double fastOfUse)
    {
        int last = simulated.Rides - 1;
        double[][] sums = Sums([(way with { Weight = 1 }, simulated)]);
        double fast = way.Point.FastPerKm(way.Leg);
        return new(
            way.Name, way.Weight * fast / fastOfUse, FastOver(way.Point.LinearPerKm(way.Leg), sums, 0), Steps(sums), Ratio(sums, 0, last),
            FastOver(fast, sums, last),
            simulated.Mean(last, s => s.OffGroundShare),
            simulated.Mean(last, s => s.BumpStrikesPerSecond) * 1000 / way.Point.SpeedMPerS(way.Leg),
            simulated.Mean(0, s => s.TyreForceRmsN) / way.Point.StaticTyreForceN);
    }

    /// <summary>The damage of each record, by ride.</summary>
    private static double[][] Sums((DrivenWay Way, SimulatedLeg Leg)[] driven) =>
    [
        .. Enumerable.Range(0, Records).Select(record => Enumerable.Range(0, driven[0].Leg.Rides)
            .Select(ride => driven.Sum(d => d.Way.Weight * d.Leg.PerKm(ride, record))).ToArray()),
    ];

    private static ImmutableArray<Interval> Steps(double[][] sums) =>
        [.. Enumerable.Range(1, sums[0].Length - 1).Select(ride => Ratio(sums, ride - 1, ride))];

    private static Interval FastOver(double fast, double[][] sums, int ride) => Jackknife.Estimate(sums, s => fast / (s[ride] / Records));

    private static Interval Ratio(double[][] sums, int before, int after) => Jackknife.Estimate(sums, s => s[after] / s[before]);

    /// <summary>A leg as it is driven at a point.</summary>
    /// <param name="Point">The vehicle and its roads.</param>
    /// <param name="Leg">The leg's index there.</param>
    /// <param name="Name">Its name.</param>
    /// <param name="Weight">Its share of the use, or its km of the trip; 0 where it is not driven.</param>
    /// <param name="IsTrip">Whether it is the trip's.</param>
    private sealed record DrivenWay(PointModel Point, int Leg, string Name, double Weight, bool IsTrip);

    /// <summary>A point with all that is driven there: the legs of use, then those of the trip.</summary>
    private sealed record PointDrive(PointModel Use, ImmutableArray<DrivenWay> Ways);
}
