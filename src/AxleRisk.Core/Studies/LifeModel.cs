using AxleRisk.Core.Modes;
using AxleRisk.Core.Numerics.Vectors;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Studies;

/// <summary>
/// A scenario made ready to run: from sample numbers to factor values to damage and life. Holds no state that changes;
/// each thread brings its own <see cref="Workspace"/>.
/// </summary>
public sealed class LifeModel
{
    /// <summary>Changes whenever the same scenario and seed would give other digits.</summary>
    public const int Version = 6;

    /// <summary>The width in bits of the vectors that runs use on this machine and in this build; 64 where there are none.</summary>
    public static int VectorBits => 64 << (int)VectorWidths.Best;

    /// <summary>From this long an evaluation a damage model is slow, microseconds: methods that spend few come first.</summary>
    private const double SlowMicroseconds = 50;

    /// <summary>What evaluations may cost where nobody says otherwise, microseconds of one core: a minute.</summary>
    private const double UsualCost = 60e6;

    private const double Ln10 = 2.302585092994045684;

    private readonly DamageSource damage;
    private readonly RateEvaluation? rates;
    private readonly HistoryEvaluation? history;
    private readonly ColumnSteps.Source minerSum;
    private readonly ColumnSteps.Source scatter;

    /// <summary>Prepares a validated scenario.</summary>
    public LifeModel(Scenario scenario)
        : this(scenario, FactorSet.Of(scenario))
    {
    }

    /// <summary>
    /// Prepares a scenario whose uncertain inputs are factors of another, by name: it is evaluated on that one's columns.
    /// </summary>
    internal LifeModel(Scenario scenario, FactorSet factors)
    {
        Scenario = scenario;
        Factors = factors;
        Modes = new ModeSet(scenario);
        Scale = new LifeScale(scenario, Factors, Modes.IsPlain);
        Chances = new FailureChances(scenario, Factors, Modes, Scale);
        damage = DamageSource.Of(scenario, Factors, Modes);
        minerSum = damage.Inputs.SourceOf(Quantities.MinerSum);
        scatter = damage.Inputs.SourceOf(Quantities.LifeScatter);
        var lives = new FirstFailures(scenario, Modes, damage.Inputs);
        history = Stretches.Of(scenario).IsEmpty ? null : new HistoryEvaluation(scenario, Factors, lives);
        rates = Modes.IsPlain || history is not null ? null : new RateEvaluation(scenario, Modes, damage, lives);
    }

    /// <summary>
    /// Whether an evaluation takes so long that few are to be spent: see <see cref="DamageModel.MicrosecondsPerEvaluation"/>.
    /// </summary>
    public bool IsSlow => Scenario.Model?.MicrosecondsPerEvaluation > SlowMicroseconds;

    /// <summary>The scenario.</summary>
    public Scenario Scenario { get; }

    /// <summary>Its factors.</summary>
    public FactorSet Factors { get; }

    /// <summary>What scales life without touching the damage.</summary>
    internal LifeScale Scale { get; }

    /// <summary>Its modes of failure, and whether it ages.</summary>
    public ModeSet Modes { get; }

    /// <summary>The model whose details are told of: of a history that of the last stretch, else this.</summary>
    internal LifeModel Told => history?.Last ?? this;

    /// <summary>The axle's own damage model; of a history that of the last stretch, whose columns stand in the workspace.</summary>
    /// <exception cref="StudyException">The scenario brings another.</exception>
    internal AxleDamage Axle => Told.damage as AxleDamage ?? throw new StudyException(DamageState.AnotherModel);

    /// <summary>What is left to chance once the factors other than scatter are known.</summary>
    internal FailureChances Chances { get; }

    /// <summary>
    /// As many evaluations as an analysis usually takes; of a slow model as many as a minute of one core allows, but not below 1,024.
    /// </summary>
    public long Affordable(long usual) =>
        IsSlow ? Math.Min(usual, Math.Max(1024, (long)(UsualCost / Scenario.Model!.MicrosecondsPerEvaluation))) : usual;

    /// <summary>Buffers for one thread and blocks of up to <paramref name="capacity"/> rows.</summary>
    public Workspace CreateWorkspace(int capacity) => history?.CreateWorkspace(capacity) ?? new(
        capacity, Factors.ColumnNames.Length, Scenario.Legs.Length, damage.CreateState(capacity), CreateRates(capacity));

    /// <summary>Rates of <paramref name="capacity"/> rows; null where fatigue is all there is and nothing ages.</summary>
    internal LifeRates? CreateRates(int capacity) => history?.CreateRates(capacity) ?? rates?.CreateRates(capacity);

