using AxleRisk.App.Screens.Pages;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Studies;
using Xunit;

namespace AxleRisk.App.Tests.Screens.Pages;

public sealed class StagesTests
{
    private static readonly Stages Two = new(10, 100);

    [Fact]
    public void Each_stage_is_published_and_progress_counts_over_all_of_them()
    {
        List<long> published = [], progress = [];
        RunRecord end = Two.Run(
            Settings(1000), 3, new RunOptions { Progress = progress.Add }, r => published.Add(r.Evaluations),
            (s, o) => Report(s, o, cases: 3), r => r);
        Assert.Equal([10, 100], published);
        Assert.Equal([30, 330, 3330], progress);
        Assert.Equal(1000, end.Evaluations);
        Assert.Equal([10, 100, 1000], Two.All(1000));
    }

    [Fact]
    public void Few_evaluations_need_no_stages()
    {
        List<RunRecord> published = [];
        Assert.Equal(10, Two.Run(Settings(10), 1, new RunOptions(), published.Add, (s, o) => Report(s, o, 1), r => r).Evaluations);
        Assert.Empty(published);
        Assert.Equal([10], Two.All(10));
    }

    [Fact]
    public void Ended_early_the_answer_on_most_evaluations_is_kept()
    {
        using var end = new CancellationTokenSource();
        RunRecord result = Two.Run(
            Settings(1000), 1, new RunOptions { Cancellation = end.Token }, _ => { }, (s, _) =>
            {
                if (s.Evaluations == 1000)
                {
                    end.Cancel();
                    return Record(s) with { Evaluations = 40, IsPartial = true };
                }

                return Record(s);
            }, r => r);
        Assert.Equal((100, false), (result.Evaluations, result.IsPartial));
    }

    [Fact]
    public void A_first_stage_without_an_answer_is_passed_over_and_the_last_says_why()
    {
        List<RunRecord> published = [];
        RunRecord Fails(StudySettings s, long below) => s.Evaluations < below ? throw new StudyException("too few") : Record(s);
        Assert.Equal(1000, Two.Run(Settings(1000), 1, new RunOptions(), published.Add, (s, _) => Fails(s, 50), r => r).Evaluations);
        Assert.Equal(100, Assert.Single(published).Evaluations);
        Assert.Throws<StudyException>(() => Two.Run(Settings(1000), 1, new RunOptions(), published.Add, (s, _) => Fails(s, 5000), r => r));
    }

    private static StudySettings Settings(long evaluations) => new(evaluations, 1, "");

    private static RunRecord Record(StudySettings s) => new(s.Evaluations, s.Evaluations, 1, "", 0, false);

    private static RunRecord Report(StudySettings s, RunOptions options, int cases)
    {
        options.Progress?.Invoke(s.Evaluations * cases);
        return Record(s);
    }
}
