using AxleRisk.Core.Sampling;

namespace AxleRisk.Core.Studies;

/// <summary>
/// Two samples A and B, row by row independent of each other, from one plan of twice the columns: in a low-discrepancy plan two
/// samples of the same dimensions would not be independent, and pairs in one plan of both are stratified together. The rows come
/// in groups, each a replicate of the plan with streams of its own: only so are the groups of a jackknife independent in every plan.
/// </summary>
internal sealed class PairedDraw
{
    /// <summary>Groups: enough for a stable standard error, few enough to be cheap.</summary>
    public const int Groups = 32;

    private readonly LifeModel model;
    private readonly ulong seed;
    private readonly SamplingPlan plan;
    private readonly long rowsOfGroup;

    /// <summary>Divides about <paramref name="rows"/> rows, at least two a group, into groups of whole blocks.</summary>
    /// <exception cref="StudyException">The sampling plan has fewer than twice the dimensions of the scenario.</exception>
    public PairedDraw(LifeModel model, StudySettings settings, long rows)
    {
        this.model = model;
        seed = settings.Seed;
        long ofGroup = Math.Max(2, rows / Groups);
        BlockSize = (int)Math.Min(StudySettings.BlockSize, ofGroup);
        rowsOfGroup = ofGroup / BlockSize * BlockSize;
        plan = SamplingPlan.FromName(settings.Sampling, rowsOfGroup);
        if (Dimensions(model) > plan.Dimensions)
        {
            throw new StudyException(
                $"{settings.Sampling} sampling has {plan.Dimensions} dimensions and pairs of vehicles of this scenario need {Dimensions(model)}: choose --sampling {SamplingPlan.Names[0]}");
        }
    }

    /// <summary>Rows of a block; every block is full.</summary>
    public int BlockSize { get; }

    /// <summary>All rows.</summary>
    public long Rows => Groups * rowsOfGroup;

    /// <summary>The dimensions that a plan of pairs needs.</summary>
    public static int Dimensions(LifeModel model) => 2 * model.Factors.ColumnNames.Length;

    /// <summary>Runs <paramref name="work"/> on all rows; see <see cref="BlockRunner"/>.</summary>
    /// <param name="options">Threads, progress (in rows), cancellation.</param>
    /// <param name="createWorker">Makes one thread's buffers.</param>
    /// <param name="work">From buffers, first row and number of rows to the block's sums.</param>
    /// <returns>The sums of each group, in order (fewer where the run was ended early), the rows done, and whether it was ended
    /// early.</returns>
    public (double[][] Groups, long Rows, bool IsPartial) Run<TWorker>(
        RunOptions options, Func<TWorker> createWorker, Func<TWorker, long, int, double[]> work)
    {
        BlockRun<double[]> run = BlockRunner.RunShared(Rows, BlockSize, options, createWorker, work);
        return (Join(run.Blocks), run.Rows, run.IsPartial);
    }

    /// <summary>Draws the factor values of a block's rows, into the workspace its unit values.</summary>
    public void Draw(long first, int count, Workspace workspace, double[][] a, double[][] b)
    {
        (long group, long firstOfGroup) = Math.DivRem(first, rowsOfGroup);
        Draw(model, plan, seed, $"A/r{group}", false, firstOfGroup, count, workspace.Unit, a);
        Draw(model, plan, seed, $"B/r{group}", true, firstOfGroup, count, workspace.Unit, b);
    }

    /// <summary>Draws the rows of one of two paired samples.</summary>
    /// <param name="model">The model.</param>
    /// <param name="plan">The plan, of at least <see cref="Dimensions"/> dimensions.</param>
    /// <param name="seed">The seed.</param>
    /// <param name="sample">The name of the sample.</param>
    /// <param name="second">Whether it is B.</param>
    /// <param name="first">The first sample number.</param>
    /// <param name="count">The number of rows.</param>
    /// <param name="unit">Takes the unit values, those of correlated factors coupled.</param>
    /// <param name="values">Takes the factor values.</param>
    public static void Draw(
        LifeModel model, SamplingPlan plan, ulong seed, string sample, bool second, long first, int count, double[][] unit,
            double[][] values)
    {
        UnitColumns.Fill(plan, seed, sample, model.Factors.ColumnNames, second ? values.Length : 0, first, count, unit);
        model.Factors.Map(unit, values, count);
    }

    /// <summary>Joins the blocks, in order, into groups: as equal as whole blocks allow.</summary>
    private static double[][] Join(IReadOnlyList<double[]> blocks)
    {
        int count = Math.Min(Groups, blocks.Count);
        double[][] groups = Workspace.Columns(count, count == 0 ? 0 : blocks[0].Length);
        for (int b = 0; b < blocks.Count; b++)
        {
            double[] group = groups[(int)((long)b * count / blocks.Count)];
            for (int i = 0; i < group.Length; i++)
            {
                group[i] += blocks[b][i];
            }
        }

        return groups;
    }
}