    /// <summary>Factor columns of <paramref name="capacity"/> rows.</summary>
    public double[][] CreateColumns(int capacity) => Workspace.Columns(Factors.ColumnNames.Length, capacity);

    /// <summary>
    /// Draws factor values for the sample numbers <paramref name="first"/> and on. A study that needs several independent
    /// samples names each (<paramref name="sample"/>); the values depend on plan, seed, sample's name and number alone.
    /// </summary>
    public void Draw(SamplingPlan plan, ulong seed, string sample, long first, int count, Workspace workspace, double[][] values)
    {
        UnitColumns.Fill(plan, seed, sample, Factors.ColumnNames, 0, first, count, workspace.Unit);
        Factors.Map(workspace.Unit, values, count);
    }

    /// <summary>Damage by leg, damage per km and life of <paramref name="count"/> rows of factor values, into the workspace. With
    /// further modes the life is the
    /// earliest; of a vehicle that ages, damages are means up to the required distance.</summary>
    public void Evaluate(double[][] values, int count, Workspace workspace)
    {
        FillScale(values, count, workspace.Scale);
        if (history is not null)
        {
            history.Evaluate(values, count, workspace);
            return;
        }

        damage.Begin(values, count, workspace.State);
        if (rates is not null)
        {
            rates.Evaluate(values, count, workspace);
            return;
        }

        EvaluatePlain(values, count, workspace);
        VectorColumns.Quotient(workspace.Scale.AsSpan(0, count), workspace.DamagePerKm.AsSpan(0, count), workspace.LifeKm.AsSpan(0, count));
    }

    /// <summary>
    /// What each leg, and in further modes the use, uses up per km at an age of each row, into
    /// <see cref="Workspace.DamageByLeg"/> and the rates of the first age; no lives. Not of a history, but of one of its stretches.
    /// </summary>
    /// <param name="values">The factor values.</param>
    /// <param name="count">Rows.</param>
    /// <param name="ageKm">The ages, km; held at the last that rates are followed to.</param>
    /// <param name="workspace">The workspace.</param>
    internal void EvaluateAtAges(double[][] values, int count, ReadOnlySpan<double> ageKm, Workspace workspace)
    {
        damage.Begin(values, count, workspace.State);
        if (rates is null)
        {
            EvaluatePlain(values, count, workspace);
            return;
        }

        ageKm[..count].CopyTo(workspace.AgeKm);
        rates.EvaluateAtAges(values, count, workspace);
    }

    /// <summary>How much each mode can use up before it fails, as drawn: by row and mode.</summary>
    internal void FillLimits(double[][] values, int count, double[] limits)
    {
        int modes = Modes.Modes.Length;
        var column = new double[count];
        for (int mode = 0; mode < modes; mode++)
        {
            if (mode == 0)
            {
                FillScale(values, count, column);
            }
            else
            {
                FillColumn(damage.Inputs.SourceOf(Modes.Further[mode - 1].ScatterIn(Scenario)), values, column);
            }

            for (int row = 0; row < count; row++)
            {
                limits[row * modes + mode] = column[row];
            }
        }
    }

    /// <summary>Miner sum times 10^scatter of each row: life is this over the damage per km.</summary>
    public void FillScale(double[][] values, int count, double[] scale)
    {
        Span<double> to = scale.AsSpan(0, count);
        FillColumn(scatter, values, to);
        VectorColumns.ScaledExp(to, Ln10, 1, to);
        if (minerSum.Column is { } column)
        {
            VectorColumns.ScaledProduct(to, values[column].AsSpan(0, count), 1, to);
        }
        else
        {
            VectorColumns.Scale(to, minerSum.Constant, to);
        }
    }

    private void EvaluatePlain(double[][] values, int count, Workspace workspace) => damage.Evaluate(
        values, count, workspace.State, [], sameRide: false, new DamageRates(workspace.DamageByLeg, workspace.DamagePerKm, []));

    internal static void FillColumn(ColumnSteps.Source source, double[][] values, Span<double> to)
    {
        if (source.Column is { } column)
        {
            VectorColumns.Scale(values[column].AsSpan(0, to.Length), source.Scale, to);
        }
        else
        {
            to.Fill(source.Constant);
        }
    }

    internal static double At(ColumnSteps.Source source, double[][] values, int row) =>
        source.Column is { } column ? source.Scale * values[column][row] : source.Constant;
}
