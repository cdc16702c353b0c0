using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Analyses;

/// <summary>A study cut into parts, interrupted or stopped early has the digits of one that was not.</summary>
public sealed class RiskPartsTests
{
    private static readonly LifeModel Model = new(FiveLegs.Scenario);

    [Theory]
    [InlineData("plain", 2)]
    [InlineData("plain", 7)]
    [InlineData("sobol", 3)]
    [InlineData("latin-hypercube", 40)]
    public void Parts_in_any_order_join_to_the_digits_of_the_whole(string sampling, int parts)
    {
        var settings = new StudySettings(6_000, 4, sampling);
        RiskState joined = RiskAnalysis.Join([.. Enumerable.Range(1, parts).Reverse().Select(k =>
            RiskAnalysis.Run(Model, settings, new RiskQuestion { Part = new StudyPart(k, parts) }, new RunOptions()).State)]);
        Same(Whole(settings), RiskAnalysis.Summarise(Model, joined, new RiskQuestion(), new RunOptions(), isPartial: false));
    }

    [Fact]
    public void A_study_that_goes_on_from_a_checkpoint_ends_with_the_same_digits()
    {
        var settings = new StudySettings(12_000, 4, "sobol");
        RiskState? checkpoint = null;
        using var source = new CancellationTokenSource();
        RiskAnalysis.Run(Model, settings, new RiskQuestion { Checkpoint = Keep }, new RunOptions { Cancellation = source.Token });
        Assert.False(checkpoint!.IsFinished);
        Same(Whole(settings), RiskAnalysis.Run(Model, settings, new RiskQuestion { From = checkpoint }, new RunOptions()).Result);

        void Keep(RiskState state)
        {
            checkpoint = state;
            source.Cancel();
        }
    }

    // Looked at wherever it happens to be, it ends with the same digits, and whoever goes on from one of these states does so too: each is
    // of all blocks before it, and stays as it was when the study goes on.
    [Fact]
    public void Looking_at_a_study_between_any_blocks_changes_no_digit()
    {
        var settings = new StudySettings(100_000, 4, "sobol");
        List<RiskState> seen = [];
        RiskResult all = RiskAnalysis.Run(Model, settings, new RiskQuestion(), new RunOptions()).Result;
        int asked = 0;
        var question = new RiskQuestion { Checkpoint = seen.Add, IsCheckpointDue = () => Interlocked.Increment(ref asked) % 70 == 0 };
        Same(all, RiskAnalysis.Run(Model, settings, question, new RunOptions { Threads = 2 }).Result);
        Assert.InRange(seen.Count, 3, 7);
        Assert.Equal(seen.Select(s => s.NextBlock).Order().Distinct(), seen.Select(s => s.NextBlock));
        foreach (RiskState state in seen)
        {
            Assert.Equal(state.IsFinished, state == seen[^1]);
            Same(all, RiskAnalysis.Run(Model, settings, new RiskQuestion { From = state }, new RunOptions { Threads = 2 }).Result);
        }
    }

    [Fact]
    public void A_state_of_another_study_is_refused()
    {
        RiskState state = RiskAnalysis.Run(Model, new StudySettings(600, 4, "plain"), new RiskQuestion(), new RunOptions()).State;
        Assert.Throws<StudyException>(() =>
            RiskAnalysis.Run(Model, new StudySettings(600, 5, "plain"), new RiskQuestion { From = state }, new RunOptions()));
    }

    [Fact]
    public void Parts_that_do_not_make_a_whole_are_refused()
    {
        var settings = new StudySettings(2_000, 4, "plain");
        RiskState second = RiskAnalysis.Run(Model, settings, new RiskQuestion { Part = new StudyPart(2, 2) }, new RunOptions()).State;
        Assert.Throws<StudyException>(() => RiskAnalysis.Join([second]));
        Assert.Throws<StudyException>(() => RiskAnalysis.Join([second, second]));
    }

    [Theory]
    [InlineData("plain")]
    [InlineData("sobol")]
    public void A_study_until_a_coefficient_of_variation_stops_at_the_same_place_on_any_number_of_threads(string sampling)
    {
        RiskResult one = Until(1);
        Same(one, Until(3));
        Assert.InRange(one.Run.Evaluations, 1, 100_000);
        Assert.False(one.Run.IsPartial);

        RiskResult Until(int threads) => RiskAnalysis.Run(
            Model, new StudySettings(200_000, 4, sampling), new RiskQuestion { UntilCov = 0.05 }, new RunOptions
            { Threads = threads }).Result;
    }

    private static RiskResult Whole(StudySettings settings) =>
        RiskAnalysis.Run(Model, settings, new RiskQuestion(), new RunOptions { Threads = 1 }).Result;

    private static void Same(RiskResult expected, RiskResult actual)
    {
        Assert.Equal(expected.Distances.AsEnumerable(), actual.Distances);
        Assert.Equal(expected.Lives.AsEnumerable(), actual.Lives);
        Assert.Equal(expected.Legs.AsEnumerable(), actual.Legs);
        Assert.Equal(expected.Run.Evaluations, actual.Run.Evaluations);
    }

    // A part's distances are too rare for its rows, as the whole's are, but its sums are for the whole to take up.
    [Fact]
    public void A_part_leaves_the_rare_distances_to_the_whole()
    {
        var settings = new StudySettings(1_000, 4, "plain");
        Assert.NotEmpty(Whole(settings).RareEvents);
        foreach (int part in (int[])[1, 2])
        {
            var question = new RiskQuestion { Part = new StudyPart(part, 2) };
            Assert.Empty(RiskAnalysis.Run(Model, settings, question, new RunOptions()).Result.RareEvents);
        }
    }
}
