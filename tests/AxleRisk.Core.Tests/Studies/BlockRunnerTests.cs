using System.Collections.Concurrent;
using AxleRisk.Core.Studies;
using Xunit;

namespace AxleRisk.Core.Tests.Studies;

public sealed class BlockRunnerTests
{
    [Theory]
    [InlineData(0, 0)]
    [InlineData(0, 1)]
    [InlineData(5, 1000)]
    public void Every_block_is_done_once(int first, int end)
    {
        var done = new ConcurrentBag<long>();
        int[] workers = BlockRunner.CreateWorkers(new RunOptions { Threads = 3 }, end - first, () => 0);
        Assert.Equal(end, BlockRunner.Run(workers, first, end, (_, block) => done.Add(block), CancellationToken.None));
        Assert.Equal(Enumerable.Range(first, end - first).Select(b => (long)b), done.Order());
    }

    [Fact]
    public void A_cancelled_run_keeps_what_was_done_without_a_gap()
    {
        using var source = new CancellationTokenSource();
        var done = new ConcurrentBag<long>();
        long end = BlockRunner.Run([1, 2], 0, 100_000, (_, block) =>
        {
            done.Add(block);
            if (block > 100)
            {
                source.Cancel();
            }
        }, source.Token);
        Assert.InRange(end, 100, 99_000);
        Assert.Equal(Enumerable.Range(0, (int)end).Select(b => (long)b), done.Order());
    }

    [Fact]
    public void A_block_given_up_and_those_after_it_do_not_count()
    {
        using var source = new CancellationTokenSource();
        using var isLaterDone = new ManualResetEventSlim();
        BlockRun<long> run = BlockRunner.Run(
            500, 10, new RunOptions { Threads = 2, Cancellation = source.Token }, () => 0, (_, first, _) =>
            {
                if (first == 20)
                {
                    // The other thread takes block 3; the wait is for a machine on which there is no other thread yet.
                    isLaterDone.Wait(TimeSpan.FromSeconds(5), TestContext.Current.CancellationToken);
                    source.Cancel();
                    source.Token.ThrowIfCancellationRequested();
                }

                if (first == 30)
                {
                    isLaterDone.Set();
                }

                return first;
            });
        Assert.Equal([0L, 10L], run.Blocks);
        Assert.Equal(20, run.Rows);
        Assert.True(run.IsPartial);
    }

    [Fact]
    public void The_last_block_given_up_makes_the_run_partial()
    {
        using var source = new CancellationTokenSource();
        BlockRun<long> run = BlockRunner.Run(
            3, 1, new RunOptions { Threads = 1, Cancellation = source.Token }, () => 0, (_, first, _) =>
            {
                if (first == 2)
                {
                    source.Cancel();
                    source.Token.ThrowIfCancellationRequested();
                }

                return first;
            });
        Assert.Equal((2L, true), (run.Rows, run.IsPartial));
    }

    [Fact]
    public void A_cancellation_that_is_not_the_runs_own_comes_out_as_a_failure() =>
        Assert.Throws<OperationCanceledException>(() => BlockRunner.Run(
            [1], 0, 10, (_, block) => _ = block == 5 ? throw new OperationCanceledException() : 0, CancellationToken.None));

    [Fact]
    public void A_failure_in_a_block_comes_out_as_itself() =>
        Assert.Throws<InvalidOperationException>(() => BlockRunner.Run(
            [1, 2], 0, 1000, (_, block) => _ = block == 500 ? throw new InvalidOperationException() : 0, CancellationToken.None));
}
