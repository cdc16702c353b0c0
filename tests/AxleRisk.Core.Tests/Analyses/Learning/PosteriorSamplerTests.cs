using AxleRisk.Core.Analyses.Learning;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses.Learning;

/// <summary>An unknown choice beside an unknown number, by quadrature over the number for each state.</summary>
public class PosteriorSamplerTests
{
    private static readonly double[] States = [1.0, 1.7, 2.5], Prior = [0.5, 0.2, 0.3];

    // The choice multiplies the damage of the one leg, so that it divides life.
    private static readonly Input Choice = new("legs.gravel.damage_ratio", Quantities.LegDamageRatio, 0,
        new Value.Uncertain(new NumberChoice([.. States], [.. Prior]), Knowledge.Unknown), false);

    [Fact]
    public void States_evidence_and_means_are_those_of_quadrature()
    {
        LearnResult result = LearnAnalysis.Run(
            LearnCase.Model(LearnCase.Field, Choice), new LearnQuestion([100_000]), new StudySettings(1 << 18, 1, "sobol"),
            new RunOptions());
        var evidence = new double[States.Length];
        double failed = 0;
        for (int k = 0; k < States.Length; k++)
        {
            const double Step = 0.002;
            for (double z = -8 + (Step / 2); z < 8; z += Step)
            {
                double shift = (LearnCase.ThetaSd * z) + Math.Log(States[k]);
                double weight = Prior[k] * Step * StandardNormal.Density(z) * Math.Exp(LogLikelihood(shift));
                evidence[k] += weight;
                failed += weight * StandardNormal.Cumulative(Score(100_000, shift));
            }
        }

        double all = evidence.Sum();
        LearnedFactor told = result.Factors.Single(f => f.States.Length > 0);
        for (int k = 0; k < States.Length; k++)
        {
            Assert.Equal(Prior[k], told.States[k].Prior, 1e-12);
            Assert.Equal(evidence[k] / all, told.States[k].Posterior, 5e-4);
            Assert.InRange(told.States[k].Posterior, 0.01, 0.9);
        }

        Assert.Equal(Math.Log(all), result.LogMarginalLikelihood.Estimate, 1e-3);
        Assert.Equal(failed / all, result.Curve[0].After.Estimate, 1e-4);
        Assert.InRange(failed / all, result.Curve[0].Error.Low - 1e-5, result.Curve[0].Error.High + 1e-5);
    }

    // Each replicate has a sample of vehicles of its own, and counts alike.
    [Fact]
    public void Replicates_count_alike()
    {
        Input miner = new("fatigue.miner_sum", Quantities.MinerSum, null,
            new Value.Uncertain(new Lognormal(1, 0.3), Knowledge.Unknown), false);
        Input ratio = new("fatigue.damage_ratio", Quantities.DamageRatio, null,
            new Value.Uncertain(new Lognormal(LearnCase.Ratio, LearnCase.ThetaSd), Knowledge.Varies), false);
        LearnResult result = LearnAnalysis.Run(
            LearnCase.Model(LearnCase.Field, miner, ratio), new LearnQuestion([100_000]),
            new StudySettings(LearnAnalysis.LeastEvaluations, 1, "sobol"), new RunOptions());
        Assert.True(result.Vehicles > 1);
        var of = new double[PosteriorSampler.Replicates];
        for (int row = 0; row < result.Rows; row++)
        {
            of[result.Posterior!.Group[row]] += result.Posterior.Weights[row];
        }

        Assert.All(of, sum => Assert.Equal(1.0 / PosteriorSampler.Replicates, sum, 1e-9));
    }

    private static double Score(double km, double shift) => (Math.Log(km / LearnCase.MedianKm) + shift) / LearnCase.Sigma;

    private static double LogLikelihood(double shift) => LearnCase.Field.Records.Sum(r => r.Vehicles * (
        r.IsExact ? Math.Log(StandardNormal.Density(Score(r.ToKm, shift)) / (LearnCase.Sigma * r.ToKm))
        : !r.HasFailed ? Math.Log(StandardNormal.Upper(Score(r.FromKm, shift)))
        : Math.Log(StandardNormal.Cumulative(Score(r.ToKm, shift))
            - (r.FromKm > 0 ? StandardNormal.Cumulative(Score(r.FromKm, shift)) : 0))));
}
