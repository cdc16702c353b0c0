using System.Collections.Immutable;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Kernel;
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

    private const double Ln10 = 2.302585092994045684;

    private readonly ColumnAssembly assembly;
    private readonly SnCurve[] curves;
    private readonly CountingMethod method;
    private readonly RateEvaluation? rates;
    private readonly HistoryEvaluation? history;
    private readonly EventRates events;
    private readonly DamageRatio damageRatio;
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
        assembly = new ColumnAssembly(scenario, Factors, Modes);
        damageRatio = new DamageRatio(scenario, assembly);
        minerSum = assembly.SourceOf(Quantities.MinerSum);
        scatter = assembly.SourceOf(Quantities.LifeScatter);
        curves = [.. DetailCurves.All(scenario.Detail).Select(c => c.Mean)];
        method = scenario.Counting switch
        {
            CycleCounting.NarrowBand => CountingMethod.NarrowBand,
            CycleCounting.TovoBenasciutti => CountingMethod.TovoBenasciutti,
            _ => CountingMethod.Dirlik,
        };
        events = new EventRates(scenario, assembly, curves);
        var lives = new FirstFailures(Modes, assembly);
        history = Stretches.Of(scenario).IsEmpty ? null : new HistoryEvaluation(scenario, Factors, lives);
        rates = Modes.IsPlain || history is not null ? null : new RateEvaluation(scenario, Modes, assembly, events, damageRatio, lives);
    }

    /// <summary>The scenario.</summary>
    public Scenario Scenario { get; }

    /// <summary>Its factors.</summary>
    public FactorSet Factors { get; }

    /// <summary>What scales life without touching the damage.</summary>
    public LifeScale Scale { get; }

    /// <summary>Its modes of failure, and whether it ages.</summary>
    public ModeSet Modes { get; }

    /// <summary>What is left to chance once the factors other than scatter are known.</summary>
    public FailureChances Chances { get; }

    /// <summary>Buffers for one thread and blocks of up to <paramref name="capacity"/> rows.</summary>
    public Workspace CreateWorkspace(int capacity)
    {
        ImmutableArray<Workspace> stretches = history?.CreateWorkspaces(capacity) ?? [];
        var workspace = new Workspace(
            capacity, Factors.ColumnNames.Length, Modes.Layout, new BatchKernel(curves, method, Modes.Layout),
            history is null ? CreateRates(capacity) : history.Join([.. stretches.Select(s => s.Rates!)], capacity))
        { Stretches = stretches };
        workspace.AssemblyInputs = assembly.Prepare(workspace.Damage);
        return workspace;
    }

    /// <summary>Rates of <paramref name="capacity"/> rows; null where fatigue is all there is and nothing ages.</summary>
    internal LifeRates? CreateRates(int capacity) => history?.CreateRates(capacity) ?? rates?.CreateRates(capacity);

    /// <summary>The model whose details are told of, and its workspace: of a history the last stretch, else this.</summary>
    internal (LifeModel Model, Workspace Workspace) Told(Workspace workspace) =>
        history is null ? (this, workspace) : (history.Last, workspace.Stretches[^1]);

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

        assembly.Fill(values, workspace.AssemblyInputs, workspace.Damage, count);
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
    /// <see cref="Workspace.DamageByLeg"/> and the rates of the first age; no lives.
    /// </summary>
    /// <param name="values">The factor values.</param>
    /// <param name="count">Rows.</param>
    /// <param name="ageKm">The ages, km; held at the last that rates are followed to.</param>
    /// <param name="workspace">The workspace.</param>
    internal void EvaluateAtAges(double[][] values, int count, ReadOnlySpan<double> ageKm, Workspace workspace)
    {
        assembly.Fill(values, workspace.AssemblyInputs, workspace.Damage, count);
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
                FillColumn(assembly.SourceOf(Modes.Further[mode - 1].Scatter), values, column);
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

    private void EvaluatePlain(double[][] values, int count, Workspace workspace)
    {
        workspace.Kernel.Evaluate(workspace.Damage, count, workspace.DamageByLeg, workspace.DamagePerKm.AsSpan(0, count));
        events.Add(values, count, workspace.Damage, workspace.DamageByLeg, workspace.DamagePerKm, []);
        damageRatio.Apply(values, count, workspace.DamageByLeg, workspace.DamagePerKm);
    }

    /// <summary>
    /// The events of the first row last evaluated: leg, name, number a km of the leg, damage per km of the use without ratios.
    /// </summary>
    internal IEnumerable<(int Leg, string Name, double PerKm, double DamagePerKm)> EventsOfFirstRow(
        double[][] values, Workspace workspace) => events.OfFirstRow(values, workspace.Damage);

    /// <summary>
    /// The damage model's details of the first row last evaluated, when new: stress and cycle rates of each leg, damage with that
    /// of strikes and without the damage ratio.
    /// </summary>
    internal LegDetail[] DetailsOfFirstRow(Workspace workspace) => ScalarKernel.LegDetails(workspace.Damage, 0, curves, method);

    /// <summary>The same without the strikes on a bump stop: the linear ride alone.</summary>
    internal LegDetail[] LinearDetailsOfFirstRow(Workspace workspace) =>
        ScalarKernel.LegDetails(workspace.Damage, 0, curves, method, strikes: false);

    /// <summary>What the reference in time must know of the first row last evaluated.</summary>
    internal (SnCurve Curve, CountingMethod Method) FatigueOfFirstRow(Workspace workspace) =>
        (curves[(int)workspace.Damage.Category[0]], method);

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
