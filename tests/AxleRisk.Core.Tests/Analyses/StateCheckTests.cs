using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses;

/// <summary>What a state from outside may say of a study, and what not.</summary>
public sealed class StateCheckTests
{
    private static readonly LifeModel Five = new(FiveLegs.Scenario), Three = new(ThreeModes.Scenario);

    public static TheoryData<string> Plans => ["plain", "sobol"];

    [Theory]
    [MemberData(nameof(Plans))]
    public void A_study_a_part_of_it_and_one_not_begun_pass(string plan)
    {
        foreach (LifeModel model in (LifeModel[])[Five, Three, LogLinear.Model])
        {
            RiskState state = State(model, plan, new StudyPart(2, 3));
            Assert.Null(StateCheck.Fault(model, state));
            Assert.Null(StateCheck.Fault(model, state with
            { NextBlock = state.FirstBlock, Replicates = [.. state.Replicates.Select(_ => RiskTally.NewSummary(model))] }));
        }
    }

    [Fact]
    public void Another_study_than_the_numbers_are_of_is_told()
    {
        RiskState state = State(Five, "plain", StudyPart.Whole);
        void Refused(string fault, RiskState changed) => Assert.Contains(fault, StateCheck.Fault(Five, changed));
        Refused("a study that there cannot be", state with { Settings = state.Settings with { Evaluations = 0 } });
        Refused("a study that there cannot be", state with { Settings = state.Settings with { Sampling = "dice" } });
        Refused("blocks that its study does not have", state with { FirstBlock = -1 });
        Refused("blocks that its study does not have", state with { FirstBlock = state.NextBlock + 1 });
        Refused("blocks that its study does not have", state with { NextBlock = state.EndBlock + 1 });
        Refused("blocks that its study does not have", state with { EndBlock = state.EndBlock + 1, NextBlock = state.EndBlock + 1 });
        Refused("replicates", state with { Replicates = [.. state.Replicates, state.Replicates[0]] });
        Refused("counts that do not add up", state with { FirstBlock = 1 });
        Assert.Contains("other legs, modes or distances", StateCheck.Fault(Three, state));
        Assert.Contains("other legs, modes or distances", StateCheck.Fault(LogLinear.Model, state));
        Assert.Contains("other legs, modes or distances",
            StateCheck.Fault(new LifeModel(ThreeModes.Scenario with { RequiredKm = 1 }), State(Three, "plain", StudyPart.Whole)));
    }

    // Shares lie from 0 to 1 and sum to 1 in every evaluation, and their squares are no greater.
    [Theory]
    [InlineData(0, 0, 0, true)]
    [InlineData(1e-7, -1e-7, 0, true)] // exact sums of rounded shares
    [InlineData(0.01, 0, 0, false)] // no longer sums to the number of evaluations
    [InlineData(2, -2, 0, true)] // another mix is a possible one
    [InlineData(1e4, -1e4, 0, false)] // a negative sum
    [InlineData(0, 0, -1e4, false)] // a negative sum of squares
    [InlineData(0, 0, 1e4, false)] // squares that exceed the shares
    public void Sums_of_shares_are_those_that_evaluations_can_give(double first, double second, double square, bool passes)
    {
        RiskState state = State(Five, "plain", StudyPart.Whole);
        LifeSummary summary = state.Replicates[0].Copy();
        Assert.InRange(summary.LegShareSums[1].Value, 2, 9_000);
        summary.AddShares(0, [first, second, 0, 0, 0], [square, 0, 0, 0, 0]);
        Assert.Equal(passes, StateCheck.Fault(Five, state with { Replicates = [summary] }) is null);
    }

    [Fact]
    public void There_are_no_more_evaluations_with_shares_than_evaluations()
    {
        RiskState state = State(LogLinear.Model, "plain", StudyPart.Whole);
        foreach (int more in (int[])[1, -1, -4_000])
        {
            LifeSummary summary = state.Replicates[0].Copy();
            summary.AddShares(more, [more], [more]);
            Assert.Equal(more == -1, StateCheck.Fault(LogLinear.Model, state with { Replicates = [summary] }) is null);
        }
    }

    [Theory]
    [InlineData(0, true)]
    [InlineData(1e5, false)]
    [InlineData(-1e5, false)]
    public void Sums_of_chances_lie_from_nought_to_the_number_of_evaluations(double more, bool passes)
    {
        RiskState state = State(Three, "plain", StudyPart.Whole);
        foreach (int table in Enumerable.Range(0, state.Replicates[0].Modes!.Sums().Count()))
        {
            LifeSummary summary = state.Replicates[0].Copy();
            ExactSum[] sums = summary.Modes!.Sums().ElementAt(table);
            sums[ModeTable.Nodes / 2] = sums[ModeTable.Nodes / 2].Plus(more);
            Assert.Equal(passes, StateCheck.Fault(Three, state with { Replicates = [summary] }) is null);
        }

        LifeSummary counted = state.Replicates[0].Copy();
        counted.Modes!.FirstCounts[0].Clear();
        Assert.Contains("counts that do not add up", StateCheck.Fault(Three, state with { Replicates = [counted] }));
    }

    private static RiskState State(LifeModel model, string plan, StudyPart part) => RiskAnalysis.Run(
        model, new StudySettings(3_000, 4, plan), new RiskQuestion { Part = part }, new RunOptions { Threads = 2 }).State;
}
