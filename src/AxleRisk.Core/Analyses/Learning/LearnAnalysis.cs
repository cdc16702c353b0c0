using System.Collections.Immutable;
using AxleRisk.Core.Analyses.Fits;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Learning;

/// <summary>
/// Learns what is unknown from records of the field and gauge runs: the scenario is the prior, the likelihood of each record is
/// averaged over what differs between vehicles, and the posterior is a weighted sample.
/// </summary>
public static class LearnAnalysis
{
    /// <summary>Evaluations where nobody states a number.</summary>
    public const long DefaultEvaluations = 4_194_304;

    /// <summary>Fewer do not suffice.</summary>
    public const long LeastEvaluations = 65_536;

    /// <summary>The least effective sample size an answer may rest on.</summary>
    public const double LeastEffectiveSize = 200;

    private const int MostRows = 1 << 18;
    private const int MostVehicles = 4096;

    /// <summary>A record less likely than this, whatever the unknown, is none that the scenario can produce: ln of 1e-260.</summary>
    private const double ImpossibleLog = -600;

    /// <summary>Learns.</summary>
    /// <param name="model">The scenario made ready.</param>
    /// <param name="question">What is asked.</param>
    /// <param name="settings">Evaluations and seed.</param>
    /// <param name="options">Threads, progress, cancellation.</param>
    /// <exception cref="StudyException">There are no data or nothing is unknown; a record cannot be; too few rows agree with the
    /// data.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled: there is nothing to tell before the end.</exception>
    public static LearnResult Run(LifeModel model, LearnQuestion question, StudySettings settings, RunOptions options)
    {
        Scenario scenario = model.Scenario;
        if (scenario.Field.Records.IsEmpty && scenario.Gauges.Runs.IsEmpty)
        {
            throw new StudyException("there are no data: name a file of records under [field] or of gauge runs under [gauges]");
        }

        if (scenario.Learned is { } before
            && new[] { (scenario.Field.File, scenario.Field.Digest), (scenario.Gauges.File, scenario.Gauges.Digest) }
                .FirstOrDefault(f => before.Data.Contains(f.Item2)).Item1 is { } again)
        {
            throw new StudyException(
                $"{again} is what this scenario has learned from; counted twice it would seem to say more than it does: name further data in its place");
        }

        if (settings.Evaluations < LeastEvaluations)
        {
            throw new StudyException($"learning needs at least {LeastEvaluations:#,0} evaluations: choose more --evaluations");
        }

        double[] distances = question.Of(scenario);
        DataOnly data = Alone(scenario.Field, distances, settings.Seed);
        var unknowns = new Unknowns(model);
        int vehicles = VehicleSet.VariesFor(model, unknowns)
            ? Math.Clamp(1 << (int)Math.Log2(Math.Sqrt(settings.Evaluations) / 2), 1, MostVehicles) : 1;
        var learn = new LearnModel(model, unknowns, vehicles, settings.Seed, distances);
        int rows = (int)Math.Min(MostRows, settings.Evaluations / learn.EvaluationsEach);
        var sampler = new PosteriorSampler(learn, settings.Seed, options);
        (PosteriorSample prior, double[] priorLog) = sampler.Prior(Math.Max(64, rows / 4));
        RefuseImpossible(learn, sampler, prior, priorLog);
        (PosteriorSample posterior, double[] marginal) = sampler.Posterior(prior, priorLog, rows / 2, Math.Clamp(rows / 16, 180, 1800));
        if (!(posterior.EffectiveSize >= LeastEffectiveSize))
        {
            throw new StudyException(
                $"no answer: of {posterior.LogWeight.Length:#,0} values of what is unknown only {posterior.EffectiveSize:0} effective ones agree "
                + $"with the data, and {LeastEffectiveSize:0} are the least; try more --evaluations, and see whether the data and the "
                + "scenario belong together");
        }

        MisfitResult misfit = Misfit.Of(learn, sampler, posterior, settings.Seed);
        var summary = new LearnSummary(model, unknowns, posterior, prior);
        double best = marginal.Max();
        Interval lnMarginal = GroupInterval.Around(
            best + Math.Log(marginal.Average(m => Math.Exp(m - best))), marginal.Select(m => m));
        return new LearnResult
        {
            Field = scenario.Field,
            Gauges = scenario.Gauges,
            Data = data,
            Factors = summary.Factors(),
            Entangled = summary.Entangled(),
            Curve = [.. distances.Select((km, k) => Probability(km, k, prior, posterior))],
            LogMarginalLikelihood = lnMarginal,
            Misfit = misfit,
            EffectiveSampleSize = posterior.EffectiveSize,
            Rows = posterior.LogWeight.Length,
            Vehicles = vehicles,
            Pilots = sampler.Pilots,
            IsCounted = new CurveFiller(model, unknowns, 1).IsCounted,
            Posterior = posterior,
            Shape = question.Keeps ? LearnedFit.Of(learn, sampler, posterior) : null,
            Run = new RunRecord(
                sampler.Evaluations, settings.Evaluations, settings.Seed, ScrambledSobol.PlanName, LifeModel.Version, false),
        };
    }

