using AxleRisk.Core.Sampling;

namespace AxleRisk.Core.Studies;

/// <summary>
/// How the evaluations of a study are divided: into replicates where the sampling plan has no error of its own that could be
/// told from inside (Latin hypercube, Sobol'), and each replicate into blocks. Blocks of different replicates alternate, so
/// that any run of blocks from the first on has replicates of nearly one size.
/// </summary>
internal sealed class BlockPlan
{
    /// <summary>Replicates of a plan whose samples depend on one another: 15 degrees of freedom.</summary>
    private const int DependentReplicates = 16;

    /// <summary>Below this many evaluations a replicate would be too small to mean anything.</summary>
    private const int LeastRowsOfReplicate = 32;

    private readonly long evaluations;
    private readonly SamplingPlan[] plans;

    /// <summary>Divides a study of <paramref name="columns"/> columns.</summary>
    /// <exception cref="StudyException">The sampling plan has fewer dimensions.</exception>
    public BlockPlan(StudySettings settings, int columns)
    {
        bool independent = settings.Sampling == SamplingPlan.Names[0];
        Replicates = independent || settings.Evaluations < DependentReplicates * LeastRowsOfReplicate ? 1 : DependentReplicates;
        evaluations = settings.Evaluations;
        Blocks = Replicates * ((RowsOf(0) + StudySettings.BlockSize - 1) / StudySettings.BlockSize);
        plans = [.. Enumerable.Range(0, Replicates).Select(r => SamplingPlan.FromName(settings.Sampling, RowsOf(r)))];
        if (columns > plans[0].Dimensions)
        {
            throw new StudyException(
                $"{settings.Sampling} sampling has {plans[0].Dimensions} dimensions and this scenario needs {columns}: choose --sampling {SamplingPlan.Names[0]}");
        }
    }

    public int Replicates { get; }

    public long Blocks { get; }

    /// <summary>What a block consists of; the last of a replicate may have no rows.</summary>
    public (int Replicate, long First, int Rows) this[long block]
    {
        get
        {
            long first = block / Replicates * StudySettings.BlockSize;
            return ((int)(block % Replicates), first,
                (int)Math.Clamp(RowsOf((int)(block % Replicates)) - first, 0, StudySettings.BlockSize));
        }
    }

    /// <summary>The rows of all blocks before one.</summary>
    public long RowsBefore(long block) => Enumerable.Range(0, Replicates).Sum(r => RowsBefore(block, r));

    /// <summary>The rows of a replicate in all blocks before one.</summary>
    public long RowsBefore(long block, int replicate)
    {
        // Earlier blocks of the replicate, and one more where the replicate stands before that of the block.
        long first = block / Replicates * StudySettings.BlockSize;
        return Math.Min(RowsOf(replicate), replicate < block % Replicates ? first + StudySettings.BlockSize : first);
    }

    /// <summary>The sampling plan of a replicate.</summary>
    public SamplingPlan PlanOf(int replicate) => plans[replicate];

    /// <summary>The name of a replicate's random streams; empty where there is but one.</summary>
    public string StreamOf(int replicate) => Replicates == 1 ? "" : $"r{replicate}";

    /// <summary>The rows of a replicate: equal shares, what is left over going one each to the first.</summary>
    private long RowsOf(int replicate) => (evaluations / Replicates) + (replicate < evaluations % Replicates ? 1 : 0);
}
