using AxleRisk.App.Screens.Live;
using AxleRisk.Core.Studies;
using Xunit;

namespace AxleRisk.App.Tests.Screens;

public sealed class StudyRunTests
{
    [Fact]
    public void A_run_counts_up_and_ends_with_its_result()
    {
        using var run = new StudyRun<string>(TimeProvider.System);
        run.Start(3, 10, (options, _) =>
        {
            options.Progress!(4);
            options.Progress(10);
            options.Progress(7);
            return "answer";
        });
        Finish(run);
        Assert.Equal(("answer", 3, false), (run.Result, run.State, run.IsSnapshot));
        Assert.Equal((RunPhase.Done, 10L), (run.Standing.Phase, run.Standing.Evaluations)); // the count never falls
    }

    [Fact]
    public void Results_so_far_are_shown_until_the_last()
    {
        using var run = new StudyRun<string>(TimeProvider.System);
        using var go = new ManualResetEventSlim();
        using var published = new ManualResetEventSlim();
        run.Start(0, 2, (_, publish) =>
        {
            publish("so far");
            published.Set();
            Patience.Until(go);
            return "whole";
        });
        Patience.Until(published);
        Assert.Equal(("so far", true), (run.Result, run.IsSnapshot));
        go.Set();
        Finish(run);
        Assert.Equal(("whole", false), (run.Result, run.IsSnapshot));
    }

    [Fact]
    public void A_stopped_run_does_nothing_until_it_is_continued_and_then_ends_as_if_it_had_not_been()
    {
        using var run = new StudyRun<string>(TimeProvider.System);
        using var first = new ManualResetEventSlim();
        using var stopped = new ManualResetEventSlim();
        int blocks = 0;
        run.Start(0, 3, (options, _) =>
        {
            first.Set();
            Patience.Until(stopped);
            for (; blocks < 3; blocks++)
            {
                options.Progress!(blocks + 1);
            }

            return $"{blocks} blocks";
        });
        Patience.Until(first);
        run.Stop();
        stopped.Set();
        Thread.Sleep(30); // time to do what it must not
        Assert.Equal((RunPhase.Stopped, 0), (run.Standing.Phase, blocks));
        run.Continue();
        Finish(run);
        Assert.Equal("3 blocks", run.Result);
    }

    [Fact]
    public void A_run_stopped_can_be_ended_and_gives_what_it_has()
    {
        using var run = new StudyRun<string>(TimeProvider.System);
        using var first = new ManualResetEventSlim();
        run.Start(0, 100, (options, _) =>
        {
            int done = 0;
            while (!options.Cancellation.IsCancellationRequested)
            {
                options.Progress!(++done);
                first.Set();
            }

            return "part";
        });
        Patience.Until(first);
        run.Stop();
        run.EndNow();
        Finish(run);
        Assert.Equal("part", run.Result);
    }

    [Fact]
    public void The_latest_start_wins_and_the_answer_of_the_older_is_dropped()
    {
        using var run = new StudyRun<string>(TimeProvider.System);
        using var cancelled = new ManualResetEventSlim();
        run.Start(0, 1, (options, _) =>
        {
            options.Cancellation.WaitHandle.WaitOne(Patience.Longest);
            cancelled.Set();
            return "old";
        });
        Task old = run.Completion;
        run.Start(1, 1, (_, _) => "new");
        Finish(run);
        Patience.Until(cancelled);
        Patience.Until(old);
        Assert.Equal(("new", 1), (run.Result, run.State));
    }

    [Fact]
    public void A_failure_is_told_and_the_last_result_stays()
    {
        using var run = new StudyRun<string>(TimeProvider.System);
        run.Start(0, 1, (_, _) => "good");
        Finish(run);
        run.Start(1, 1, (_, _) => throw new StudyException("too many factors"));
        Finish(run);
        Assert.Equal((RunPhase.Failed, "too many factors"), (run.Standing.Phase, run.Standing.Failure));
        Assert.Equal(("good", 0), (run.Result, run.State));
    }

    [Fact]
    public void Back_in_a_state_already_answered_its_answer_is_there_again()
    {
        int state = 0;
        using var run = new StudyRun<string>(TimeProvider.System, () => state);
        run.Start(0, 7, (options, _) =>
        {
            options.Progress!(7);
            return "of 0";
        });
        Finish(run);
        state = 1;
        Assert.Equal(("of 0", 0), (run.Result, run.State)); // out of date, and said so by its state
        using var go = new ManualResetEventSlim();
        run.Start(1, 9, (_, publish) =>
        {
            publish("some of 1");
            Patience.Until(go);
            return "of 1";
        });
        state = 0;
        Assert.Equal(("of 0", 0, false), (run.Result, run.State, run.IsSnapshot));
        Assert.Equal((RunPhase.Done, 7L), (run.Standing.Phase, run.Standing.Evaluations));
        go.Set();
        Finish(run);
        Assert.Equal("of 0", run.Result);
        state = 1;
        Assert.Equal(("of 1", 1), (run.Result, run.State));
        state = 2;
        Assert.Equal(("of 1", 1), (run.Result, run.State));
    }

    private static void Finish(StudyRun<string> run) => Patience.Until(run.Completion);
}
