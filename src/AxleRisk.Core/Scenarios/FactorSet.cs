using System.Collections.Immutable;
using AxleRisk.Core.Distributions;

namespace AxleRisk.Core.Scenarios;

/// <summary>The factors of a scenario, in the scenario's order, with their columns and their dependence.</summary>
public sealed class FactorSet
{
    private readonly int[] copulaColumns;

    // In the copula's place where one of its factors is held: the others beside it.
    private readonly LearnedMap? held;

    private FactorSet(ImmutableArray<Factor> factors, ImmutableArray<RankCorrelation> correlations, Learned? learned)
    {
        Factors = factors;
        ColumnNames = [.. factors.SelectMany(f => f.ColumnNames)];
        correlations = [.. correlations.Where(c => c.Spearman != 0)];
        string[] names = [.. correlations.SelectMany(c => new[] { c.First, c.Second }).Distinct()];
        Correlated = [.. names.Select(n => Find(n)!)];
        copulaColumns = [.. Correlated.Select(f => f.FirstColumn)];
        Copula = names.Length == 0 ? null : new GaussianCopula(names, SpearmanMatrix(names, correlations));
        learned = learned is null ? null : Present(learned);
        Learned = learned is null or { Choices.IsEmpty: true, Columns.IsEmpty: true } ? null : new LearnedMap(learned, factors);
        Groups = GroupByDependence(correlations);
    }

    // The same but for what is known of their dependence.
    private FactorSet(FactorSet of, LearnedMap? learned, LearnedMap? held)
    {
        (Factors, ColumnNames, Correlated, Groups) = (of.Factors, of.ColumnNames, of.Correlated, of.Groups);
        (copulaColumns, Copula) = (of.copulaColumns, held is null ? of.Copula : null);
        (Learned, this.held) = (learned, held);
    }

    /// <summary>The factors.</summary>
    public ImmutableArray<Factor> Factors { get; }

    /// <summary>The names of all columns of the sample, in order.</summary>
    public ImmutableArray<string> ColumnNames { get; }

    /// <summary>The factors that are correlated with another, in the order of <see cref="Copula"/>.</summary>
    public ImmutableArray<Factor> Correlated { get; }

    /// <summary>Their dependence; null where there is none.</summary>
    public GaussianCopula? Copula { get; }

    /// <summary>What data have taught of them; null where nothing has.</summary>
    internal LearnedMap? Learned { get; }

    /// <summary>The factors in groups that are independent of one another: correlated factors share a group.</summary>
    public ImmutableArray<ImmutableArray<Factor>> Groups { get; }

    /// <summary>Collects the factors of a scenario.</summary>
    /// <exception cref="DistributionException">The rank correlations are impossible together.</exception>
    public static FactorSet Of(Scenario scenario)
    {
        var factors = ImmutableArray.CreateBuilder<Factor>();
        int column = 0;
        void Add(Factor factor)
        {
            factors.Add(factor);
            column += factor.ColumnNames.Length;
        }

        void AddScalars(Func<Input, bool> which)
        {
            AddAll(scenario.Inputs.Where(which));
        }

        void AddAll(IEnumerable<Input> inputs)
        {
            foreach (Input input in inputs)
            {
                if (input.Value is Value.Uncertain uncertain)
                {
                    Add(new ScalarFactor(input, uncertain, column));
                }
            }
        }

        // Those of a history and a trip stand last: the columns of all others, and with them their values, are the same without.
        AddScalars(i => !Trip.IsNameOf(i.Name));
        foreach (string name in scenario.WordNames)
        {
            if (scenario.FindWords(name) is { Only: null } choice)
            {
                Add(new WordFactor(name, choice, column));
            }
        }

        if (scenario.MixConcentration is { } concentration && scenario.Legs.Length > 1)
        {
            Add(new MixFactor(scenario.Legs, concentration, scenario.MixKnowledge, column));
        }

        AddAll(Stretches.OwnInputs(scenario));
        AddScalars(i => Trip.IsNameOf(i.Name));
        return new FactorSet(factors.ToImmutable(), scenario.Correlations, scenario.Learned);
    }

    /// <summary>The plain words for a column of the sample; the name itself where there is no such column.</summary>
    public string LabelOf(string column) =>
        Factors.FirstOrDefault(f => f.ColumnNames.Contains(column))?.LabelOf(column) ?? column;

    /// <summary>The factor that a column of the sample belongs to.</summary>
    internal Factor OfColumn(int column) => Factors.Last(f => f.FirstColumn <= column);

    /// <summary>The factor of a name; null where there is none.</summary>
    public Factor? Find(string name) => Factors.FirstOrDefault(f => f.Name == name);

    /// <summary>Whether nothing else depends on a factor and its stated distribution is all that is known of it.</summary>
    internal bool IsAlone(Factor factor) => Groups.Single(g => g.Contains(factor)).Length == 1 && !IsLearned(factor);

