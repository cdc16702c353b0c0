using System.Collections.Immutable;
using AxleRisk.Core.Damage;
using AxleRisk.Core.Numerics;
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

    /// <summary>The number of simulations a run will do: points times legs.</summary>
    public static long SimulationsOf(LifeModel model, ConfirmationQuestion question) =>
        (1 + (model.Factors.Factors.IsEmpty ? 0 : question.Points)) * (long)model.Scenario.Legs.Length;

    /// <summary>Runs the analysis.</summary>
    /// <exception cref="StudyException">The section has no wall left in the base case.</exception>
    /// <exception cref="OperationCanceledException">The run was ended before the base case was done.</exception>
    public static ConfirmationResult Run(LifeModel model, ConfirmationQuestion question, RunOptions options)
    {
        PointModel[] points = [.. PointChoice.Choose(model, question.Points, question.Seed).Select(p => Ready(model, p, question, options)).Where(p => p.IsFinite)];
        if (points.Length == 0 || points[0].Name != "base case")
        {
            throw new StudyException("the stress of the base case is infinite, so there is nothing to compare");
        }

        int legs = model.Scenario.Legs.Length;
        BlockRun<SimulatedLeg?> run = BlockRunner.Run<SurfaceSimulation, SimulatedLeg?>(
            points.Length * legs, 1, options, () => new SurfaceSimulation(), (simulation, task, _) =>
            {
                PointModel point = points[task / legs];
                int leg = (int)(task % legs);
                return point.IsDriven(leg) ? point.Simulate(leg, question.KmPerRecord, simulation, options.Cancellation) : null;
            });
        int done = run.Blocks.Count / legs;
        if (done == 0)
        {
            throw new OperationCanceledException();
        }

        ImmutableArray<ConfirmedPoint> confirmed =
            [.. Enumerable.Range(0, done).Select(i => Compare(model, points[i], [.. run.Blocks.Skip(i * legs).Take(legs)]))];
        RunningMoments logs = default;
        foreach (ConfirmedPoint point in confirmed)
        {
            logs.Add(Math.Log(point.Ratio.Estimate));
        }

        double variance = done > 1 ? logs.Variance * (1 + 1.0 / done) : 0;
        return new ConfirmationResult
        {
            Question = question,
            Points = confirmed,
            RatioMedian = Math.Exp(logs.Mean),
            RatioCov = Math.Max(LeastCov, Math.Sqrt(Math.Exp(variance) - 1)),
            Records = Records,
            SimulatedSeconds = run.Blocks.Take(done * legs).Sum(Seconds),
            Evaluations = points.Length + (points.Length > 1 ? PointChoice.Sampled : 0),
            IsPartial = run.IsPartial,
        };
    }

    private static PointModel Ready(LifeModel model, ChosenPoint point, ConfirmationQuestion question, RunOptions options)
    {
        options.Cancellation.ThrowIfCancellationRequested();
        return new PointModel(model, point, question);
    }

    private static double Seconds(SimulatedLeg? leg) => leg is null ? 0
        : Records * (leg.Plain.Sum(s => s.Seconds) + (leg.CorrugatedShare > 0 ? leg.Corrugated.Sum(s => s.Seconds) : 0));

    private static ConfirmedPoint Compare(LifeModel model, PointModel point, SimulatedLeg?[] simulated)
    {
        int[] driven = [.. Enumerable.Range(0, simulated.Length).Where(i => simulated[i] is not null)];
        double fast = driven.Sum(i => point.Share(i) * point.FastPerKm(i));
        var ofUse = new double[Records][];
        for (int record = 0; record < Records; record++)
        {
            double Sum(bool limits) => driven.Sum(i => point.Share(i) * simulated[i]!.PerKm(limits, record));
            ofUse[record] = [Sum(false), Sum(true)];
        }

        return new(
            point.Name, point.LifeKm, FastOver(fast, ofUse, 0), Ratio(ofUse),
            Jackknife.Estimate(ofUse, s => s[1] / Records / fast),
            [.. driven.Select(i => CompareLeg(model.Scenario.Legs[i].Name, point, i, simulated[i]!, fast))]);
    }

    private static ConfirmedLeg CompareLeg(string name, PointModel point, int leg, SimulatedLeg simulated, double fastOfUse)
    {
        double[][] sums = [.. Enumerable.Range(0, Records).Select(r => new[] { simulated.PerKm(false, r), simulated.PerKm(true, r) })];
        double fast = point.FastPerKm(leg);
        return new(
            name, point.Share(leg) * fast / fastOfUse, FastOver(fast, sums, 0), Ratio(sums), FastOver(fast, sums, 1),
            simulated.Mean(true, s => s.OffGroundShare),
            simulated.Mean(true, s => s.BumpStrikesPerSecond) * 1000 / point.SpeedMPerS(leg),
            simulated.Mean(false, s => s.TyreForceRmsN) / point.StaticTyreForceN);
    }

    private static Interval FastOver(double fast, double[][] sums, int ride) => Jackknife.Estimate(sums, s => fast / (s[ride] / Records));

    private static Interval Ratio(double[][] sums) => Jackknife.Estimate(sums, s => s[1] / s[0]);
}
