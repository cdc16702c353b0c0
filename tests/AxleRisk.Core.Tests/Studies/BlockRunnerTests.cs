using AxleRisk.Core.Studies;
using Xunit;

namespace AxleRisk.Core.Tests.Studies;

public sealed class BlockRunnerTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(255)]
    [InlineData(256)]
    [InlineData(257)]
    [InlineData(10_000)]
    public void Every_row_is_done_once_and_in_order(int rows)
    {
        BlockRun<int[]> run = Rows(rows, new RunOptions { Threads = 3 });
        Assert.Equal(Enumerable.Range(0, rows), run.Blocks.SelectMany(b => b));
        Assert.Equal(rows, run.Rows);
        Assert.False(run.IsPartial);
    }

    [Fact]
    public void A_cancelled_run_keeps_what_was_done_without_a_gap()
    {
        using var source = new CancellationTokenSource();
        BlockRun<int[]> run = Rows(100_000, new RunOptions
        {
            Threads = 2,
            Cancellation = source.Token,
            Progress = done =>
            {
                if (done > 3000)
                {
                    source.Cancel();
                }
            },
        });
        Assert.True(run.IsPartial);
        Assert.InRange(run.Rows, 3000, 99_000);
        Assert.Equal(Enumerable.Range(0, (int)run.Rows), run.Blocks.SelectMany(b => b));
    }

    [Fact]
    public void A_failure_in_a_block_comes_out_as_itself() =>
        Assert.Throws<InvalidOperationException>(() => BlockRunner.Run<int, int>(
            1000, 10, new RunOptions { Threads = 2 }, () => 0, (_, first, _) => first == 500 ? throw new InvalidOperationException() : 0));

    private static BlockRun<int[]> Rows(int rows, RunOptions options) => BlockRunner.Run(
        rows, 256, options, () => 0, (_, first, count) => Enumerable.Range((int)first, count).ToArray());
}
