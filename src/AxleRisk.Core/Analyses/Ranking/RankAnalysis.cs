using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Core.Analyses.Shares;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Ranking;

/// <summary>
/// Shapley effects and first-order and total Sobol' indices of ln life and of failure, and the failure probability with each
/// factor held.
/// </summary>
public static class RankAnalysis
{
    /// <summary>The most evaluations that go into indices and pinned probabilities.</summary>
    private const long MostForIndices = 1_000_000;

    /// <summary>
    /// The part of the evaluations that goes into indices and pinned probabilities, while it is not more; the rest goes into the
    /// shares.
    /// </summary>
    private const double PartOfIndices = 0.4;

    /// <summary>The most evaluations that go into shares until they are narrow enough.</summary>
    private const long MostForShares = 3_000_000;

    /// <summary>The most evaluations of a run that ends when the shares are narrow enough.</summary>
    public const long MostEvaluations = MostForIndices + MostForShares;

    /// <summary>About the evaluations that such a run takes at a failure probability of a few percent.</summary>
    public const long TypicalEvaluations = 1_500_000;

    /// <summary>
    /// The most evaluations where nobody says otherwise: <see cref="MostEvaluations"/>; for all subsets by the number of factors.
    /// </summary>
    /// <exception cref="StudyException">There are too many factors.</exception>
    public static long DefaultEvaluations(LifeModel model, RankQuestion question) => question.AllSubsets
        ? MostForIndices + ShareRun.EvaluationsOfAllSubsets(ForAllSubsets(new LifeShareProblem(model, StudySettings.DefaultSeed, 0)))
        : MostEvaluations;

    /// <summary>
    /// Runs the analysis, spending at most <see cref="StudySettings.Evaluations"/> unless that is too few for two rows a
    /// jackknife group and a pair of rows a replicate.
    /// </summary>
    /// <param name="model">The scenario.</param>
    /// <param name="settings">Evaluations at most, seed, sampling plan of the indices.</param>
    /// <param name="options">Threads, progress, cancellation.</param>
    /// <param name="question">How the shares are found, and when they are good enough; the usual one where null.</param>
    /// <exception cref="StudyException">The sampling plan has too few dimensions, or there are too many factors.</exception>
    public static RankResult Run(LifeModel model, StudySettings settings, RunOptions options, RankQuestion? question = null)
    {
        question ??= new RankQuestion();
        double centre = Math.Log(Math.Max(1e-3, BaseCaseAnalysis.MedianFactorsLifeKm(model)));
        var problem = new LifeShareProblem(model, settings.Seed, centre);
        if (question.AllSubsets)
        {
            ForAllSubsets(problem);
        }

        var layout = new RankPlan(model);
        long forIndices = Math.Min(MostForIndices, (long)(PartOfIndices * settings.Evaluations));
        int perRow = layout.EvaluationsPerRow;
        var draw = new PairedDraw(model, settings, forIndices / perRow);
        var tally = new RankTally(model, layout, draw, centre);
        (double[][] groups, long rows, bool isPartial) = ([], 0, false);
        ShareRun shares = null!;
        PartDoneException.Each(
            () => (groups, rows, isPartial) = draw.Run(Reporting(done => done * perRow), tally.CreateWorker, tally.Work),
            () => shares = ShareRun.Run(
                problem, settings.Evaluations - forIndices, settings.Seed, Reporting(done => done + (rows * perRow)), question.AllSubsets,
                question.HalfWidth));
        var run = new RunRecord(
            (rows * perRow) + shares.Evaluations, settings.Evaluations, settings.Seed, settings.Sampling, LifeModel.Version, isPartial
                || shares.IsPartial);
        return Summarise(model, layout, groups, rows, problem, shares, question, run);

        RunOptions Reporting(Func<long, long> evaluations) =>
            options with { Progress = options.Progress is { } report ? done => report(evaluations(done)) : null };
    }

    private static LifeShareProblem ForAllSubsets(LifeShareProblem problem) => problem.Players <= ShareRun.MostExactPlayers
        ? problem
        : throw new StudyException(
            $"all subsets can be run of up to {ShareRun.MostExactPlayers} factors, and this scenario has {problem.Players}: leave --subsets out, and random orders find the same shares");

