using System.Collections.Immutable;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Ranking;

/// <summary>
/// What a row of the ranking evaluates and where its sums stand: two independent samples A and B, A with the columns of
/// one group taken from B, and A with one factor held.
/// </summary>
internal sealed class RankPlan
{
    /// <summary>Sums of a row that belong to no group: rows, life A + B, their squares, event A + B.</summary>
    private const int CommonSums = 4;

    /// <summary>Sums of a group: first-order and total numerators of life and event.</summary>
    private const int SumsOfGroup = 4;

    public RankPlan(LifeModel model)
    {
        ModeTerms terms = new(model);
        bool IsFree(Factor factor) => terms.IsOn ? terms.ChanceOf(factor) >= 0 : model.Modes.IsPlain && LifeScale.Contains(factor);
        Groups = [.. model.Factors.Groups.Select(g => new RankGroup(g, g.All(IsFree)))];
        Pins = [.. model.Factors.Factors.SelectMany(PinsOf)];
        Legs = model.Scenario.Legs.Length;
        Modes = model.Modes.Modes.Length > 1 ? model.Modes.Modes.Length : 0;
        EvaluationsPerRow = 2 + Groups.Count(g => !(g.IsScale && model.Modes.IsPlain)) + Pins.Count(p => !IsFree(p.Factor));
    }

    public ImmutableArray<RankGroup> Groups { get; }

    public ImmutableArray<Pin> Pins { get; }

    /// <summary>Evaluations of the damage model a row costs; Miner sum and S-N scatter cost none where fatigue is the only mode.</summary>
    public int EvaluationsPerRow { get; }

    public int Legs { get; }

    /// <summary>The modes of failure where there are several; 0 where fatigue is the only one.</summary>
    public int Modes { get; }

    public int Sums => FirstOfMode(2 * Modes);

    public static int Rows => 0;

    public static int Life => 1;

    public static int LifeSquared => 2;

    public static int Event => 3;

    public static int LifeFirst(int group) => CommonSums + (SumsOfGroup * group);

    public static int LifeTotal(int group) => LifeFirst(group) + 1;

    public static int EventFirst(int group) => LifeFirst(group) + 2;

    public static int EventTotal(int group) => LifeFirst(group) + 3;

    public int PinnedEvent(int pin) => CommonSums + (SumsOfGroup * Groups.Length) + pin;

    /// <summary>Damage share of a leg in sample A, each row counted with its failure probability.</summary>
    public int FailuresOfLeg(int leg) => PinnedEvent(Pins.Length) + leg;

    /// <summary>Failures of sample A by the mode that is first.</summary>
    public int FirstOfMode(int mode) => FailuresOfLeg(Legs) + mode;

    /// <summary>Failures of sample A by all modes but one.</summary>
    public int WithoutMode(int mode) => FirstOfMode(Modes) + mode;

    private static IEnumerable<Pin> PinsOf(Factor factor)
    {
        yield return new Pin(factor, PinPoint.Nominal, factor.Nominal);
        if (factor is ScalarFactor { Distribution: var d })
        {
            yield return new Pin(factor, PinPoint.Low, [d.Quantile(0.05)]);
            yield return new Pin(factor, PinPoint.High, [d.Quantile(0.95)]);
        }
    }
}

/// <summary>Factors that are exchanged together because they depend on one another; usually one.</summary>
/// <param name="Factors">The factors.</param>
/// <param name="IsScale">Whether the group scales the life of a mode without touching what is evaluated, so that it costs no
/// evaluation.</param>
internal sealed record RankGroup(ImmutableArray<Factor> Factors, bool IsScale)
{
    public IEnumerable<int> Columns => Factors.SelectMany(f => Enumerable.Range(f.FirstColumn, f.ColumnNames.Length));
}

/// <summary>Where a factor is held.</summary>
internal enum PinPoint
{
    Nominal,
    Low,
    High,
}

/// <summary>A factor held at a point, one value a column.</summary>
internal sealed record Pin(Factor Factor, PinPoint Point, ImmutableArray<double> Values);
