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
    public void A_failure_in_a_block_comes_out_as_itself() =>
        Assert.Throws<InvalidOperationException>(() => BlockRunner.Run(
            [1, 2], 0, 1000, (_, block) => _ = block == 500 ? throw new InvalidOperationException() : 0, CancellationToken.None));
}