    private static LearnedProbability Probability(double km, int k, PosteriorSample prior, PosteriorSample posterior)
    {
        Interval Band(PosteriorSample of)
        {
            double[] ends = of.Quantiles(of.Failed[k], 0.025, 0.975);
            return new Interval(of.Mean(row => of.Failed[k][row]), ends[0], ends[1]);
        }

        // A ratio of sums by replicate.
        var weight = new double[PosteriorSampler.Replicates];
        var failed = new double[weight.Length];
        for (int row = 0; row < posterior.Weights.Length; row++)
        {
            weight[posterior.Group[row]] += posterior.Weights[row];
            failed[posterior.Group[row]] += posterior.Weights[row] * posterior.Failed[k][row];
        }

        Interval after = Band(posterior);
        return new LearnedProbability(
            km, Band(prior), after, GroupInterval.Around(after.Estimate, weight.Select((w, g) => after.Estimate
                + (weight.Length * (failed[g] - (after.Estimate * w))))));
    }

    private static DataOnly Alone(FieldData field, double[] distances, ulong seed)
    {
        if (field.Records.IsEmpty)
        {
            return new DataOnly([], null, null, [], []);
        }

        // What had failed at the first look lies below it.
        Observation[] lives = [.. field.Records.Select(r =>
            new Observation(r.FromKm > 0 ? r.FromKm : double.NegativeInfinity, r.ToKm, r.Vehicles))];
        ImmutableArray<SurvivalStep> steps = SurvivalCurve.Of(lives, seed);
        var data = new FitData(lives);

        // Two failures at least, at different distances, determine two parameters.
        if (field.Failures < 2 || field.Records.Where(r => r.HasFailed).Select(r => (r.FromKm, r.ToKm)).Distinct().Count() < 2)
        {
            return new DataOnly(steps, null, null, [], []);
        }

        LikelihoodBounds? weibull = LikelihoodBounds.Of("weibull", data), lognormal = LikelihoodBounds.Of("lognormal", data);
        return new DataOnly(
            steps, weibull?.Fit, lognormal?.Fit, weibull is null ? [] : [.. distances.Select(weibull.FailedBy)],
            lognormal is null ? [] : [.. distances.Select(lognormal.FailedBy)]);
    }

    /// <summary>A record that no value of the unknown allows is named, and so ends the run.</summary>
    private static void RefuseImpossible(LearnModel learn, PosteriorSampler sampler, PosteriorSample prior, double[] priorLog)
    {
        int[] rows = prior.Draw(Math.Min(64, priorLog.Length), 0.5);
        FieldRecord[] records = [.. learn.Sets.SelectMany(s => s.Records)];
        IReadOnlyList<double[]> best = sampler.Visit(learn, prior, rows, (worker, _) =>
            [.. learn.Sets.SelectMany((s, set) => s.Records.Select(r => worker.LogOf(set, r)))]);
        for (int record = 0; record < records.Length; record++)
        {
            if (!(best.Max(b => double.IsNaN(b[record]) ? double.NegativeInfinity : b[record]) > ImpossibleLog))
            {
                FieldRecord r = records[record];
                throw new StudyException(
                    $"{learn.Model.Scenario.Field.File}({r.Line}): the scenario cannot produce this record, whatever the unknown: "
                    + (r.IsExact ? $"failed at {r.ToKm:#,0} km" : r.HasFailed ? $"failed between {r.FromKm:#,0} and {r.ToKm:#,0} km"
                    : $"whole at {r.FromKm:#,0} km") + "; correct it, leave it out, or give the scenario more room");
            }
        }

        if (!priorLog.Any(double.IsFinite))
        {
            throw new StudyException(
                "the data contradict the scenario: no value of what is unknown, as the scenario allows it, gives them any likelihood; "
                + "widen what is unknown, or see whether data and scenario belong together");
        }
    }
}