    private static RankResult Summarise(
        LifeModel model, RankPlan layout, double[][] groups, long rows, LifeShareProblem problem, ShareRun shares, RankQuestion question,
            RunRecord run)
    {
        Interval Of(Func<double[], double> statistic) =>
            groups.Length >= 2 ? Jackknife.Estimate(groups, statistic) : new(double.NaN, double.NaN, double.NaN); // cancelled at once

        // On the scale of the logarithm: the error of a small probability leans upward.
        Interval Positive(Func<double[], double> statistic)
        {
            Interval ln = Of(s => Math.Log(statistic(s)));
            return double.IsFinite(ln.Low) ? new Interval(Math.Exp(ln.Estimate), Math.Exp(ln.Low), Math.Exp(ln.High)) : Of(statistic);
        }

        Interval Probability(int index, double samples) => Positive(s => s[index] / (samples * s[RankPlan.Rows])).Within(0, 1);

        var pairs = layout.Groups.Select((g, i) => (Group: g, Life: LifePair(Of, i), Failure: EventPair(Of, i))).ToList();
        Pinned? PinnedAt(Factor factor, PinPoint point)
        {
            int pin = layout.Pins.ToList().FindIndex(p => p.Factor == factor && p.Point == point);
            return pin < 0 ? null : new Pinned(
                ValueOf(layout.Pins[pin]), Probability(layout.PinnedEvent(pin), 1),
                    Positive(s => s[layout.PinnedEvent(pin)] / (0.5 * s[RankPlan.Event])));
        }

        Interval ShareOf(int output, Func<Factor, bool> of) =>
            shares.Share(output, [.. Enumerable.Range(0, problem.Players).Where(p => of(problem.Factors[p]))]);

        double LegsTogether(double[] s) => Enumerable.Range(0, layout.Legs).Sum(leg => s[layout.FailuresOfLeg(leg)]);
        IEnumerable<RankedFactor> factors =
            from pair in pairs
            from factor in pair.Group.Factors
            select new RankedFactor
            {
                Factor = factor,
                RankedWith = [.. pair.Group.Factors.Where(f => f != factor)],
                FailureShare = ShareOf(LifeShareProblem.Failure, f => f == factor),
                LifeShare = ShareOf(LifeShareProblem.Life, f => f == factor),
                Place = 0,
                IsTied = false,
                Life = pair.Life,
                Failure = pair.Failure,
                AtNominal = PinnedAt(factor, PinPoint.Nominal)!,
                AtLow = PinnedAt(factor, PinPoint.Low),
                AtHigh = PinnedAt(factor, PinPoint.High),
            };
        return new RankResult
        {
            RequiredKm = model.Scenario.RequiredKm,
            Probability = Probability(RankPlan.Event, 2),
            Factors = SharePlaces.InOrder(factors),
            ShareMethod = shares.IsAllSubsets ? ShareMethod.AllSubsets : ShareMethod.RandomOrders,
            SharePairs = shares.Pairs,
            WidestHalf = shares.WidestHalf,
            HalfWidthAsked = question.HalfWidth,
            ByKnowledge = [.. Enum.GetValues<Knowledge>().Select(k => new KnowledgeShare(
                k, problem.Factors.Count(f => f.Knowledge == k),
                ShareOf(LifeShareProblem.Failure, f => f.Knowledge == k), ShareOf(LifeShareProblem.Life, f => f.Knowledge == k)))],
            Legs = [.. model.Scenario.Legs.Select((leg, i) => new LegOfFailures(
                leg.Name, Of(s => s[layout.FailuresOfLeg(i)] / LegsTogether(s)).Within(0, 1)))],
            Modes = [.. Enumerable.Range(0, layout.Modes).Select(m => new ModeOfFailures(
                model.Modes.Modes[m], Of(s => s[layout.FirstOfMode(m)] / s[RankPlan.Rows]).Within(0, 1),
                Probability(layout.WithoutMode(m), 1)))],
            IsConditional = model.Chances.IsExact,
            Rows = rows,
            Run = run,
        };
    }

    private static double ValueOf(Pin pin) => pin.Values.Length == 1 ? pin.Values[0] : double.NaN;

    private static SobolPair LifePair(Func<Func<double[], double>, Interval> of, int group) => new(
        of(s => s[RankPlan.LifeFirst(group)] / s[RankPlan.Rows] / LifeVariance(s)),
        of(s => s[RankPlan.LifeTotal(group)] / s[RankPlan.Rows] / LifeVariance(s)));

    private static SobolPair EventPair(Func<Func<double[], double>, Interval> of, int group) => new(
        of(s => s[RankPlan.EventFirst(group)] / s[RankPlan.Rows] / EventVariance(s)),
        of(s => s[RankPlan.EventTotal(group)] / s[RankPlan.Rows] / EventVariance(s)));

    private static double LifeVariance(double[] s)
    {
        double samples = 2 * s[RankPlan.Rows];
        double mean = s[RankPlan.Life] / samples;
        return (s[RankPlan.LifeSquared] / samples) - (mean * mean);
    }

    private static double EventVariance(double[] s)
    {
        double p = s[RankPlan.Event] / (2 * s[RankPlan.Rows]);
        return p * (1 - p);
    }
}
