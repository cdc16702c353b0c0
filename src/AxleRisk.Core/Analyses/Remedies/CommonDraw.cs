using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Remedies;

/// <summary>
/// Common random numbers for several scenarios: a column of one name has the same unit values in every scenario that has it,
/// also where a plan's values depend on the column's place (Sobol'), for its place is that among all names. In the first
/// scenario every column keeps its own place, so that its sample is the one that <see cref="LifeModel.Draw"/> draws.
/// </summary>
internal sealed class CommonDraw
{
    // What was learned of a factor does not hold of another distribution in its place, which is drawn apart.
    private const string Otherwise = "/otherwise";

    private readonly IReadOnlyList<LifeModel> models;
    private readonly string[] names;
    private readonly int[][] placeOf;
    private readonly bool[] followsFirst;
    private readonly bool[][] isOtherwise;

    public CommonDraw(IReadOnlyList<LifeModel> models)
    {
        this.models = models;
        isOtherwise = [.. models.Select(m => m.Factors.Factors.SelectMany(f => f.ColumnNames.Select(_ =>
            !m.Factors.IsLearned(f) && models[0].Factors.Find(f.Name) is { } first && models[0].Factors.IsLearned(first))).ToArray())];
        string[][] namesOf = [.. models.Select((m, i) =>
            m.Factors.ColumnNames.Select((n, column) => isOtherwise[i][column] ? n + Otherwise : n).ToArray())];
        names = [.. namesOf.SelectMany(n => n).Distinct()];
        placeOf = [.. namesOf.Select(own => own.Select(n => Array.IndexOf(names, n)).ToArray())];
        followsFirst = [.. models.Select(m => FollowsFirst(models[0].Scenario, m))];
    }

    /// <summary>The names of the different columns; the first scenario's come first.</summary>
    public IReadOnlyList<string> Names => names;

    /// <summary>The number of different columns.</summary>
    public int Columns => names.Length;

    /// <summary>The factor of a scenario that has the column of a name; null where none has.</summary>
    public Factor? FactorOf(int model, int place) =>
        Array.IndexOf(placeOf[model], place) is >= 0 and var column ? models[model].Factors.OfColumn(column) : null;

    /// <summary>Draws the unit values of all names for the sample numbers <paramref name="first"/> and on.</summary>
    public void Draw(SamplingPlan plan, ulong seed, string sample, long first, int count, double[][] unit) =>
        UnitColumns.Fill(plan, seed, sample, names, 0, first, count, unit);

    /// <summary>
    /// Maps the unit values to the factor values of one scenario. The first scenario comes first and leaves its coupled unit
    /// values in <paramref name="unit"/>'s twin <paramref name="coupled"/> for those that follow it.
    /// </summary>
    /// <param name="model">The place of the scenario.</param>
    /// <param name="unit">The unit values drawn.</param>
    /// <param name="coupled">The first scenario's, with its dependence.</param>
    /// <param name="workspace">Takes the scenario's own.</param>
    /// <param name="values">Takes its factor values.</param>
    /// <param name="count">The number of rows.</param>
    /// <param name="given">Its factors where one of them is held; null where none is.</param>
    public void Map(
        int model, double[][] unit, double[][] coupled, Workspace workspace, double[][] values, int count, FactorSet? given = null)
    {
        FactorSet factors = given ?? models[model].Factors;
        double[][] source = model > 0 && followsFirst[model] ? coupled : unit;
        for (int column = 0; column < values.Length; column++)
        {
            (isOtherwise[model][column] ? unit : source)[placeOf[model][column]].AsSpan(0, count).CopyTo(workspace.Unit[column]);
        }

        if (source == unit)
        {
            factors.Map(workspace.Unit, values, count);
        }
        else
        {
            foreach (Factor factor in factors.Factors)
            {
                factor.Map(workspace.Unit, values, count);
            }
        }

        if (model == 0)
        {
            for (int place = 0; place < names.Length; place++)
            {
                (place < values.Length ? workspace.Unit : unit)[place].AsSpan(0, count).CopyTo(coupled[place]);
            }
        }
    }

    /// <summary>Whether all scenarios have the first one's dependent values.</summary>
    public bool AllFollowFirst => followsFirst.All(f => f);

    /// <summary>
    /// Whether a scenario's dependence is the first one's with some factors taken out. Their coupled values then serve both:
    /// coupled anew, a factor whose partner has become certain would lose the values it has in the first scenario.
    /// </summary>
    private static bool FollowsFirst(Scenario first, LifeModel model)
    {
        // A partner that has become a choice needs values of its own: the coupled ones would still follow it.
        IEnumerable<string> partners = first.Correlations.SelectMany(c => new[] { c.First, c.Second });
        return partners.All(n => model.Factors.Find(n) is null or ScalarFactor { Distribution.IsContinuous: true })
            && model.Scenario.Correlations.ToHashSet().SetEquals(
                first.Correlations.Where(c => model.Factors.Find(c.First) is not null && model.Factors.Find(c.Second) is not null));
    }
}
