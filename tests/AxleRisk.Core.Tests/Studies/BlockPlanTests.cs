using AxleRisk.Core.Studies;
using Xunit;

namespace AxleRisk.Core.Tests.Studies;

public sealed class BlockPlanTests
{
    [Theory]
    [InlineData("plain", 1)]
    [InlineData("plain", 1_000)]
    [InlineData("sobol", 31)]
    [InlineData("sobol", 1_030)]
    [InlineData("sobol", 32 * 256)]
    [InlineData("sobol", (32 * 256) + 1)]
    [InlineData("sobol", (32 * 256) + 5)]
    [InlineData("sobol", (32 * 300) + 5)]
    [InlineData("latin-hypercube", 10_001)]
    public void The_blocks_hold_every_evaluation_once_and_the_replicates_as_many_as_each_other(string plan, int evaluations)
    {
        var blocks = new BlockPlan(new StudySettings(evaluations, 1, plan), 3);
        var next = new long[blocks.Replicates];
        for (long b = 0; b < blocks.Blocks; b++)
        {
            for (int r = 0; r < next.Length; r++)
            {
                Assert.Equal(next[r], blocks.RowsBefore(b, r));
            }

            (int replicate, long first, int rows) = blocks[b];
            Assert.Equal(next[replicate], first);
            Assert.InRange(rows, 0, StudySettings.BlockSize);
            next[replicate] += rows;
        }

        Assert.Equal(evaluations, next.Sum());
        Assert.InRange(next.Max() - next.Min(), 0, 1);
    }
}