    /// <summary>Whether data have taught of a factor.</summary>
    internal bool IsLearned(Factor factor) => Learned?.Learned is { } of
        && (of.Choices.Contains(factor.Name) || factor.ColumnNames.Any(of.Columns.Contains));

    /// <summary>
    /// Whether others can be drawn given its value: not of a factor of several columns, nor of one that is correlated with
    /// what was learned.
    /// </summary>
    internal bool CanBeGiven(Factor factor) =>
        factor.Distribution is not null && (!Correlated.Contains(factor) || !Correlated.Any(IsLearned));

    /// <summary>The same given a factor: whatever depends on it is drawn as it is beside that.</summary>
    /// <param name="factor">A factor that <see cref="CanBeGiven"/>.</param>
    /// <param name="at">The score of its stated distribution; of a choice that was learned of, the index of its state.</param>
    internal FactorSet Given(Factor factor, double at)
    {
        if (Learned?.Learned is { } of && IsLearned(factor))
        {
            return new FactorSet(this, new LearnedMap(of.Choices.Contains(factor.Name)
                ? of.GivenState(factor.Name, (int)at) : of.GivenScore(factor.Name, at), Factors), held);
        }

        if (!Correlated.Contains(factor))
        {
            return this;
        }

        // Correlated scores are jointly normal, of mean 0 and deviation 1.
        var copula = new Learned([], [.. Correlated.Select(f => f.Name)], [new LearnedState(
            [], 1, [.. Correlated.Select(_ => 0.0)], [.. Copula!.Cholesky.Select(row => row.ToImmutableArray())])], []);
        return new FactorSet(this, Learned, new LearnedMap(copula.GivenScore(factor.Name, at), Factors));
    }

    /// <summary>
    /// Maps <paramref name="count"/> rows of independent unit columns to factor values; the unit columns of dependent
    /// factors are coupled in place on the way.
    /// </summary>
    public void Map(double[][] unit, double[][] values, int count)
    {
        Learned?.CoupleUnits(unit, count);
        Copula?.Couple([.. copulaColumns.Select(c => unit[c])], count);
        held?.CoupleUnits(unit, count);
        foreach (Factor factor in Factors)
        {
            factor.Map(unit, values, count);
        }
    }

    /// <summary>
    /// The same from independent standard normal scores, which keep their digits in both tails; the scores of dependent factors
    /// are coupled in place on the way.
    /// </summary>
    public void MapScores(double[][] scores, double[][] values, int count)
    {
        Learned?.CoupleScores(scores, count);
        MapCoupled(scores, values, count);
    }

    /// <summary>The same from scores that are already as the data have taught them.</summary>
    internal void MapCoupled(double[][] scores, double[][] values, int count)
    {
        Copula?.CoupleScores([.. copulaColumns.Select(c => scores[c])], count);
        held?.CoupleScores(scores, count);
        foreach (Factor factor in Factors)
        {
            factor.MapScores(scores, values, count);
        }
    }

    // Of what was learned only what is still uncertain in this scenario.
    private Learned Present(Learned learned) => learned.Choices.Concat(learned.Columns)
        .Where(name => !(learned.Choices.Contains(name) ? Find(name)?.Distribution is NumberChoice : ColumnNames.Contains(name)))
        .Aggregate(learned, (l, name) => l.Without(name));

    private static double[,] SpearmanMatrix(string[] names, ImmutableArray<RankCorrelation> correlations)
    {
        var matrix = new double[names.Length, names.Length];
        for (int i = 0; i < names.Length; i++)
        {
            matrix[i, i] = 1;
        }

        foreach (RankCorrelation c in correlations)
        {
            int i = Array.IndexOf(names, c.First);
            int j = Array.IndexOf(names, c.Second);
            matrix[i, j] = matrix[j, i] = c.Spearman;
        }

        return matrix;
    }

    private ImmutableArray<ImmutableArray<Factor>> GroupByDependence(ImmutableArray<RankCorrelation> correlations)
    {
        int[] group = [.. Enumerable.Range(0, Factors.Length)];
        foreach (RankCorrelation c in correlations)
        {
            int from = group[Factors.IndexOf(Find(c.First)!)];
            int to = group[Factors.IndexOf(Find(c.Second)!)];
            for (int i = 0; i < group.Length; i++)
            {
                group[i] = group[i] == from ? to : group[i];
            }
        }

        // What was learned together depends on each other.
        string[] learned = Learned is null ? [] : [.. Learned.Learned.Choices, .. Learned.Learned.Columns];
        int[] joined = [.. Factors.Select((f, i) => (f, i)).Where(x => x.f.ColumnNames.Any(learned.Contains)).Select(x => group[x.i])];
        for (int i = 0; i < group.Length; i++)
        {
            group[i] = joined.Contains(group[i]) ? joined[0] : group[i];
        }

        return [.. Factors.Select((f, i) => (Factor: f, Group: group[i])).GroupBy(x => x.Group)
            .Select(g => g.Select(x => x.Factor).ToImmutableArray())];
    }
}
