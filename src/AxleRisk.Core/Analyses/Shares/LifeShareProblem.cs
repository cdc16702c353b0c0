using System.Collections.Immutable;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Shares;

/// <summary>
/// The shares of ln life and of failure before the required distance. A row's first number is -ln life;
/// where Miner sum and S-N scatter are lognormal and independent they are scale players, and it is that of the median scale. With further
/// modes or ageing ln life is no sum of its chances: they are evaluated for it, as drawn, and are scale players of failure alone.
/// </summary>
internal sealed class LifeShareProblem : ShareProblem
{
    /// <summary>The number of the output ln life.</summary>
    public const int Life = 0;

    /// <summary>The number of the output 'fails before the required distance'.</summary>
    public const int Failure = 1;

    private readonly LifeModel model;
    private readonly ulong seed;
    private readonly ImmutableArray<Factor> evaluated;
    private readonly ImmutableArray<Factor> scale;
    private readonly bool isConditional;
    private readonly int modes;

    public LifeShareProblem(LifeModel model, ulong seed, double centreLnLife)
    {
        this.model = model;
        this.seed = seed;
        isConditional = model.Scale.IsLognormal;
        ImmutableArray<Factor> chances = model.Chances.IsExact
            ? [.. model.Factors.Factors.Where(f => model.Chances.ModeOf(f) >= 0).OrderBy(model.Chances.ModeOf)] : [];
        modes = isConditional || !model.Chances.IsExact ? 0 : model.Chances.Modes.Length;
        scale = isConditional ? chances : [];
        evaluated = [.. model.Factors.Factors.Except(chances), .. isConditional ? [] : chances];
        if (evaluated.Length > MostPlayers)
        {
            throw new StudyException(
                $"shares can be found of up to {MostPlayers} factors besides Miner sum and S-N scatter, and this scenario has {evaluated.Length}");
        }

        Factors = [.. evaluated, .. scale];
        Columns = [.. evaluated.Select(f => Enumerable.Range(f.FirstColumn, f.ColumnNames.Length).ToImmutableArray())];
        Dependence = FactorDependence.Of(model.Factors, evaluated);
        double[] variances = [.. scale.Select(f => model.Scale.VarianceShare(f) * model.Scale.Sigma * model.Scale.Sigma)];
        double limit = -Math.Log(model.Scenario.RequiredKm);
        Moments = [new AdditiveMoment(-centreLnLife, variances),
            isConditional ? new ScatterMoment(limit, variances)
                : modes > 0 ? new ModesMoment(model.Chances, chances) : new CountedMoment(limit)];
    }

    /// <summary>The factor of each player.</summary>
    public ImmutableArray<Factor> Factors { get; }

    /// <inheritdoc/>
    public override ImmutableArray<ImmutableArray<int>> Columns { get; }

    /// <inheritdoc/>
    public override int ColumnCount => model.Factors.ColumnNames.Length;

    /// <inheritdoc/>
    public override ScoreDependence? Dependence { get; }

    /// <inheritdoc/>
    public override int ScalePlayers => scale.Length;

    /// <inheritdoc/>
    public override ImmutableArray<JointMoment> Moments { get; }

    /// <inheritdoc/>
    public override int Outputs => 1 + modes;

    /// <inheritdoc/>
    public override ShareSample CreateSample(int capacity) => new LifeShareSample(this, capacity);

    /// <summary>The plan of the base rows in each replicate: the scrambled Sobol' sequence where it has the dimensions.</summary>
    private static SamplingPlan PlanOf(LifeModel model)
    {
        SamplingPlan sobol = SamplingPlan.FromName("sobol", 1);
        return PairedDraw.Dimensions(model) <= sobol.Dimensions ? sobol : SamplingPlan.FromName("plain", 1);
    }

    private sealed class LifeShareSample(LifeShareProblem problem, int capacity) : ShareSample
    {
        private readonly Workspace workspace = problem.model.CreateWorkspace(capacity);
        private readonly SamplingPlan plan = PlanOf(problem.model);
        private readonly ImmutableArray<Factor> members = [.. problem.Dependence?.Members.Select(m => problem.evaluated[m]) ?? []];
        private readonly double medianScale = problem.isConditional ? Math.Exp(problem.model.Scale.Mu) : double.NaN;

        public override void Draw(int replicate, bool second, long first, double[][] values, double[][] scores)
        {
            int count = values[0].Length;
            double[][] unit = Workspace.Columns(values.Length, count);
            string sample = $"shares/{(second ? "B" : "A")}/r{replicate}";
            PairedDraw.Draw(problem.model, plan, problem.seed, sample, second, first, count, unit, values);
            for (int m = 0; m < members.Length; m++)
            {
                FactorDependence.ToScores(unit[members[m].FirstColumn], scores[m]);
            }
        }

        public override void FromScores(int member, double[] scores, int count, double[][] values) =>
            FactorDependence.FromScores(members[member], scores, count, workspace.Unit, values);

        public override void Evaluate(double[][] values, int count, double[][] outputs, int at)
        {
            problem.model.Evaluate(values, count, workspace);
            for (int row = 0; row < count; row++)
            {
                double life = problem.isConditional ? medianScale / workspace.DamagePerKm[row] : workspace.LifeKm[row];

                // A section without wall has life 0: a metre stands in, so that its logarithm stays finite.
                outputs[0][at + row] = -Math.Log(Math.Max(life, 1e-3));
            }

            if (problem.modes > 0)
            {
                ModesMoment.FillOutputs(problem.model, workspace, count, outputs, at);
            }
        }
    }
}
